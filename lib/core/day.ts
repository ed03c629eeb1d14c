import { addMonths as addMonthsToDate, addYears as addYearsToDate, getDayOfYear, isLeapYear } from 'date-fns'

/**
 * A calendar day `YYYY-MM-DD` in the household's own time zone. Sorts as text. Whatever comes in by a door is one of
 * 1901-01-01 to 2099-12-31 (`isDay`); what is reckoned from it may lie years before or after.
 */
export type Day = string

/** Days since 1970-01-01: what the calculations count in. */
export type DayNumber = number

export const FIRST_DAY: Day = '1901-01-01'
export const LAST_DAY: Day = '2099-12-31'

// Between 1901 and 2099 every fourth year is a leap year, so that a climate repeats after 1461 days exactly.
export const CYCLE_DAYS = 1461

const MS_PER_DAY = 86_400_000

/** Whether a text is a day that doors take and that exists: `2026-02-29` is not. */
export function isDay(text: string): text is Day {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text < FIRST_DAY || text > LAST_DAY) return false
  return new Date(Date.parse(`${text}T00:00:00Z`)).toJSON()?.startsWith(text) ?? false
}

// A portfolio reads and writes the same days again and again: each text is made once, and looked up by its number.
const FIRST_NUMBER = Date.parse(`${FIRST_DAY}T00:00:00Z`) / MS_PER_DAY
const LAST_NUMBER = Date.parse(`${LAST_DAY}T00:00:00Z`) / MS_PER_DAY
// The arithmetic reaches far beyond the doors: an alarm made on their last day is due years after it.
const EARLIEST_NUMBER = Date.parse('1500-01-01T00:00:00Z') / MS_PER_DAY
const LATEST_NUMBER = Date.parse('2499-12-31T00:00:00Z') / MS_PER_DAY
const texts: (Day | undefined)[] = new Array(LAST_NUMBER - FIRST_NUMBER + 1).fill(undefined)

/** `dayNumber('1970-01-02')` is 1. Throws on a text that is no day of 1500–2499. */
export function dayNumber(day: Day): DayNumber {
  const number = numberOf(digits(day, 0, 4), digits(day, 5, 7), digits(day, 8, 10))
  // What does not come back the same was no day: 2026-02-29, 2026-2-9, text.
  if (!(number >= EARLIEST_NUMBER && number <= LATEST_NUMBER) || dayText(number) !== day)
    throw new RangeError(`no day: ${day}`)
  return number
}

function digits(text: string, from: number, to: number): number {
  let number = 0
  for (let i = from; i < to; i++) number = number * 10 + text.charCodeAt(i) - 48
  return number
}

/** Days since 1970 of a civil date, counting years from March so that the leap day comes last. */
function numberOf(year: number, month: number, date: number): DayNumber {
  const marchYear = month > 2 ? year : year - 1
  const marchMonth = (month + 9) % 12
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400)
  return marchYear * 365 + leapDays + Math.floor((153 * marchMonth + 2) / 5) + date - 1 - 719_468
}

/** `dayText(1)` is `1970-01-02`. Throws outside 1500–2499. */
export function dayText(number: DayNumber): Day {
  const known = texts[number - FIRST_NUMBER]
  if (known !== undefined) return known
  if (!Number.isInteger(number) || number < EARLIEST_NUMBER || number > LATEST_NUMBER) {
    throw new RangeError(`no day of 1500–2499: ${number}`)
  }
  const text = new Date(number * MS_PER_DAY).toISOString().slice(0, 10)
  if (number >= FIRST_NUMBER && number <= LAST_NUMBER) texts[number - FIRST_NUMBER] = text
  return text
}

/** `addDays('2026-02-28', 1)` is `2026-03-01`. */
export function addDays(day: Day, days: number): Day {
  return dayText(dayNumber(day) + days)
}

/** Whole days from one day to another: `daysBetween('2026-03-01', '2026-02-28')` is -1. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from)
}

// date-fns counts in local time; noon of the local day never drifts across a clock change.
function local(day: Day): Date {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
  return new Date(year, month - 1, date, 12)
}

function fromLocal(date: Date): Day {
  return dayText(Math.round(Date.UTC(date.getFullYear(), date.getMonth(), date.getDate()) / MS_PER_DAY))
}

// A portfolio asks for the same few days again and again; by how far, then by the day, so that no key is made.
const later = { months: new Map<number, Map<Day, Day>>(), years: new Map<number, Map<Day, Day>>() }

function kept(by: Map<number, Map<Day, Day>>, count: number, from: Day, make: () => Day): Day {
  let days = by.get(count)
  if (days === undefined) {
    days = new Map()
    by.set(count, days)
  }
  let day = days.get(from)
  if (day === undefined) {
    day = make()
    if (days.size > 10_000) days.clear()
    days.set(from, day)
  }
  return day
}

/** Calendar months later, the last day of a shorter month: `addMonths('2026-01-31', 1)` is `2026-02-28`. */
export function addMonths(day: Day, months: number): Day {
  return kept(later.months, months, day, () => fromLocal(addMonthsToDate(local(day), months)))
}

/** Calendar years later: `addYears('2024-02-29', 1)` is `2025-02-28`. */
export function addYears(day: Day, years: number): Day {
  return kept(later.years, years, day, () => fromLocal(addYearsToDate(local(day), years)))
}

/** 1…365; 29 February counts as 28 February, and the days after it as in any other year. */
export function dayOfYear(day: Day): number {
  const date = local(day)
  const ordinal = getDayOfYear(date)
  return isLeapYear(date) && ordinal >= 60 ? ordinal - 1 : ordinal
}

/** Days compared as text: for sorting. */
export function compareDays(a: Day, b: Day): number {
  return a < b ? -1 : a > b ? 1 : 0
}
