import { CYCLE_DAYS, type DayNumber, dayNumber, FIRST_DAY } from './day'

/**
 * A daily quantity that repeats with the climate, kept as prefix sums over four years (1461 days from 1 January
 * 1901), so that the sum between any two days costs two look-ups. 29 February has 28 February's value.
 */
export interface Cycle {
  /** 1462 values: the sum of the first n days of the cycle. */
  prefix: Float64Array
  total: number
}

/** The first day of the first cycle. */
export const CYCLE_ORIGIN = dayNumber(FIRST_DAY)

/** For each of the 1461 days of the cycle, its place 0…364 in a year of 365 days. */
export const YEAR_PLACE = Uint16Array.from({ length: CYCLE_DAYS }, (_, i) => {
  const year = Math.min(3, Math.floor(i / 365))
  const place = i - year * 365
  return year === 3 && place >= 59 ? place - 1 : place
})

/** Place 0…1460 of a day in the cycle. */
export function cyclePlace(day: DayNumber): number {
  return (day - CYCLE_ORIGIN) % CYCLE_DAYS
}

/** Place 0…364 of a day in its year. */
export function yearPlace(day: DayNumber): number {
  return YEAR_PLACE[cyclePlace(day)] as number
}

/** The calendar year of a day. */
export function yearOf(day: DayNumber): number {
  const since = day - CYCLE_ORIGIN
  const turns = Math.floor(since / CYCLE_DAYS)
  return 1901 + 4 * turns + Math.min(3, Math.floor((since - turns * CYCLE_DAYS) / 365))
}

/** Prefix sums of a year of 365 daily values. */
export function cycleOf(year: ArrayLike<number>): Cycle {
  const prefix = new Float64Array(CYCLE_DAYS + 1)
  for (let i = 0; i < CYCLE_DAYS; i++) {
    prefix[i + 1] = (prefix[i] as number) + (year[YEAR_PLACE[i] as number] as number)
  }
  return { prefix, total: prefix[CYCLE_DAYS] as number }
}

/** The sum over all days of the cycle up to and including `day`, from a fixed zero: only differences mean anything. */
export function cycleThrough(cycle: Cycle, day: DayNumber): number {
  const since = day - CYCLE_ORIGIN
  const turns = Math.floor(since / CYCLE_DAYS)
  return turns * cycle.total + (cycle.prefix[since - turns * CYCLE_DAYS + 1] as number)
}

/** `a` times the first cycle's sum through `day` and `b` times the second's, in one look-up of the day. */
export function weightedThrough(first: Cycle, a: number, second: Cycle, b: number, day: DayNumber): number {
  const since = day - CYCLE_ORIGIN
  const turns = Math.floor(since / CYCLE_DAYS)
  const place = since - turns * CYCLE_DAYS + 1
  return (
    a * (turns * first.total + (first.prefix[place] as number)) +
    b * (turns * second.total + (second.prefix[place] as number))
  )
}

/** The first day from `from` to `to` for which `holds` is true, for a condition that stays true once it is; null if none. */
export function firstDay(from: DayNumber, to: DayNumber, holds: (day: DayNumber) => boolean): DayNumber | null {
  if (from > to || !holds(to)) return null
  let low = from
  let high = to
  while (low < high) {
    const middle = (low + high) >> 1
    if (holds(middle)) high = middle
    else low = middle + 1
  }
  return low
}
