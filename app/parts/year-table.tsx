import type { Day } from '@/lib/core/day'
import { dateInWords, spanInWords } from '@/lib/core/day-words'
import type { SystemYear } from '@/lib/core/plan-types'
import { numberInWords } from '@/lib/core/unit-words'
import { doerInWords, taskDoneInWords, taskInWords } from '@/lib/core/words'
import { TableBox } from './table-box'
import { monthHours } from './year-marks'

/** The drawing in words and figures: hours by month, and every day on it. */
export function YearTable({ year, names, on }: { year: SystemYear; names: (subject: string) => string; on: Day }) {
  const days = [
    ...year.filters.flatMap(({ filter, events }) =>
      events.map(({ on: day, kind, task }) => ({
        sort: day,
        when: dateInWords(day, on),
        what:
          kind === 'forecast'
            ? `${taskInWords(task)} (expected)`
            : taskDoneInWords(kind === 'looked' ? 'look-at-filter' : task),
        where: names(filter),
      })),
    ),
    ...year.windows.map(({ earliest, latest, task, subject, doer }) => ({
      sort: earliest,
      when: spanInWords(earliest, latest, on),
      what: `${taskInWords(task)}, by ${doerInWords(doer)}`,
      where: names(subject),
    })),
  ].sort((a, b) => (a.sort < b.sort ? -1 : a.sort > b.sort ? 1 : 0))
  return (
    <details className="year-table">
      <summary>The same year as a table</summary>
      <TableBox name={`The year of ${year.name}`}>
        <table>
          <caption>Hours a month, {year.name}</caption>
          <thead>
            <tr>
              <th scope="col">Month</th>
              <th scope="col" className="number">
                Heating, h
              </th>
              <th scope="col" className="number">
                Cooling, h
              </th>
            </tr>
          </thead>
          <tbody>
            {monthHours(year).map(({ month, heat, cool }) => (
              <tr key={month}>
                <th scope="row">{month}</th>
                <td className="number">{numberInWords(heat)}</td>
                <td className="number">{numberInWords(cool)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {days.length > 0 && (
          <table>
            <caption>Filters and services, {year.name}</caption>
            <thead>
              <tr>
                <th scope="col">When</th>
                <th scope="col">What</th>
                <th scope="col">Where</th>
              </tr>
            </thead>
            <tbody>
              {days.map(({ sort, when, what, where }) => (
                <tr key={`${sort} ${what} ${where}`}>
                  <th scope="row">{when}</th>
                  <td>{what}</td>
                  <td>{where}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </TableBox>
    </details>
  )
}
