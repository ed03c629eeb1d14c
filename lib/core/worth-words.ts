import { type Day, dayText } from './day'
import { dayInWords, plural } from './day-words'
import type { LookWorth } from './look-worth'

/** Whether a look today is worth it, in a sentence: for the list of what is due and the page that records a look. */
export function worthInWords(worth: LookWorth | null): string {
  if (!worth)
    return 'A look today would teach nothing yet: the filter is too fresh to tell, or its last change is not known.'
  const { rangeDays, rangeAfterDays, isWorthIt, isOver } = worth
  if (isOver) return 'A look today would not move the day: its time is over even in a cleaner home.'
  const less = Math.round(rangeDays - rangeAfterDays)
  if (rangeDays === 0) return 'A look today would not move the day: it is the same for a dustier and a cleaner home.'
  if (less < 1) return 'A look today would hardly narrow down the day.'
  const narrows = `a look today would narrow the ${plural(Math.round(rangeDays), 'day')} in which it may be full by about ${less}`
  return isWorthIt ? `Worth it: ${narrows}.` : `Not needed: ${narrows}.`
}

/** The days in which a filter may be full: `between Friday 1 January and Monday 1 February`. */
export function rangeInWords({ early, late }: { early: number; late: number }, on: Day): string {
  const [first, last] = [dayText(early), dayText(late)]
  if (last === on) return 'today'
  if (first === last) return `on ${dayInWords(first, on)}`
  return `between ${first === on ? 'today' : dayInWords(first, on)} and ${dayInWords(last, on)}`
}
