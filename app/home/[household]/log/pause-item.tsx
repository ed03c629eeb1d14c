import { dayInWords } from '@/lib/core/day-words'
import { doorInWords } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'
import { localDay } from '@/lib/core/zone'
import type { StoredHousehold } from '@/lib/data/households'
import type { PauseLine } from '@/lib/data/pauses'
import { OneButton } from '../one-button'
import { takeBackInLog } from './actions'

interface PauseItemProps {
  stored: StoredHousehold
  pause: PauseLine
  /** The filters to come back to. */
  back: string
  mayRecord: boolean
}

/** An item that was put off, or nobody at home: until when, by whom and through which door. */
export function PauseItem({ stored, pause, back, mayRecord }: PauseItemProps) {
  const { id, from, until, by, at, door, ended, running } = pause
  const said = dayInWords(localDay(at, stored.timeZone))
  const what = pause.kind === 'away' ? 'Nobody at home' : `Put off: ${taskInWords(pause.task)}`
  return (
    <li id={`entry-${id}`} className="log-line">
      <p className="log-day">{dayInWords(from)}</p>
      <h2 className={ended ? 'log-gone' : undefined}>
        {what}
        {pause.kind === 'put-off' && (
          <span className="due-where">, {subjectInWords(stored.household, pause.subject)}</span>
        )}
      </h2>
      <p>Until {dayInWords(until)}.</p>
      <p className="hint">
        Said by {by.name} on {said}, {doorInWords(door)}.
      </p>
      {ended && (
        <p>
          <strong>Ended early</strong> on {dayInWords(localDay(ended.at, stored.timeZone))} by {ended.by}.
        </p>
      )}
      {mayRecord && running && (
        <div className="buttons no-print">
          <OneButton action={takeBackInLog} fields={{ household: stored.id, pause: id, back }}>
            Take back
            <span className="visually-hidden">
              {' '}
              {what.toLowerCase()}, until {dayInWords(until)}
            </span>
          </OneButton>
        </div>
      )}
    </li>
  )
}
