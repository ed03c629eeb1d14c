import { NO_OFFSET } from '@/lib/core/run-rows'

/** What the last stamp that was read says. One object for all: a file has hundreds of thousands. */
export interface Stamp {
  /** As `RunRows.date` keeps it. */
  date: number
  second: number
  offset: number
  /** It names no time of day. */
  isDayOnly: boolean
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']
// Hours from UTC of the names that North American clocks are labelled with.
const ZONES: Record<string, number> = {
  ...{ z: 0, utc: 0, gmt: 0, est: -5, edt: -4, cst: -6, cdt: -5, mst: -7, mdt: -6, pst: -8, pdt: -7 },
}
const MOST_KEPT = 100_000

/** Reads stamps of any usual kind; the parts of a stamp come again and again, and are read once. */
export class StampReader {
  readonly stamp: Stamp = { date: 0, second: 0, offset: NO_OFFSET, isDayOnly: false }
  private readonly dates = new Map<string, number | null>()
  private readonly times = new Map<string, { second: number; offset: number } | null>()

  /** Reads `text` (and `clock`, where the time of day has a column of its own) into `stamp`; false where it is none. */
  read(text: string, clock?: string): boolean {
    if (clock === undefined && this.readPlain(text)) return true
    const cut = cutOf(text)
    const date = this.dateOf(cut < 0 ? text : text.slice(0, cut))
    if (date === null) return this.readWhole(text, clock)
    const rest = clock ?? (cut < 0 ? '' : text.slice(cut + 1))
    return this.finish(date, rest)
  }

  /** `2026-01-05 10:05` and `2026-01-05T10:05:00`, the commonest by far, digit by digit: nothing is made of them. */
  private readPlain(text: string): boolean {
    if (text.length !== 16 && text.length !== 19) return false
    const sign = text.charCodeAt(4)
    const between = text.charCodeAt(10)
    if ((sign !== 0x2d && sign !== 0x2f) || text.charCodeAt(7) !== sign) return false
    if ((between !== 0x20 && between !== 0x54) || text.charCodeAt(13) !== 0x3a) return false
    const year = pair(text, 0) * 100 + pair(text, 2)
    const [month, date, hour, minute] = [pair(text, 5), pair(text, 8), pair(text, 11), pair(text, 14)]
    const second = text.length === 19 ? (text.charCodeAt(16) === 0x3a ? pair(text, 17) : -1) : 0
    // A sign that is no digit makes one of these no time at all, and is left to those who read oddities.
    if (!(year > 0 && month > 0 && date > 0 && hour >= 0 && minute >= 0 && second >= 0)) return false
    if (month > 12 || date > 31 || hour > 24 || minute > 59 || second > 60) return false
    this.stamp.date = -pack(year, month, date)
    this.stamp.second = hour * 3600 + minute * 60 + second
    this.stamp.offset = NO_OFFSET
    this.stamp.isDayOnly = false
    return true
  }

  private finish(date: number, rest: string): boolean {
    const time = rest === '' ? MIDNIGHT : this.timeOf(rest)
    if (time === null) return false
    this.stamp.date = date
    this.stamp.second = time.second
    this.stamp.offset = time.offset
    this.stamp.isDayOnly = rest === ''
    return true
  }

  private dateOf(text: string): number | null {
    let date = this.dates.get(text)
    if (date === undefined) {
      date = readDate(text.trim())
      if (this.dates.size < MOST_KEPT) this.dates.set(text, date)
    }
    return date
  }

  private timeOf(text: string): { second: number; offset: number } | null {
    let time = this.times.get(text)
    if (time === undefined) {
      time = readTime(text.trim())
      if (this.times.size < MOST_KEPT) this.times.set(text, time)
    }
    return time
  }

