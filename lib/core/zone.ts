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

/**
 * The instant at which a clock in a zone shows this hour of this day; of an hour that comes twice the first, and for one
 * that a change of the clock leaves out the moment of that change.
 */
export function instantAt(day: Day, hour: number, timeZone: string): Instant {
  const wanted = dayNumber(day) * 24 * 60 + hour * 60
  const asIfUtc = dayNumber(day) * 86_400_000 + hour * 3_600_000
  // Zones lie between UTC-12 and UTC+14, on quarters of an hour; a wall clock past the wanted time has reached it.
  for (let offset = -14 * 60; offset <= 12 * 60; offset += 15) {
    const at = new Date(asIfUtc + offset * 60_000).toISOString()
    const shown = localTime(at, timeZone)
    if (dayNumber(shown.day) * 24 * 60 + shown.hour * 60 + shown.minute >= wanted) return at
  }
  throw new RangeError(`no zone: ${timeZone}`)
}
