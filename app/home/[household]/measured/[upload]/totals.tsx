import { TableBox } from '@/app/parts/table-box'
import { plural, spanInWords } from '@/lib/core/day-words'
import { numberInWords } from '@/lib/core/unit-words'
import { stepInWords, type Understood } from '@/lib/forms/thermostat/understand'
import type { Brought } from './read-brought'

const MONTHS = 'January February March April May June July August September October November December'.split(' ')
const MOST_GAPS = 12

/** What was understood: the span, the hours by month, and what is left out. */
export function Totals({ brought: { understood, system } }: { brought: Brought }) {
  const { span, rows, months, leftOut } = understood
  if (!span) return null
  const has = (key: 'heatHours' | 'coolHours' | 'fanHours') => months.some(({ piece }) => piece[key] !== undefined)
  const columns = (['heatHours', 'coolHours', 'fanHours'] as const).filter(has)
  const days = leftOut.reduce((sum, { from, to }) => sum + (Date.parse(to) - Date.parse(from)) / 86_400_000 + 1, 0)
  return (
    <>
      <p className="lead">
        {system.name}: {numberInWords(rows)} rows, {spanInWords(span.from, span.to)}. {howInWords(understood)}
      </p>
      {months.length > 0 && (
        <TableBox name="Hours by month">
          <table className="hours">
            <caption>Hours by month</caption>
            <thead>
              <tr>
                <th scope="col">Month</th>
                {columns.map((key) => (
                  <th scope="col" className="number" key={key}>
                    {HEADS[key]}
                  </th>
                ))}
                <th scope="col" className="number">
                  Days
                </th>
              </tr>
            </thead>
            <tbody>
              {months.map(({ month, days: count, piece }) => (
                <tr key={month}>
                  <th scope="row">
                    {MONTHS[Number(month.slice(5)) - 1]} {month.slice(0, 4)}
                  </th>
                  {columns.map((key) => (
                    <td className="number" key={key}>
                      {piece[key] === undefined ? '–' : numberInWords(piece[key], 1)}
                    </td>
                  ))}
                  <td className="number">{count}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
      {leftOut.length > 0 && (
        <p>
          Left out, because less than nine tenths of the day is known: {plural(days, 'day')} (
          {leftOut
            .slice(0, MOST_GAPS)
            .map(({ from, to }) => spanInWords(from, to))
            .join('; ')}
          {leftOut.length > MOST_GAPS && `; and ${leftOut.length - MOST_GAPS} more stretches`}). A time without rows is
          not taken for off: there the estimate stands.
        </p>
      )}
    </>
  )
}

const HEADS = { heatHours: 'Heating', coolHours: 'Cooling', fanHours: 'Blower' } as const

/** How the rows were read, in a sentence or two. */
function howInWords({ kind, isChangeLog, stepSeconds, together, fan, months }: Understood): string {
  const step = stepSeconds === 3600 ? 'hour' : stepInWords(stepSeconds)
  const rows = isChangeLog
    ? 'A row comes whenever something changes: what it says lasts until the next, a run for a day at most, a pause for a week.'
    : kind === 'day'
      ? 'Each row is a day.'
      : `A row comes every ${step}.`
  const several = Object.entries(together).map(([run, way]) =>
    way === 'added'
      ? `The columns of ${RUNS[run]} run in turn: they are added.`
      : `The columns of ${RUNS[run]} run at the same time: the longest counts.`,
  )
  const blower =
    months.some(({ piece }) => piece.fanHours !== undefined) && !(fan.withHeat && fan.withCool)
      ? ['The blower’s hours hold those for heating and cooling too: the file tells of the fan alone.']
      : []
  return [rows, ...several, ...blower].join(' ')
}

const RUNS: Record<string, string> = { heat: 'heating', cool: 'cooling', fan: 'the fan' }
