/** `25 November 2026, 21:04`, in the home's own zone; with the zone's name where it is only UTC. */
export function minuteInWords(minute: number, timeZone: string | undefined): string {
  const format = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short', timeZone })
  const text = format.format(new Date(minute * 60_000)).replace(' at ', ', ')
  return timeZone === 'UTC' ? `${text} UTC` : text
}
