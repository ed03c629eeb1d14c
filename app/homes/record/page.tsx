import { randomUUID } from 'node:crypto'
import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { HomesNav } from '@/app/homes-nav'
import type { PageProps } from '@/app/page-props'
import { plans } from '@/app/plans'
import { listUnits } from '@/app/units'
import { requireViewer } from '@/lib/access/page'
import type { Day } from '@/lib/core/day'
import { awayInWords, dateInWords, dayInWords } from '@/lib/core/day-words'
import { compareNames } from '@/lib/core/home-list'
import type { Task } from '@/lib/core/household'
import { subjectInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import { taskDoneInWords, taskInWords } from '@/lib/core/words'
import { listHouseholds, type StoredHousehold } from '@/lib/data/households'
import { parseBuildingTask, tickValue } from '@/lib/forms/ticked-form'
import { ChooseForm } from './choose-form'
import { TickBox, TickForm } from './tick-form'

export const metadata: Metadata = { title: 'Record for a building' }

export default databasePage(async ({ searchParams }: PageProps) => {
  const params = await searchParams
  const { building, task, on } = parseBuildingTask(params)
  const viewer = await requireViewer(
    building === null ? '/homes/record' : `/homes/record?${new URLSearchParams({ building })}`,
  )
  const units = (await listUnits(viewer)).filter(
    ({ home: { role, state, building } }) =>
      building !== null && state === 'open' && role !== null && may(role, 'record'),
  )
  const buildings = [...new Set(units.map(({ home }) => home.building ?? ''))].sort(compareNames)
  const here = units.filter(({ home }) => home.building === building)
  const today = here.map(({ plan }) => plan.on).toSorted()[0] ?? units[0]?.plan.on ?? null
  const tasks = [...new Set(here.flatMap(({ plan }) => plan.items.map((item) => item.task)))]
  const chosen = building !== null && task !== null && on !== null && today !== null && on <= today && here.length > 0
  const homes = chosen
    ? await listHouseholds(
        viewer,
        here.map(({ home }) => home.id),
      )
    : []
  return (
    <>
      <HomesNav current="Homes" />
      <main id="main" tabIndex={-1}>
        <h1>{chosen ? `${taskDoneInWords(task)}: all of ${building}` : 'Record for a whole building'}</h1>
        {buildings.length === 0 ? (
          <p className="lead">
            None of your homes stands in a building that you may record in. <Link href="/homes">Back to Homes</Link>
          </p>
        ) : (
          <>
            {building !== null && here.length === 0 && (
              <p className="notice">No open home of yours stands in a building of this name. Choose another.</p>
            )}
            {on !== null && today !== null && on > today && (
              <p className="notice">{dayInWords(on)} is not over yet: choose today or an earlier day.</p>
            )}
            {chosen ? (
              <Preview
                homes={homes.toSorted((a, b) => compareNames(a.name, b.name))}
                task={task}
                on={on}
                today={today}
                account={viewer.accountId}
              />
            ) : (
              <ChooseForm
                buildings={buildings}
                building={building}
                tasks={tasks}
                task={task}
                on={on}
                today={today ?? ''}
              />
            )}
            {chosen && (
              <p className="after-form no-print">
                <Link href={`/homes/record?${new URLSearchParams({ building })}`}>Another task or day</Link>
              </p>
            )}
          </>
        )}
      </main>
    </>
  )
})

interface PreviewProps {
  homes: StoredHousehold[]
  task: Task
  on: Day
  today: Day
  account: string
}

/** Every home of the building with a box for each thing that the task is about. */
function Preview({ homes, task, on, today, account }: PreviewProps) {
  const lines = homes.flatMap((stored) => {
    const items = plans.of(stored, today).items.filter((item) => item.task === task)
    return items.map((item) => ({ stored, item, isDone: isRecorded(stored, task, item.subject, on) }))
  })
  const open = lines.filter(({ isDone }) => !isDone)
  if (lines.length === 0) return <p className="lead">Nothing in this building is on the list for this.</p>
  return (
    <TickForm once={randomUUID()} account={account} on={on} today={today}>
      <p className="lead">
        Nothing is recorded yet. {open.length} of {lines.length} are ticked; take out what was not done.
      </p>
      <div className="ticks">
        {lines.map(({ stored, item, isDone }) =>
          isDone ? (
            <p className="tick" key={`${stored.id} ${item.subject}`}>
              <strong>{stored.name}</strong>, {subjectInWords(stored.household, item.subject)}: recorded on{' '}
              {dateInWords(on, today)} already.
            </p>
          ) : (
            <TickBox
              key={`${stored.id} ${item.subject}`}
              first={stored === open[0]?.stored && item === open[0]?.item}
              ticked
              what={`${stored.name}: ${taskInWords(task)}, ${subjectInWords(stored.household, item.subject)}`}
              value={tickValue({ householdId: stored.id, task, subject: item.subject })}
            >
              <strong>{stored.name}</strong>, {subjectInWords(stored.household, item.subject)}; due{' '}
              {awayInWords(item.due, today)}
            </TickBox>
          ),
        )}
      </div>
    </TickForm>
  )
}

function isRecorded({ household }: StoredHousehold, task: Task, subject: string, on: Day): boolean {
  return household.records.some((record) =>
    record.kind === 'service-done'
      ? record.on === on && record.task === task && record.subject === subject
      : record.on === on && record.filter === subject && record.kind === 'filter-changed',
  )
}
