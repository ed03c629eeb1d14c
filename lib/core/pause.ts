import { addDays, type Day } from './day'
import { dateInWords } from './day-words'

/** A yearly service may be left out once; who pauses something for longer has slipped in the year. */
const LONGEST_DAYS = 2 * 365 + 1

/** Why nothing may be put off, and nobody be away, until a day; null where it may. */
export function pauseFault(until: Day, today: Day): string | null {
  if (until <= today) return 'Choose a day after today.'
  if (until <= addDays(today, LONGEST_DAYS)) return null
  return `Look at the year: ${dateInWords(until)} is more than two years from now. Choose an earlier day.`
}
