import { PlaceNav } from '@/app/parts/place-nav'
import { homeInWords, type Named } from '@/lib/core/subject-words'

const PLACES = [
  { href: '/r', label: 'Due' },
  { href: '/check', label: 'Check' },
  { href: '/r/photos', label: 'Photos' },
  { href: '/r/write', label: 'Write' },
] as const

export type RenterPlace = (typeof PLACES)[number]['label'] | 'Find'

/** The places of a renter's link; Find leads out of the home and back with the card. */
export function RenterNav({ id, home, current }: { id: string; home: Named; current: RenterPlace }) {
  const [due, check, photos, write] = PLACES
  const places = [due, check, { href: `/find?home=${id}`, label: 'Find' }, photos, write]
  return (
    <PlaceNav
      places={places.map((place) => ({ ...place, current: place.label === current }))}
      home={{ name: homeInWords(home), href: '/r' }}
    />
  )
}
