import { CYCLE_DAYS, type DayNumber, dayNumber, dayText, FIRST_DAY, LAST_DAY } from './day'

/**
 * A daily quantity that repeats with the climate, every four years (1461 days from 1 January 1901), kept as prefix
 * sums of its 365-day year, so that the sum between any two days costs two look-ups. 29 February has 28 February's value.
 * Before March 1900 and after February 2100, which have no leap day, it goes on a day beside the calendar: climate
 * means nothing so exact there.
 */
export interface Cycle {
  /** 366 values: the sum of the first n days of the year. */
  prefix: Float64Array
  /** Of the year's 365 days: the last of these sums, kept beside the rest because every sum needs it. */
  year: number
  /** Of the four years. */
  total: number
  /** What 29 February adds. */
  leapDay: number
}

/** The first day of the first cycle. */
export const CYCLE_ORIGIN = dayNumber(FIRST_DAY)

/** Days of the years 1901–2099, over which the calendar repeats as the cycle does. */
const CYCLED_DAYS = dayNumber(LAST_DAY) - CYCLE_ORIGIN + 1

/** For each of the 1461 days of the cycle, its place 0…364 in a year of 365 days. */
export const YEAR_PLACE = Uint16Array.from({ length: CYCLE_DAYS }, (_, i) => {
  const year = Math.min(3, Math.floor(i / 365))
  const place = i - year * 365
  return year === 3 && place >= 59 ? place - 1 : place
})

/** Place of 29 February in the cycle's last year, which is the leap year. */
const LEAP_PLACE = 3 * 365 + 59

/** For each day of the cycle, how many days of its year of 365 are over at its end, and how many years before it. */
const DAYS_OVER = Uint16Array.from(YEAR_PLACE, (place) => place + 1)
const YEARS_OVER = Uint8Array.from({ length: CYCLE_DAYS }, (_, i) => Math.min(3, Math.floor(i / 365)))

/** Place 0…1460 of a day in the cycle. */
export function cyclePlace(day: DayNumber): number {
  const place = (day - CYCLE_ORIGIN) % CYCLE_DAYS
  return place < 0 ? place + CYCLE_DAYS : place
}

/** Place 0…364 of a day in its year. */
export function yearPlace(day: DayNumber): number {
  return YEAR_PLACE[cyclePlace(day)] as number
}

/** The calendar year of a day. */
export function yearOf(day: DayNumber): number {
  const since = day - CYCLE_ORIGIN
  // Of the centuries around, which leave leap days out, the calendar itself is asked; a plan asks of ours, all the time.
  if (since < 0 || since >= CYCLED_DAYS) return Number(dayText(day).slice(0, 4))
  const turns = Math.floor(since / CYCLE_DAYS)
  return 1901 + 4 * turns + Math.min(3, Math.floor((since - turns * CYCLE_DAYS) / 365))
}

/** Prefix sums of a year of 365 daily values. */
export function cycleOf(year: ArrayLike<number>): Cycle {
  const prefix = new Float64Array(366)
  for (let i = 0; i < 365; i++) prefix[i + 1] = (prefix[i] as number) + (year[i] as number)
  const whole = prefix[365] as number
  const leapDay = year[58] as number
  return { prefix, year: whole, total: 4 * whole + leapDay, leapDay }
}

/** The sum over all days of the cycle up to and including `day`, from a fixed zero: only differences mean anything. */
export function cycleThrough(cycle: Cycle, day: DayNumber): number {
  const since = day - CYCLE_ORIGIN
  const turns = Math.floor(since / CYCLE_DAYS)
  return turns * cycle.total + sumInCycle(cycle, since - turns * CYCLE_DAYS)
}

/** `a` times the first cycle's sum through `day` and `b` times the second's, in one look-up of the day. */
export function weightedThrough(first: Cycle, a: number, second: Cycle, b: number, day: DayNumber): number {
  const since = day - CYCLE_ORIGIN
  const turns = Math.floor(since / CYCLE_DAYS)
  const place = since - turns * CYCLE_DAYS
  return a * (turns * first.total + sumInCycle(first, place)) + b * (turns * second.total + sumInCycle(second, place))
}

function sumInCycle({ prefix, year, leapDay }: Cycle, place: number): number {
  const years = (YEARS_OVER[place] as number) * year
  const days = prefix[DAYS_OVER[place] as number] as number
  return place < LEAP_PLACE ? years + days : years + days + leapDay
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

// So many steps by the straight line between the ends; what has not come close by then is no line, and is halved.
const STRAIGHT_STEPS = 4

/** The first day from `from` to `to` by which a rising sum has reached `goal`, for one that has by `to`, where it is `atEnd`. */
export function firstReaching(
  through: (day: DayNumber) => number,
  goal: number,
  from: DayNumber,
  to: DayNumber,
  atEnd: number,
): DayNumber {
  if (from >= to) return to
  let low = from
  let below = through(from)
  if (below >= goal) return from
  let high = to
  let above = atEnd
  for (let step = 0; high - low > 1; step++) {
    const share = step < STRAIGHT_STEPS ? (goal - below) / (above - below) : 0.5
    const middle = Math.min(high - 1, Math.max(low + 1, low + Math.ceil(share * (high - low))))
    const sum = through(middle)
    if (sum >= goal) {
      high = middle
      above = sum
    } else {
      low = middle
      below = sum
    }
  }
  return high
}
