import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { KeptList } from '@/app/homes/record/kept-list'
import { RememberPage } from '@/app/homes/record/remember-page'
import { TickForm } from '@/app/homes/record/tick-form'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { requireViewer } from '@/lib/access/page'
import { compareDays } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import { compareNames } from '@/lib/core/home-list'
import { homeInWords } from '@/lib/core/subject-words'
import { listHouseholds } from '@/lib/data/households'
import { parseWalkQuery, walkAddress } from '@/lib/forms/rounds-query'
import { isShared, listRoundUnits } from '../for-viewer'
import { WalkUnit } from './walk-unit'

export const metadata: Metadata = { title: 'Walking list' }

export default databasePage(async ({ searchParams }: PageProps) => {
  const walk = parseWalkQuery(await searchParams)
  if (!walk) notFound()
  const viewer = await requireViewer(walkAddress(walk))
  const here = (await listRoundUnits(viewer)).filter(({ unit }) =>
    'building' in walk ? isShared(unit) && unit.building === walk.building : unit.id === walk.home,
  )
  if (here.length === 0) notFound()
  // All that may be done by then, so that what an earlier walk left over is on this list too.
  const due = here
    .map((each) => ({
      ...each,
      items: each.items.filter(({ doer, earliest }) => doer === walk.doer && earliest <= walk.on),
    }))
    .filter(({ items }) => items.length > 0)
    .sort((a, b) => compareNames(a.unit.name, b.unit.name))
  const stored = new Map(
    (
      await listHouseholds(
        viewer,
        due.map(({ unit }) => unit.id),
      )
    ).map((home) => [home.id, home]),
  )
  const today = here[0]?.unit.on ?? walk.on
  const count = due.reduce((sum, { items }) => sum + items.length, 0)
  const mayRecord = due.some((each) => each.mayRecord)
  const list = due.flatMap(({ unit, items, mayRecord }, index) => {
    const home = stored.get(unit.id)
    return home ? [<WalkUnit key={unit.id} home={home} items={items} mayRecord={mayRecord} first={index === 0} />] : []
  })
  return (
    <>
      <HomesNav current="Rounds" />
      <RememberPage />
      <main id="main" tabIndex={-1} className="walk">
        <h1>{'building' in walk ? walk.building : here[0] && homeInWords(here[0].unit)}</h1>
        <p className="lead">
          {dayInWords(walk.on)}, by {walk.doer === 'technician' ? 'a licensed technician' : 'you'}.{' '}
          {count === 0
            ? 'Everything is done that could be done by then.'
            : `${plural(count, 'thing')} in ${plural(due.length, 'home')}.`}
        </p>
        {mayRecord ? (
          <TickForm
            once={randomUUID()}
            account={viewer.accountId}
            on={compareDays(walk.on, today) < 0 ? walk.on : today}
            today={today}
          >
            {list}
          </TickForm>
        ) : (
          <>
            <KeptList account={viewer.accountId} />
            {list}
          </>
        )}
        <p className="after-form no-print">
          <Link href="/rounds">Back to Rounds</Link>
        </p>
      </main>
    </>
  )
})
