import { dateInWords } from '@/lib/core/day-words'
import type { PlanChange } from '@/lib/core/plan-changes'
import { taskInWords } from '@/lib/core/words'
import type { Edited } from '../actions'

/** What a change does to the dates, carrying what was typed until it is saved. */
export function Preview({ edited, removal }: { edited: Edited; removal: string | null }) {
  const { kind, typed, remove, changes } = edited
  return (
    <>
      {kind === 'conflict' && (
        <div className="notice" role="alert">
          <p>
            <strong>Somebody else changed this home meanwhile, so nothing was saved yet.</strong> What you typed is
            still here. Below is what it does to the home as it stands now; save to put yours into it.
          </p>
        </div>
      )}
      {remove && <p>Taking it out. {removal}</p>}
      <h2>{changes.length === 0 ? 'No date moves' : 'What it does to the dates'}</h2>
      {changes.length === 0 && <p>Everything stays due when it was.</p>}
      <ul className="changes">
        {changes.map((change) => (
          <li key={`${change.task} ${change.subject} ${change.before} ${change.after}`}>
            {taskInWords(change.task)}, {change.subject}: <strong>{movedInWords(change)}</strong>
          </li>
        ))}
      </ul>
      {Object.entries(typed).flatMap(([name, values]) =>
        // biome-ignore lint/suspicious/noArrayIndexKey: the texts of one field, in their order
        values.map((value, index) => <input key={`${name} ${index}`} type="hidden" name={name} value={value} />),
      )}
      {remove && <input type="hidden" name="remove" value="yes" />}
    </>
  )
}

function movedInWords({ before, after }: PlanChange): string {
  if (before === null) return `new, ${after === null ? '' : dateInWords(after)}`
  if (after === null) return `${dateInWords(before)}, no longer`
  const sameYear = before.slice(0, 4) === after.slice(0, 4)
  return `${dateInWords(before, sameYear ? after : undefined)} → ${dateInWords(after)}`
}
