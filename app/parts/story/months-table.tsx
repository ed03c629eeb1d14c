import { dayParts, plural } from '@/lib/core/day-words'
import type { KindHours, MonthHours } from '@/lib/core/month-hours'
import { numberInWords } from '@/lib/core/unit-words'

/** The hours by month in figures. */
export function MonthsTable({ title, months }: { title: string; months: MonthHours[] }) {
  const kinds = (['heat', 'cool'] as const).filter((kind) =>
    months.some((month) => month[kind].modelled + month[kind].measured > 0),
  )
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">Month</th>
          {kinds.flatMap((kind) => {
            const name = kind === 'heat' ? 'Heating' : 'Cooling'
            return [
              <th key={`${kind} used`} scope="col" className="number">
                {name}, h
              </th>,
              <th key={`${kind} measured`} scope="col" className="number">
                of that measured
              </th>,
              <th key={`${kind} model`} scope="col" className="number">
                climate alone
              </th>,
            ]
          })}
        </tr>
      </thead>
      <tbody>
        {months.map((month) => (
          <tr key={month.month}>
            <th scope="row">
              {dayParts(month.month).month} {dayParts(month.month).year}
            </th>
            {kinds.flatMap((kind) => cells(kind, month[kind]))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function cells(kind: string, { measured, reckoned, modelled, measuredDays }: KindHours) {
  return [
    <td key={`${kind} used`} className="number">
      {numberInWords(measured + reckoned)}
    </td>,
    <td key={`${kind} measured`} className="number">
      {measuredDays === 0 ? 'none' : `${numberInWords(measured)} (${plural(measuredDays, 'day')})`}
    </td>,
    <td key={`${kind} model`} className="number">
      {numberInWords(modelled)}
    </td>,
  ]
}
