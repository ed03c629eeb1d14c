import { type Day, dayText } from '@/lib/core/day'
import { dayInWords, plural } from '@/lib/core/day-words'
import type { LookWorth } from '@/lib/core/look-worth'
import type { Tables } from '@/lib/core/tables'
import { percentInWords } from '@/lib/core/unit-words'
import { lightInWords } from '@/lib/core/words'
import { rangeInWords, worthInWords } from '@/lib/core/worth-words'
import { MarkNote } from '../mark-note'

interface LookWorthProps {
  name: string
  worth: LookWorth | null
  on: Day
  tables: Tables
}

/** What a look today would teach: each answer with its chance, and what the day would be then. */
export function LookWorthView({ name, worth, on, tables }: LookWorthProps) {
  const { lookWorthDays } = tables.figures
  return (
    <>
      <p>{worthInWords(worth)}</p>
      {worth && (
        <div className="table-box">
          <table>
            <caption>What a look today could say, {name}</caption>
            <thead>
              <tr>
                <th scope="col">What you may see</th>
                <th scope="col" className="number">
                  Chance
                </th>
                <th scope="col">Then it is full</th>
                <th scope="col" className="number">
                  Range
                </th>
              </tr>
            </thead>
            <tbody>
              {worth.answers.map((answer) => (
                <tr key={answer.light}>
                  <th scope="row">{lightInWords(answer.light)}</th>
                  <td className="number">{percentInWords(answer.chance)}</td>
                  <td>
                    {rangeInWords(answer, on)}
                    {answer.late > answer.early && `, likeliest ${likeliest(answer.due, on)}`}
                  </td>
                  <td className="number">{plural(answer.late - answer.early, 'day')}</td>
                </tr>
              ))}
              <tr>
                <th scope="row">Without a look</th>
                <td />
                <td>
                  {rangeInWords(worth.now, on)}
                  {worth.now.late > worth.now.early && `, likeliest ${likeliest(worth.now.due, on)}`}
                </td>
                <td className="number">{plural(worth.rangeDays, 'day')}</td>
              </tr>
            </tbody>
          </table>
        </div>
      )}
      <p className="hint">
        We ask for a look when it narrows the range by {plural(lookWorthDays.value, 'day')} or more on average.{' '}
        {lookWorthDays.reason} <MarkNote mark={lookWorthDays.mark} />
      </p>
    </>
  )
}

function likeliest(day: number, on: Day): string {
  const text = dayText(day)
  return text === on ? 'today' : dayInWords(text, on)
}
