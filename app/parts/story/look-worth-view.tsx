import { type Day, dayText } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import type { DayRange, LookWorth } from '@/lib/core/look-worth'
import type { Tables } from '@/lib/core/tables'
import { percentInWords } from '@/lib/core/unit-words'
import { lightInWords } from '@/lib/core/words'
import { rangeInWords, worthInWords } from '@/lib/core/worth-words'
import { MarkNote } from '../mark-note'

interface LookWorthProps {
  worth: LookWorth | null
  on: Day
  tables: Tables
}

/** What a look today would teach: each answer with its chance, and when the filter is full then. */
export function LookWorthView({ worth, on, tables }: LookWorthProps) {
  const { lookWorthDays } = tables.figures
  return (
    <>
      <p>{worthInWords(worth)}</p>
      {worth && (
        <ul className="plain-list">
          <li>
            <p>
              <strong>Without a look</strong>: full {whenInWords(worth.now, on)}.
            </p>
          </li>
          {worth.answers.map((answer) => (
            <li key={answer.light}>
              <p>
                <strong>{lightInWords(answer.light)}</strong>, with a chance of {percentInWords(answer.chance)}: full{' '}
                {whenInWords(answer, on)}.
              </p>
            </li>
          ))}
        </ul>
      )}
      <p className="hint">
        We ask for a look when it narrows the days by {lookWorthDays.value} or more on average. {lookWorthDays.reason}{' '}
        <MarkNote mark={lookWorthDays.mark} />
      </p>
    </>
  )
}

function whenInWords({ early, due, late }: DayRange, on: Day): string {
  const range = rangeInWords({ early, late }, on)
  if (early === late) return range
  const likeliest = dayText(due) === on ? 'today' : dayInWords(dayText(due), on)
  return `${range}, likeliest ${likeliest} (${plural(late - early, 'day')})`
}
