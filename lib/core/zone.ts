import { type Day, dayNumber } from './day'
import type { Instant } from './viewer'

const formats = new Map<string, Intl.DateTimeFormat>()

// Making a formatter costs a hundred times what using it does.
function formatOf(timeZone: string): Intl.DateTimeFormat {
  let format = formats.get(timeZone)
  if (!format) {
    format = new Intl.DateTimeFormat('en-US', {
      timeZone,
      calendar: 'gregory',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      ...{ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' },
    })
    formats.set(timeZone, format)
  }
  return format
}

/** An instant as a wall clock in a zone shows it: `{ day: '2026-11-25', hour: 9, minute: 5 }`. */
export function localTime(at: Instant, timeZone: string): { day: Day; hour: number; minute: number } {
  const parts = formatOf(timeZone).formatToParts(new Date(at))
  const part = (type: string) => parts.find((found) => found.type === type)?.value ?? ''
  return {
    day: `${part('year')}-${part('month')}-${part('day')}`,
    hour: Number(part('hour')),
    minute: Number(part('minute')),
  }
}

/** The calendar day of an instant in a zone. */
export function localDay(at: Instant, timeZone: string): Day {
  return localTime(at, timeZone).day
}

/** 0 is Sunday. 1970-01-01 was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((dayNumber(day) + 4) % 7) + 7) % 7
}
