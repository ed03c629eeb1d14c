import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { PlanChangeList } from '@/app/parts/plan-change-list'
import { tables } from '@/content/tables'
import type { Household } from '@/lib/core/household'
import { planChanges } from '@/lib/core/plan-changes'
import { dustEventInWords, weatherInWords } from '@/lib/core/reading-words'
import { may } from '@/lib/core/viewer'
import { HomeNav } from '../../home-nav'
import { LineButton } from '../../line-button'
import { loadHome } from '../../load'
import { takeHappenedOut } from './actions'
import { keyOf, withoutHappened } from './happened'
import { HappenedForm } from './happened-form'

interface Props {
  params: Promise<{ household: string }>
  searchParams: Promise<{ did?: string | string[] }>
}

export const generateMetadata = homeTitle('Something happened')

/** Times of more dust, and hot or cold ones, typed in before or after the fact. */
export default databasePage(async ({ params, searchParams }: Props) => {
  const { household: id } = await params
  const { did } = await searchParams
  const { stored, on } = await loadHome(id, `/home/${id}/measured/happened`)
  const { household: home } = stored
  const mayChange = may(stored.role, 'manage') && stored.state === 'open'
  const known = [
    ...home.dustEvents.map((event) => ({ list: 'dust', key: keyOf(event), say: dustEventInWords(event) })),
    ...(home.weather ?? []).map((spell) => ({
      ...{ list: 'weather', key: keyOf(spell), say: weatherInWords(spell, home.units) },
    })),
  ]
  return (
    <>
      <HomeNav id={id} home={home} current="Details" />
      <main id="main" tabIndex={-1}>
        <p className="place">
          <Link href={`/home/${id}/measured`}>Measured hours</Link>
        </p>
        <h1>Something happened</h1>
        <p className="lead">
          Smoke, building work or a heat wave fill a filter sooner. Say when it was, or when it is planned, and the
          dates move.
        </p>
        <Moved home={home} id={id} on={on} did={typeof did === 'string' ? did : ''} mayChange={mayChange} />
        {mayChange && <HappenedForm household={id} degrees={home.units === 'us' ? '°F' : '°C'} />}
        <section aria-labelledby="known">
          <h2 id="known">What is known</h2>
          {known.length === 0 && <p>Nothing yet.</p>}
          <ul className="readings">
            {known.map(({ list, key, say }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two alike may stand in the list
              <li key={`${i} ${key}`}>
                {say}
                {mayChange && (
                  <LineButton
                    action={takeHappenedOut}
                    fields={{ household: id, list, is: key }}
                    about={key}
                    className="quiet"
                  >
                    Take it out
                  </LineButton>
                )}
              </li>
            ))}
          </ul>
        </section>
        <section aria-labelledby="how">
          <h2 id="how">How a heat wave counts</h2>
          <p>
            From its high and low the hours of cooling are reckoned as from any other day’s temperature. They count on
            these days only, and only where nothing was measured: what the thermostat reported of them knows better. One
            hot week says nothing about other weeks, so nothing else is changed by it. A cold spell counts the same way
            for heating.
          </p>
        </section>
      </main>
    </>
  )
})

interface MovedProps {
  home: Household
  id: string
  on: string
  did: string
  mayChange: boolean
}

/** What was just saved, the dates before and after, and the way back. */
function Moved({ home, id, on, did, mayChange }: MovedProps) {
  if (did === 'out')
    return (
      <p className="notice" role="status">
        Taken out. The dates stand as they would without it.
      </p>
    )
  const space = did.indexOf(' ')
  const [list, is] = [did.slice(0, space), did.slice(space + 1)]
  const before = space > 0 ? withoutHappened(home, list, is) : null
  if (!before) return null
  const changes = planChanges(before, home, tables, on)
  return (
    <div className="notice" role="status">
      <p>
        Saved.{' '}
        {changes.length === 0
          ? 'No date moves: nothing that is due depends on these days, or they were measured.'
          : 'It moves:'}
      </p>
      <PlanChangeList changes={changes} />
      {mayChange && (
        <LineButton action={takeHappenedOut} fields={{ household: id, list, is: is }} about={is} className="quiet">
          Take it back
        </LineButton>
      )}
    </div>
  )
}
