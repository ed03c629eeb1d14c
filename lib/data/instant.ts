import { addDays, type Day } from '@/lib/core/day'
import type { Instant } from '@/lib/core/viewer'

/** The one way an instant becomes text: `2026-11-25T09:53:27.000Z`. */
export function instant(date: Date): Instant {
  return date.toISOString()
}

/** `later(at, 60)` is one minute after `at`. */
export function later(at: Instant, seconds: number): Instant {
  return instant(new Date(Date.parse(at) + seconds * 1000))
}

/** The moment at which a calendar day is over in a zone: `endOfDay('2026-11-25', 'America/Chicago')` is 06:00Z on the 26th. */
export function endOfDay(day: Day, timeZone: string): Instant {
  const midnight = Date.parse(`${addDays(day, 1)}T00:00:00Z`)
  // Twice, because the offset wanted is the one at the answer, and a clock change may lie between.
  const first = midnight - offsetMs(midnight, timeZone)
  return instant(new Date(midnight - offsetMs(first, timeZone)))
}

function offsetMs(at: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-US', {
    ...{ timeZone, hourCycle: 'h23', year: 'numeric', month: 'numeric', day: 'numeric' },
    ...{ hour: 'numeric', minute: 'numeric', second: 'numeric' },
  }).formatToParts(at)
  const part = (type: string) => Number(parts.find((found) => found.type === type)?.value)
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second')) - at
}
