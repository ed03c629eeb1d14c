import { type Day, dayNumber } from './day'
import type { Instant } from './viewer'

const HOUR_MS = 3_600_000
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

/** The same `today` by zone, asked once for each: the platform takes longer for it than all else about a home in a list. */
export function daysByZone(today: (timeZone: string) => Day): (timeZone: string) => Day {
  const days = new Map<string, Day>()
  return (timeZone) => {
    const known = days.get(timeZone)
    if (known !== undefined) return known
    const day = today(timeZone)
    days.set(timeZone, day)
    return day
  }
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
  const asIfUtc = wanted * 60_000
  const shown = (at: number) => minutesOf(localTime(new Date(at).toISOString(), timeZone))
  // Zones lie between UTC-12 and UTC+14, on quarters of an hour; a wall clock past the wanted time has reached it.
  const [least, most] = [asIfUtc - 14 * HOUR_MS, asIfUtc + 12 * HOUR_MS]
  // No clock goes back by more than two hours, so that nearly always it is enough to begin a little before; a day left
  // out at the date line is why it is looked whether that is early enough.
  const near = asIfUtc - (shown(asIfUtc) - wanted) * 60_000 - 2.25 * HOUR_MS
  for (let at = shown(near) < wanted ? near : least; at <= most; at += HOUR_MS / 4) {
    if (shown(at) >= wanted) return new Date(at).toISOString()
  }
  throw new RangeError(`no zone: ${timeZone}`)
}

function minutesOf({ day, hour, minute }: { day: Day; hour: number; minute: number }): number {
  return dayNumber(day) * 24 * 60 + hour * 60 + minute
}
