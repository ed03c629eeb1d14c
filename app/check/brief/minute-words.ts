import { momentInWords } from '@/app/moment-in-words'

/** `25 November 2026, 21:04`, in the home's own zone; with the zone's name where it is only UTC. */
export function minuteInWords(minute: number, timeZone: string | undefined): string {
  const text = momentInWords(new Date(minute * 60_000).toISOString(), timeZone)
  return timeZone === 'UTC' ? `${text} UTC` : text
}
