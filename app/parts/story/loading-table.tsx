import { addMonths, type Day, dayNumber, dayText } from '@/lib/core/day'
import { dateInWords } from '@/lib/core/day-words'
import { loadOn, type Stay } from '@/lib/core/filter-story'
import { percentInWords } from '@/lib/core/unit-words'
import { LIGHT_SEEN } from './loading-shapes'

/** How full each filter was at its change, at every first of a month, at each look, and today. */
export function LoadingTable({ title, stays, on }: { title: string; stays: Stay[]; on: Day }) {
  const rows = stays.flatMap((stay) => rowsOf(stay, on)).sort((a, b) => a.day - b.day)
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col" className="number">
            Full
          </th>
          <th scope="col" className="number">
            Range
          </th>
          <th scope="col">What was seen</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ day, middle, low, high, say }) => (
          <tr key={`${day} ${say}`}>
            <th scope="row">{dateInWords(dayText(day))}</th>
            <td className="number">{percentInWords(middle)}</td>
            <td className="number">
              {percentInWords(low)} to {percentInWords(high)}
            </td>
            <td>{say}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function rowsOf(stay: Stay, on: Day) {
  const today = dayNumber(on)
  const last = stay.points.at(-1)?.on ?? stay.from
  const days = new Map<number, string>()
  for (
    let month = addMonths(`${dayText(stay.from).slice(0, 7)}-01`, 1);
    dayNumber(month) < last;
    month = addMonths(month, 1)
  )
    days.set(dayNumber(month), dayNumber(month) > today ? 'still to come' : '')
  if (stay.to === null) days.set(today, 'today')
  for (const { on: day, light } of stay.looks) days.set(day, LIGHT_SEEN[light])
  if (stay.to !== null && !stay.lightAtRemoval) days.set(stay.to, 'changed')
  return [...days].flatMap(([day, say]) => {
    const load = loadOn(stay, day)
    return load ? [{ ...load, day, say }] : []
  })
}
