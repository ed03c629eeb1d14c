import { type Day, dayNumber, daysBetween } from './day'

const WEEKDAYS = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday']
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** A day taken apart for a page: `{ weekday: 'Saturday', date: 28, month: 'November', year: 2026 }`. */
export interface DayParts {
  weekday: string
  date: number
  month: string
  year: number
}

export function dayParts(day: Day): DayParts {
  // 1970-01-01 was a Thursday; the double remainder keeps days before it in range.
  const weekday = WEEKDAYS[((dayNumber(day) % 7) + 7) % 7] ?? ''
  return {
    weekday,
    date: Number(day.slice(8)),
    month: MONTHS[Number(day.slice(5, 7)) - 1] ?? '',
    year: Number(day.slice(0, 4)),
  }
}

/** `Saturday 28 November`; with the year where it is not the year of `on`, or where `on` is left out. */
export function dayInWords(day: Day, on?: Day): string {
  const { weekday, date, month } = dayParts(day)
  return `${weekday} ${date} ${month}${yearUnless(day, on)}`
}

// The reasons of a plan name the same few days over and over.
const dated = new Map<Day, string>()

/** `28 November`; with the year where it is not the year of `on`, or where `on` is left out. */
export function dateInWords(day: Day, on?: Day): string {
  if (on !== undefined) return makeDate(day, on)
  let words = dated.get(day)
  if (words === undefined) {
    words = makeDate(day)
    dated.set(day, words)
  }
  return words
}

function makeDate(day: Day, on?: Day): string {
  const { date, month } = dayParts(day)
  return `${date} ${month}${yearUnless(day, on)}`
}

/** `28 Nov`: for a drawing, where the year is plain from the place. */
export function shortDate(day: Day): string {
  const { date, month } = dayParts(day)
  return `${date} ${month.slice(0, 3)}`
}

/** `between 7 November and 5 December`; `on 7 November` where both are one day. */
export function spanInWords(from: Day, to: Day, on?: Day): string {
  if (from === to) return `on ${dateInWords(from, on)}`
  const sameYear = from.slice(0, 4) === to.slice(0, 4)
  return `between ${dateInWords(from, sameYear ? to : on)} and ${dateInWords(to, on)}`
}

/** How far a day lies from `on`: `today`, `tomorrow`, `in 3 days`, `in 5 weeks`, `yesterday`, `12 days ago`. */
export function awayInWords(day: Day, on: Day): string {
  const days = daysBetween(on, day)
  if (days === 0) return 'today'
  if (days === 1) return 'tomorrow'
  if (days === -1) return 'yesterday'
  return days > 0 ? `in ${durationInWords(days)}` : `${durationInWords(-days)} ago`
}

/**
 * A number of days as people say it: days up to 20, then weeks, from 12 weeks on months, from 2 years on years.
 * `1 day`, `3 weeks`, `4 months`. Negative counts are read as their size.
 */
export function durationInWords(days: number): string {
  const size = Math.abs(Math.round(days))
  if (size <= 20) return plural(size, 'day')
  if (size < 84) return plural(Math.round(size / 7), 'week')
  if (size < 730) return plural(Math.round(size / 30.44), 'month')
  return plural(Math.round(size / 365.25), 'year')
}

/** `1 dog`, `2 dogs`; a third word where the plural is no plain s. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}

function yearUnless(day: Day, on?: Day): string {
  return on !== undefined && on.slice(0, 4) === day.slice(0, 4) ? '' : ` ${day.slice(0, 4)}`
}
