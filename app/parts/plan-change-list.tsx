import { daysBetween } from '@/lib/core/day'
import { dateInWords, durationInWords } from '@/lib/core/day-words'
import type { PlanChange } from '@/lib/core/plan-changes'
import { taskInWords } from '@/lib/core/words'

/** Which dates move, from when to when, and by how much. */
export function PlanChangeList({ changes }: { changes: readonly PlanChange[] }) {
  return (
    <ul className="changes">
      {changes.map((change) => (
        <li key={`${change.task} ${change.subject} ${change.before} ${change.after}`}>
          {taskInWords(change.task)}, {change.subject}: <strong>{movedInWords(change)}</strong>
        </li>
      ))}
    </ul>
  )
}

/** `5 January → 14 December 2026, 3 weeks sooner`. */
export function movedInWords({ before, after }: PlanChange): string {
  if (before === null) return `new, ${after === null ? '' : dateInWords(after)}`
  if (after === null) return `${dateInWords(before)}, no longer`
  const sameYear = before.slice(0, 4) === after.slice(0, 4)
  const days = daysBetween(before, after)
  const by = `${durationInWords(days)} ${days < 0 ? 'sooner' : 'later'}`
  return `${dateInWords(before, sameYear ? after : undefined)} → ${dateInWords(after)}, ${by}`
}
