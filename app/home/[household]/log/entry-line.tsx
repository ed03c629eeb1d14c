import Link from 'next/link'
import { dayInWords } from '@/lib/core/day-words'
import { detailsInWords, doorInWords, recordInWords, subjectOfRecord } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { localDay } from '@/lib/core/zone'
import type { StoredHousehold } from '@/lib/data/households'
import type { LogEntry } from '@/lib/data/log'
import { OneButton } from '../one-button'
import { undoInLog } from './actions'

interface EntryLineProps {
  stored: StoredHousehold
  entry: LogEntry
  /** What stood in its place before, the latest first. */
  earlier: LogEntry[]
  /** The filters to come back to. */
  back: string
  mayRecord: boolean
}

/** One thing done: what, which, how, by whom and through which door; with whatever it said before. */
export function EntryLine({ stored, entry, earlier, back, mayRecord }: EntryLineProps) {
  const { record, undone } = entry
  const subject = subjectOfRecord(record)
  return (
    <li id={`entry-${entry.id}`} className="log-line">
      <p className="log-day">{dayInWords(record.on)}</p>
      <h2 className={entry.standing ? undefined : 'log-gone'}>
        {recordInWords(record)}
        <span className="due-where">, {subjectInWords(stored.household, subject)}</span>
      </h2>
      <Details entry={entry} />
      <p className="hint">{recordedInWords(stored, entry)}</p>
      {undone && (
        <p>
          <strong>Taken back</strong> on {dayInWords(localDay(undone.at, stored.timeZone))} by {undone.by}. It counts no
          more.
        </p>
      )}
      {entry.correctedBy && (
        <p>
          <strong>Corrected since.</strong>{' '}
          <Link href={`/home/${stored.id}/log#entry-${entry.correctedBy}`}>The entry that counts</Link>
        </p>
      )}
      {earlier.map((before) => (
        <div key={before.id} className="log-before">
          <p>
            <strong>Before the correction:</strong>{' '}
            <del>
              {[recordInWords(before.record), dayInWords(before.record.on), ...detailsInWords(before.record)].join(
                ', ',
              )}
            </del>
          </p>
          <p className="hint">{recordedInWords(stored, before)}</p>
        </div>
      ))}
      {mayRecord && entry.standing && (
        <div className="buttons no-print">
          <Link className="button" href={`/home/${stored.id}/log/correct/${entry.id}`}>
            Correct
            <span className="visually-hidden">
              {' '}
              {recordInWords(record).toLowerCase()}, {dayInWords(record.on)}
            </span>
          </Link>
          <OneButton action={undoInLog} fields={{ household: stored.id, entry: entry.id, back }}>
            Take back
            <span className="visually-hidden">
              {' '}
              {recordInWords(record).toLowerCase()}, {dayInWords(record.on)}
            </span>
          </OneButton>
        </div>
      )}
    </li>
  )
}

function Details({ entry }: { entry: LogEntry }) {
  const details = detailsInWords(entry.record)
  if (details.length === 0) return null
  const text = details.join(', ')
  return <p>{text.charAt(0).toUpperCase() + text.slice(1)}.</p>
}

/** `Recorded by Ann on Friday 20 November 2026, on a page here.` */
export function recordedInWords({ timeZone }: Pick<StoredHousehold, 'timeZone'>, { by, at, door }: LogEntry): string {
  return `Recorded by ${by.name} on ${dayInWords(localDay(at, timeZone))}, ${doorInWords(door)}.`
}
