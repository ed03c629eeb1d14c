import type { Day } from './day'
import { dayInWords, spanInWords } from './day-words'
import type { Item } from './plan-types'

/** Who does it and when: `You, any day between 7 November and 5 December.` What is overdue names no day gone by. */
export function whoInWords(
  { doer, earliest, latest, state }: Pick<Item, 'doer' | 'earliest' | 'latest' | 'state'>,
  on: Day,
): string {
  const name = doer === 'resident' ? 'You' : 'A licensed technician'
  if (state === 'overdue') return `${name}, as soon as you can.`
  if (earliest === latest) return `${name}, on that day.`
  return `${name}, any day ${spanInWords(earliest, latest, on)}.`
}

/** When to look at a filter before its day, as seen from `on`; `optional` where a look would tell little. */
export function lookInWords(lookOn: Day, on: Day, optional = false): string {
  const say = optional ? 'You may hold it up to a lamp' : 'Hold it up to a lamp'
  return `${say} ${lookOn <= on ? 'now' : `on ${dayInWords(lookOn, on)}`}: much light means it can stay.`
}
