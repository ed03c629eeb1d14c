import type { Instant } from '@/lib/core/viewer'

/** `Nov 25, 2026, 4:05 AM`, as the clock of the home showed. */
export function momentInWords(at: Instant, timeZone: string): string {
  return new Intl.DateTimeFormat('en-US', { timeZone, dateStyle: 'medium', timeStyle: 'short' }).format(new Date(at))
}
