import type { Day } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import type { Effect } from '@/lib/core/plan-types'
import { MarkNote } from './mark-note'

/** What each fact does to a filter's day, the strongest first: "the two pets: 23 days earlier". */
export function EffectList({ effects, on }: { effects: Effect[]; on: Day }) {
  const moving = effects.filter(({ days }) => days !== 0).sort((a, b) => Math.abs(b.days) - Math.abs(a.days))
  if (moving.length === 0) return <p>No single fact moves it: changed alone, each leaves the day where it is.</p>
  return (
    <ul className="effects">
      {moving.map(({ fact, instead, dueWithout, days, mark, source }) => (
        <li key={fact}>
          <strong>
            {fact}: {plural(Math.abs(days), 'day')} {days < 0 ? 'earlier' : 'later'}
          </strong>
          <span>
            With {instead} it would be {dayInWords(dueWithout, on)}. <MarkNote mark={mark} source={source} />
          </span>
        </li>
      ))}
    </ul>
  )
}
