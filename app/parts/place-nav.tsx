import Link from 'next/link'

export interface Place {
  href: string
  label: string
  current: boolean
}

/** The places of one home (or of the account): under the thumb on a phone, across the page on a desk. */
export function PlaceNav({ places, home }: { places: Place[]; home?: { name: string; href: string } }) {
  return (
    <nav
      className={places.length > 5 ? 'places many' : 'places'}
      aria-label={home ? `Places of ${home.name}` : 'Places'}
    >
      {home && (
        <Link className="places-home" href={home.href}>
          {home.name}
        </Link>
      )}
      <ul>
        {places.map(({ href, label, current }) => (
          <li key={href}>
            <Link href={href} aria-current={current ? 'page' : undefined}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  )
}
