import { addDays, type Day } from '@/lib/core/day'
import type { Instant } from '@/lib/core/viewer'
import { instantAt } from '@/lib/core/zone'

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
  return instantAt(addDays(day, 1), 0, timeZone)
}
