import type { Day } from '@/lib/core/day'
import { dayParts } from '@/lib/core/day-words'

/** A day as an almanac prints it: weekday, a large date, month; the year where it is another than that of `on`. */
export function DayBlock({ day, on }: { day: Day; on: Day }) {
  const { weekday, date, month, year } = dayParts(day)
  return (
    <time className="day" dateTime={day}>
      <span className="day-weekday">{weekday} </span>
      <span className="day-date">{date} </span>
      <span className="day-month">{day.slice(0, 4) === on.slice(0, 4) ? month : `${month} ${year}`}</span>
    </time>
  )
}
