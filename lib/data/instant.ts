import type { Instant } from '@/lib/core/viewer'

/** The one way an instant becomes text: `2026-11-25T09:53:27.000Z`. */
export function instant(date: Date): Instant {
  return date.toISOString()
}

/** `later(at, 60)` is one minute after `at`. */
export function later(at: Instant, seconds: number): Instant {
  return instant(new Date(Date.parse(at) + seconds * 1000))
}
