import { headers } from 'next/headers'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { FINDER_CARD_TEXTS } from '@/content/finder/card-texts'
import { FINDER } from '@/content/finder/finder'
import { currentLink } from '@/lib/access/links'
import { findViewer } from '@/lib/access/page'
import { may, type Viewer } from '@/lib/core/viewer'
import { findHousehold, listHomes } from '@/lib/data/households'
import { typedSize } from '@/lib/forms/size-form'
import { finderCard } from '@/lib/guide/finder-card'
import { answersFromAddress, replayFinder } from '@/lib/guide/finder-replay'
import { FilterCard } from '../filter-card'
import { readSize } from '../read-size'
import { SaveForm } from './save-form'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata = { title: 'Save the filter card' }

export default databasePage(async ({ searchParams }: Props) => {
  const search = await searchParams
  const field = (name: string) => (typeof search[name] === 'string' ? search[name] : '')
  const address = new URLSearchParams(Object.entries(search).flatMap(([name]) => [[name, field(name)]])).toString()
  const state = replayFinder(FINDER, answersFromAddress(field('a')))
  if (state.screen.kind !== 'card' || state.stray.length > 0) redirect('/find')
  const viewers = await findViewers()
  if (viewers.length === 0) redirect(`/sign-in?next=${encodeURIComponent(`/find/save?${address}`)}`)
  const card = finderCard(state.draft, FINDER_CARD_TEXTS)
  const typed = typedSize(field)
  const size = typed && readSize(typed)
  const home = await chosenHome(viewers, field('home'))
  return (
    <main id="main" tabIndex={-1}>
      <h1>Save the filter card</h1>
      {home === null ? (
        <Homes viewers={viewers} address={address} />
      ) : (
        <SaveForm
          household={home.id}
          name={home.household.name}
          filters={home.household.filters}
          systems={home.household.systems}
          place={card.place}
          sent={{
            a: field('a'),
            from: typed?.from ?? '',
            w: typed?.w ?? '',
            h: typed?.h ?? '',
            d: typed?.d ?? '',
            u: typed?.u ?? '',
          }}
          hasSize={card.sizeFrom === 'none' || size?.kind === 'read'}
        />
      )}
      <FilterCard card={card} title="The card" size={size} hazards={true} level={2} />
      <p className="no-print">
        <Link href={`/find?${address}`}>Back to the card</Link>
      </p>
    </main>
  )
})

/** An account first, then a renter's link: this browser may hold both. */
async function findViewers(): Promise<Viewer[]> {
  return [await findViewer(), await currentLink(await headers())].filter((viewer) => viewer !== null)
}

async function chosenHome(viewers: Viewer[], id: string) {
  for (const viewer of viewers) {
    const homes = (await listHomes(viewer)).filter(({ role, state }) => may(role, 'record') && state === 'open')
    const home =
      homes.find((one) => one.id === id) ?? (homes.length === 1 && viewers.length === 1 ? homes[0] : undefined)
    if (home) return findHousehold(viewer, home.id)
  }
  return null
}

async function Homes({ viewers, address }: { viewers: Viewer[]; address: string }) {
  const homes = (await Promise.all(viewers.map(listHomes)))
    .flat()
    .filter(({ role, state }) => may(role, 'record') && state === 'open')
  if (homes.length === 0) {
    return (
      <p className="lead">
        You have no home here yet. <Link href="/bring">Bring a household file</Link> or describe a home first; the card
        can stay on this phone until then.
      </p>
    )
  }
  return (
    <section aria-labelledby="which">
      <h2 id="which">Which home?</h2>
      <ul className="rows find-answers">
        {homes.map(({ id, name, building }) => {
          const search = new URLSearchParams(address)
          search.set('home', id)
          return (
            <li key={id}>
              <Link className="row" href={`/find/save?${search}`}>
                {building ? `${name}, ${building}` : name}
              </Link>
            </li>
          )
        })}
      </ul>
    </section>
  )
}
