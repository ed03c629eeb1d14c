import type { Instant } from '@/lib/core/viewer'

/** `25 November 2026, 21:04`, as the clock of the home showed; without a zone, as this device's shows. */
export function momentInWords(at: Instant, timeZone: string | undefined): string {
  const format = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short', timeZone })
  // Some versions of the language's rules join the two by “at”.
  return format.format(new Date(at)).replace(' at ', ', ')
}