  /** Stamps whose date has spaces in it, and seconds since 1970. */
  private readWhole(text: string, clock: string | undefined): boolean {
    const plain = text.trim()
    if (/^\d{10}(\d{3})?(\.\d+)?$/.test(plain)) {
      const seconds = Math.floor(plain.length >= 13 && !plain.includes('.') ? Number(plain) / 1000 : Number(plain))
      const at = new Date(seconds * 1000)
      this.stamp.date = -(at.getUTCFullYear() * 10_000 + (at.getUTCMonth() + 1) * 100 + at.getUTCDate())
      this.stamp.second = ((seconds % 86_400) + 86_400) % 86_400
      this.stamp.offset = 0
      this.stamp.isDayOnly = false
      return true
    }
    const named = NAMED.exec(plain)
    if (!named) return false
    const date = readDate(`${named[1] ?? named[4]}-${named[2] ?? named[3]}-${named[5]}`)
    return date !== null && this.finish(date, clock ?? named[6] ?? '')
  }
}

const MIDNIGHT = { second: 0, offset: NO_OFFSET }
// `Mon, 5 Jan 2026 10:05`, `Jan 5, 2026 10:05 AM`
const NAMED =
  /^(?:[A-Za-z]{3,9}\.?,? +)?(?:(\d{1,2})\.? +([A-Za-z]{3,9})\.?|([A-Za-z]{3,9})\.? +(\d{1,2})),? +(\d{4})(?:,? +(\d.*))?$/

/** Two digits as a number; far below none where one is no digit. */
function pair(text: string, at: number): number {
  const [tens, ones] = [text.charCodeAt(at) - 48, text.charCodeAt(at + 1) - 48]
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -100_000
}

/** Where the date ends: at the first T, space or comma after it. */
function cutOf(text: string): number {
  for (let i = 6; i < text.length && i < 12; i++) {
    const code = text.charCodeAt(i)
    if (code === 0x20 || code === 0x2c || (code === 0x54 && i >= 8)) return i
  }
  return -1
}

/** A date as `RunRows.date` keeps it; null for what is none. Whether the day exists only its order can tell. */
function readDate(text: string): number | null {
  const yearFirst = /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})$/.exec(text)
  if (yearFirst) {
    const [, year, sign, month, date] = yearFirst
    if (sign === '' && text.length !== 8) return null
    return inRange(Number(month), Number(date)) ? -pack(Number(year), Number(month), Number(date)) : null
  }
  const yearLast = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})$/.exec(text)
  if (yearLast) {
    const [first, second] = [Number(yearLast[1]), Number(yearLast[3])]
    const year = yearLast[4]?.length === 2 ? 2000 + Number(yearLast[4]) : Number(yearLast[4])
    return inRange(first, second) || inRange(second, first) ? pack(year, first, second) : null
  }
  const named = /^(\d{1,2})[- ]([A-Za-z]{3,9})[- ](\d{4}|\d{2})$/.exec(text)
  if (!named) return null
  const word = (named[2] ?? '').toLowerCase()
  const month = MONTHS.findIndex((start) => word.startsWith(start)) + 1
  const year = named[3]?.length === 2 ? 2000 + Number(named[3]) : Number(named[3])
  return inRange(month, Number(named[1])) ? -pack(year, month, Number(named[1])) : null
}

function inRange(month: number, date: number): boolean {
  return month >= 1 && month <= 12 && date >= 1 && date <= 31
}

function pack(year: number, first: number, second: number): number {
  return year * 10_000 + first * 100 + second
}

const TIME =
  /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:[.,]\d{1,9})?)?(?:\s*([ap])\.?m\.?)?\s*(?:([+-]\d{1,2}):?(\d{2})?|\(?([a-z]{1,3})\)?)?$/i
const COMPACT = /^(\d{2})(\d{2})(\d{2})?(Z)?$/i
const HOUR_ONLY = /^(\d{1,2})\s*([ap])\.?m\.?$/i

/** Seconds into the day, and the offset that stands behind it. */
function readTime(text: string): { second: number; offset: number } | null {
  const found = TIME.exec(text)
  if (found) {
    const [, hour, minute, second, half, ahead, aheadMinutes, zone] = found
    const of = secondsOf(Number(hour), Number(minute), Number(second ?? 0), half)
    if (of === null) return null
    if (ahead !== undefined) {
      const sign = ahead.startsWith('-') ? -1 : 1
      const offset = Number(ahead) * 60 + sign * Number(aheadMinutes ?? 0)
      return Math.abs(offset) <= 15 * 60 ? { second: of, offset } : null
    }
    if (zone === undefined) return { second: of, offset: NO_OFFSET }
    const hours = ZONES[zone.toLowerCase()]
    return hours === undefined ? null : { second: of, offset: hours * 60 }
  }
  const compact = COMPACT.exec(text)
  if (compact) {
    const of = secondsOf(Number(compact[1]), Number(compact[2]), Number(compact[3] ?? 0), undefined)
    return of === null ? null : { second: of, offset: compact[4] ? 0 : NO_OFFSET }
  }
  const hourOnly = HOUR_ONLY.exec(text)
  const of = hourOnly && secondsOf(Number(hourOnly[1]), 0, 0, hourOnly[2])
  return of === null ? null : { second: of, offset: NO_OFFSET }
}

function secondsOf(hour: number, minute: number, second: number, half: string | undefined): number | null {
  if (minute > 59 || second > 60 || hour > 24 || (half !== undefined && (hour < 1 || hour > 12))) return null
  const of24 = half === undefined ? hour : (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0)
  return of24 * 3600 + minute * 60 + second
}
