import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { KeptList } from '@/app/homes/record/kept-list'
import { RememberPage } from '@/app/homes/record/remember-page'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { ErrorSummary } from '@/app/parts/error-summary'
import { OfWhat } from '@/app/parts/of-what'
import type { Unit } from '@/app/units'
import { requireViewer } from '@/lib/access/page'
import { compareDays, dayNumber } from '@/lib/core/day'
import { awayInWords, dayInWords, plural } from '@/lib/core/day-words'
import { compareNames } from '@/lib/core/home-list'
import { DOERS, type Doer } from '@/lib/core/household'
import type { Round } from '@/lib/core/plan-types'
import { planRounds, type Rounds } from '@/lib/core/rounds'
import { homeInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { calendarOf, parseRoundsQuery, type RoundsQuery, roundsAddress, walkAddress } from '@/lib/forms/rounds-query'
import { CalendarForm } from './calendar-form'
import { isShared, listRoundUnits } from './for-viewer'

export const metadata: Metadata = { title: 'Rounds' }

const HEADINGS: Record<Doer, string> = {
  resident: 'What you walk yourself',
  technician: 'A licensed technician’s visits',
}
const ROUNDS_A_PAGE = 60

export default databasePage(async ({ searchParams }: PageProps) => {
  const { query, faults } = parseRoundsQuery(await searchParams)
  const viewer = await requireViewer(roundsAddress(query))
  const all = await listRoundUnits(viewer)
  const units = query.building === null ? all : all.filter(({ unit }) => unit.building === query.building)
  const planned = planRounds(
    units.map(({ unit, items }) => ({
      home: { ...unit, building: unit.building ?? undefined },
      plan: { items },
      on: dayNumber(unit.on),
    })),
    { ...calendarOf(query), openDays: query.openDays },
  )
  const byId = new Map(units.map(({ unit }) => [unit.id, unit]))
  const first = (query.page - 1) * ROUNDS_A_PAGE
  const inOrder = planned.rounds.toSorted((a, b) => compareDays(a.on, b.on) || compareNames(a.building, b.building))
  const shown = inOrder.slice(first, first + ROUNDS_A_PAGE)
  return (
    <>
      <HomesNav current="Rounds" />
      <main id="main" tabIndex={-1}>
        <h1>{query.building === null ? 'Rounds' : `Rounds at ${query.building}`}</h1>
        <KeptList account={viewer.accountId} />
        <RememberPage />
        <Saved planned={planned} query={query} />
        <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path, say }))} />
        <CalendarForm query={query} faults={faults} />
        {DOERS.map((doer) => (
          <RoundList key={doer} doer={doer} rounds={shown.filter((round) => round.doer === doer)} byId={byId} />
        ))}
        <More query={query} count={planned.rounds.length} />
      </main>
    </>
  )
})

function Saved({ planned: { rounds, daysIfEachOnItsDue }, query }: { planned: Rounds; query: RoundsQuery }) {
  const within = `what may be done in the next ${query.openDays} days`
  if (rounds.length === 0) return <p className="lead">Nothing of {within} needs a visit.</p>
  const saved = daysIfEachOnItsDue - rounds.length
  return (
    <p className="lead">
      <strong>{plural(rounds.length, 'visit')}</strong> for {within}.{' '}
      {saved > 0
        ? `Doing each thing on its own day would take ${daysIfEachOnItsDue}: ${plural(saved, 'visit')} saved.`
        : 'Doing each thing on its own day would take no more.'}
    </p>
  )
}

function RoundList({ doer, rounds, byId }: { doer: Doer; rounds: Round[]; byId: Map<string, Unit> }) {
  if (rounds.length === 0) return null
  return (
    <section aria-labelledby={`by-${doer}`}>
      <h2 id={`by-${doer}`}>{HEADINGS[doer]}</h2>
      <ol className="rounds">
        {rounds.map((round) => {
          const unit = byId.get(round.items[0]?.household ?? '')
          if (!unit) return null
          const { building, id } = unit
          const where = isShared(unit) && building !== null ? { building } : { home: id }
          const homes = new Set(round.items.map(({ household }) => household)).size
          return (
            <li key={`${round.on} ${building} ${id}`}>
              <h3>
                <Link href={walkAddress({ doer, on: round.on, ...where })} prefetch={false}>
                  {dayInWords(round.on, unit.on)}, {'building' in where ? round.building : homeInWords(unit)}
                  {doer === 'technician' && <OfWhat>a technician’s visit</OfWhat>}
                </Link>
              </h3>
              <p>
                {awayInWords(round.on, unit.on)}; {'building' in where && `${plural(homes, 'home')}, `}
                {tasksInWords(round)}
              </p>
            </li>
          )
        })}
      </ol>
    </section>
  )
}

/** `12 × change the filter, 3 × test the alarm`. */
function tasksInWords({ items }: Round): string {
  const counts = new Map<string, number>()
  for (const { task } of items) counts.set(task, (counts.get(task) ?? 0) + 1)
  return [...new Set(items.map(({ task }) => task))]
    .map((task) => `${counts.get(task)} × ${taskInWords(task).toLowerCase()}`)
    .join(', ')
}

function More({ query, count }: { query: RoundsQuery; count: number }) {
  const pages = Math.ceil(count / ROUNDS_A_PAGE)
  if (pages <= 1) return null
  return (
    <nav className="pages no-print" aria-label="Pages">
      {query.page > 1 && (
        <Link className="button" rel="prev" href={roundsAddress({ ...query, page: query.page - 1 })} prefetch={false}>
          Earlier visits
        </Link>
      )}
      <span>
        Page {query.page} of {pages}
      </span>
      {query.page < pages && (
        <Link className="button" rel="next" href={roundsAddress({ ...query, page: query.page + 1 })} prefetch={false}>
          Later visits
        </Link>
      )}
    </nav>
  )
}
