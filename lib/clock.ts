/**
 * The instant now; the only reading of the clock. `PLENUM_NOW` (an ISO instant, `2026-11-25T18:00:00Z`) holds it still
 * for tests and for looking at another day.
 */
export function now(): Date {
  const held = process.env.PLENUM_NOW
  if (!held) return new Date()
  const instant = new Date(held)
  if (Number.isNaN(instant.getTime())) throw new RangeError(`PLENUM_NOW is no instant: ${held}`)
  return instant
}

/** The calendar day now in a zone, `today('America/Chicago')` is `2026-11-25`. Throws on a zone that does not exist. */
export function today(timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-US', {
    timeZone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).formatToParts(now())
  const part = (type: string) => parts.find((found) => found.type === type)?.value
  return `${part('year')}-${part('month')}-${part('day')}`
}
