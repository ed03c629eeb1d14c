import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { homeTitle } from '@/app/home/[household]/title'
import { now } from '@/app/now'
import { ErrorSummary } from '@/app/parts/error-summary'
import { sentenceOf } from '@/app/sentence-of'
import { compareDays } from '@/lib/core/day'
import { homeInWords } from '@/lib/core/subject-words'
import { may } from '@/lib/core/viewer'
import type { LogEntry } from '@/lib/data/log'
import { logQueryText, parseLogQuery } from '@/lib/forms/log-filter'
import { HomeNav } from '../home-nav'
import { loadHome } from '../load'
import { WhatHappenedLinks } from '../what-happened/links'
import { EntryLine } from './entry-line'
import { GuideLine } from './guide-line'
import { loadLog } from './load-log'
import { LogFilters } from './log-filters'
import { PauseItem } from './pause-item'
import { ReminderLine } from './reminder-line'

type Props = {
  params: Promise<{ household: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const generateMetadata = homeTitle('Log')

// Longer pages are slow on a phone, and nobody reads them.
const LINES = 200

const SAYS = {
  undone: 'Taken back. The log keeps it, marked.',
  corrected: 'Corrected. The log keeps what stood there before.',
}

async function Page({ params, searchParams }: Props) {
  const { household: id } = await params
  const sent = await searchParams
  const { viewer, stored } = await loadHome(id, `/home/${id}/log`)
  const { query, faults } = parseLogQuery(sent)
  const { entries, reminders, pauses, guide, all, choices } = await loadLog({ viewer, at: await now() }, stored, query)
  const back = logQueryText(query)
  const earlier = earlierOf(all)
  // What was corrected stands with what stands in its place, unless only the earlier one is asked for.
  const shown = new Set(entries.map((entry) => entry.id))
  const done = entries.filter(({ correctedBy }) => correctedBy === null || !shown.has(correctedBy))
  const lines = [
    ...done.map((entry) => ({ on: entry.record.on, entry })),
    ...pauses.map((pause) => ({ on: pause.from, pause })),
    ...reminders.map((reminder) => ({ on: reminder.on, reminder })),
    ...guide.map((line) => ({ on: line.on, line })),
  ].sort((a, b) => compareDays(b.on, a.on))
  const isEmpty = all.length + reminders.length + pauses.length + guide.length === 0
  const say = sentenceOf(SAYS, sent.did)
  const mayRecord = may(stored.role, 'record') && stored.state === 'open'
  const isWhole = sent.all === '1' || lines.length <= LINES
  const years = [...new Set(all.filter(({ standing }) => standing).map(({ record }) => record.on.slice(0, 4)))]
  return (
    <>
      <HomeNav id={id} home={stored.household} current="Log" />
      <main id="main" tabIndex={-1}>
        <h1>Log</h1>
        <p className="lead">
          Everything that was done in {homeInWords(stored.household)}, what was put off, what the self-check wrote down,
          when nobody was at home and who was reminded, the latest day first.
        </p>
        {say && (
          <div className="notice" role="status">
            <p>{say}</p>
          </div>
        )}
        <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path, say }))} />
        <WhatHappenedLinks id={id} household={stored.household} />
        {!(isEmpty && back === '') && <LogFilters id={id} query={query} choices={choices} />}
        {lines.length === 0 && <Nothing id={id} isEmpty={isEmpty && back === ''} />}
        <ol className="log-list">
          {(isWhole ? lines : lines.slice(0, LINES)).map((line) =>
            'entry' in line ? (
              <EntryLine
                key={line.entry.id}
                stored={stored}
                entry={line.entry}
                earlier={earlier(line.entry)}
                back={back}
                mayRecord={mayRecord}
              />
            ) : 'line' in line ? (
              <GuideLine key={line.line.id} stored={stored} line={line.line} />
            ) : 'pause' in line ? (
              <PauseItem key={line.pause.id} stored={stored} pause={line.pause} back={back} mayRecord={mayRecord} />
            ) : (
              <ReminderLine key={line.reminder.id} stored={stored} reminder={line.reminder} />
            ),
          )}
        </ol>
        {!isWhole && (
          <p>
            These are the latest {LINES} of {lines.length}.{' '}
            <Link href={`${back || '?'}${back && '&'}all=1`}>Show all</Link>
          </p>
        )}
        {!isEmpty && (
          <section aria-labelledby="take-along" className="no-print">
            <h2 id="take-along">Take it along</h2>
            <ul>
              {years.map((year) => (
                <li key={year}>
                  <Link href={`/home/${id}/log/${year}`}>Maintenance record of {year}, to print</Link>
                </li>
              ))}
              <li>
                <a href={`/home/${id}/log/csv${back}`}>
                  {back ? 'What is shown here' : 'The whole log'} as a table (CSV)
                </a>
              </li>
            </ul>
          </section>
        )}
      </main>
    </>
  )
}

function Nothing({ id, isEmpty }: { id: string; isEmpty: boolean }) {
  return (
    <div className="nothing">
      <h2>{isEmpty ? 'Nothing is recorded yet' : 'Nothing like that is in the log'}</h2>
      <p>
        {isEmpty ? (
          <>
            Whatever you record under <Link href={`/home/${id}`}>Due</Link> stands here from then on, with who did it
            and when.
          </>
        ) : (
          <Link href={`/home/${id}/log`}>Show everything</Link>
        )}
      </p>
    </div>
  )
}

/** What stood in an entry's place before it, the latest first. */
function earlierOf(all: LogEntry[]): (entry: LogEntry) => LogEntry[] {
  const before = new Map(all.flatMap((entry) => (entry.correctedBy ? [[entry.correctedBy, entry] as const] : [])))
  return (entry) => {
    const chain: LogEntry[] = []
    for (let found = before.get(entry.id); found; found = before.get(found.id)) chain.push(found)
    return chain
  }
}

export default databasePage(Page)
