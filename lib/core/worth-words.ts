import { type Day, dayText } from './day'
import { dayInWords, plural } from './day-words'
import type { LookWorth } from './look-worth'

/** Whether a look is worth it, today or on a day that was just named, in a sentence. */
export function worthInWords(worth: LookWorth | null, when: 'today' | 'then' = 'today'): string {
  const look = `A look ${when}`
  if (!worth)
    return `${look} would teach nothing yet: the filter is too fresh to tell, or its last change is not known.`
  const { rangeDays, rangeAfterDays, isWorthIt, isOver } = worth
  if (isOver) return `${look} would not move the day: its time is over even in a cleaner home.`
  const less = Math.round(rangeDays - rangeAfterDays)
  if (rangeDays === 0) return `${look} would not move the day: it is the same for a dustier and a cleaner home.`
  if (less < 1) return `${look} would hardly narrow down the day.`
  const range = `the ${plural(Math.round(rangeDays), 'day')} in which it may be full`
  return `${isWorthIt ? 'Worth it' : 'Not needed'}: a look ${when} would narrow ${range} by about ${less}.`
}

/** The days in which a filter may be full: `between Friday 1 January and Monday 1 February`. */
export function rangeInWords({ early, late }: { early: number; late: number }, on: Day): string {
  const [first, last] = [dayText(early), dayText(late)]
  if (last === on) return 'today'
  if (first === last) return `on ${dayInWords(first, on)}`
  return `between ${first === on ? 'today' : dayInWords(first, on)} and ${dayInWords(last, on)}`
}
