import { dayNumber, FIRST_DAY, LAST_DAY } from './day'
import { type DateOrder, NO_OFFSET, type RunRows } from './run-rows'
import { type ZoneClock, zoneClock } from './zone-clock'

/** The rows of an export in the order of time, each instant once. */
export interface RunTimes {
  /** UTC seconds, rising. */
  at: Float64Array
  /** Rows in the order of time; those of instant i stand from `start[i]` up to, not including, `start[i + 1]`. */
  rows: Int32Array
  start: Int32Array
  /** The file goes forward in time, not from the latest back. */
  isForward: boolean
  clock: ZoneClock
  order: DateOrder
  /** The order could be either, and was taken because it makes the shorter span. */
  isOrderGuessed: boolean
  /** Rows of an instant that another row tells of already, and instants of which rows tell different things. */
  repeated: number
  contradicting: number
  /** Rows whose date does not exist in this order, and those at a time that the zone's clock leaves out. */
  noDate: number
  leftOut: number
}

const DAY = 86_400
// The clock of a zone is looked up some days around a file, and where it is another day at home than in the stamp.
const AROUND = 4
const EARLIEST = dayNumber(FIRST_DAY) + AROUND
const LATEST = dayNumber(LAST_DAY) - AROUND
// Seconds of this century in 32 bits and a row's number in 21 make one number that sorts as both.
const ROW_SPACE = 2 ** 21

/** What a packed date makes, month first and day first; NaN where there is no such day. */
type DaysOf = (packed: number) => readonly [number, number]

/** Each date of a file is worked out once. */
function dateReader(): DaysOf {
  const days = new Map<number, readonly [number, number]>()
  return (packed) => {
    const known = days.get(packed)
    if (known) return known
    const made = bothOrders(packed)
    days.set(packed, made)
    return made
  }
}

function bothOrders(packed: number): readonly [number, number] {
  const text = Math.abs(packed)
  const [year, first, second] = [Math.floor(text / 10_000), Math.floor(text / 100) % 100, text % 100]
  const monthFirst = dayFrom(year, first, second)
  return [monthFirst, packed < 0 ? monthFirst : dayFrom(year, second, first)]
}

function dayFrom(year: number, month: number, date: number): number {
  const at = Date.UTC(year, month - 1, date)
  const day = at / 86_400_000
  // What is too much for a month runs on into another, but never round a whole year: two digits are 99 days at most.
  const isReal = new Date(at).getUTCMonth() === month - 1
  return isReal && day >= EARLIEST && day <= LATEST ? day : Number.NaN
}

interface Stretch {
  bad: number
  from: number
  to: number
}

/** The order in which all dates exist, else the one that makes the shorter span: a file of two weeks has no gap of months. */
function orderOf(
  rows: RunRows,
  wanted: DateOrder | undefined,
  daysOf: DaysOf,
): { order: DateOrder; isOrderGuessed: boolean } {
  if (wanted) return { order: wanted, isOrderGuessed: false }
  const spans = [
    { bad: 0, from: Number.POSITIVE_INFINITY, to: Number.NEGATIVE_INFINITY },
    { bad: 0, from: Number.POSITIVE_INFINITY, to: Number.NEGATIVE_INFINITY },
  ] satisfies [Stretch, Stretch]
  let last = 0
  for (let i = 0; i < rows.count; i++) {
    const packed = rows.date[i] as number
    if (packed === last) continue
    last = packed
    daysOf(packed).forEach((day, which) => {
      const span = spans[which] as Stretch
      if (Number.isNaN(day)) span.bad++
      else {
        span.from = Math.min(span.from, day)
        span.to = Math.max(span.to, day)
      }
    })
  }
  const [month, day] = spans
  if (month.bad !== day.bad) return { order: month.bad < day.bad ? 'month-first' : 'day-first', isOrderGuessed: false }
  const isSame = month.from === day.from && month.to === day.to
  const isDayShorter = day.to - day.from < month.to - month.from
  return { order: isDayShorter ? 'day-first' : 'month-first', isOrderGuessed: !isSame }
}

/**
 * Puts the rows in the order of time. `zone` is that of the stamps, `UTC` or the home's own; a stamp's own offset goes
 * before it. Days are always those of the home's zone. Which row stood first in the file makes no difference.
 */
export function runTimes(
  rows: RunRows,
  { zone, homeZone, order: wanted }: { zone: string; homeZone: string; order?: DateOrder | undefined },
): RunTimes {
  const daysOf = dateReader()
  const { order, isOrderGuessed } = orderOf(rows, wanted, daysOf)
  const which = order === 'month-first' ? 0 : 1
  const isUtc = zone === 'UTC'
  const wall = new Float64Array(rows.count)
  let noDate = 0
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  let [packed, day] = [0, Number.NaN]
  for (let i = 0; i < rows.count; i++) {
    if (rows.date[i] !== packed) {
      packed = rows.date[i] as number
      day = daysOf(packed)[which]
    }
    wall[i] = day * DAY + (rows.second[i] as number)
    if (Number.isNaN(day)) {
      noDate++
      continue
    }
    if (day < first) first = day
    if (day > last) last = day
  }
  const clock = zoneClock(homeZone, Number.isFinite(first) ? first : 0, Number.isFinite(last) ? last : 0)
  const twice: number[] = []
  let leftOut = 0
  const keys = new Float64Array(rows.count)
  let count = 0
  for (let i = 0; i < rows.count; i++) {
    const at = wall[i] as number
    if (Number.isNaN(at)) continue
    const offset = rows.offset[i] as number
    if (offset !== NO_OFFSET) keys[count++] = (at - offset * 60) * ROW_SPACE + i
    else if (isUtc) keys[count++] = at * ROW_SPACE + i
    else if (clock.isTwice(at)) twice.push(i)
    else {
      if (clock.isLeftOut(at)) leftOut++
      keys[count++] = clock.toUtc(at) * ROW_SPACE + i
    }
  }
  for (const [at, row] of instantsOfTwice(rows, wall, twice, clock)) keys[count++] = at * ROW_SPACE + row
  const sorted = inOrder(keys.subarray(0, count))
  return { ...once(rows, sorted), clock, order, isOrderGuessed, noDate, leftOut }
}

/** Most files go forward already. */
function inOrder(keys: Float64Array): Float64Array {
  for (let i = 1; i < keys.length; i++) if ((keys[i] as number) < (keys[i - 1] as number)) return keys.sort()
  return keys
}

/**
 * Of rows in the hour that comes twice, two that differ, or twice as many as an hour before, are one of each hour.
 * Which is which does not matter: they lie on the same day.
 */
function instantsOfTwice(
  rows: RunRows,
  wall: Float64Array,
  twice: readonly number[],
  clock: ZoneClock,
): [number, number][] {
  if (twice.length === 0) return []
  const byWall = new Map<number, number[]>()
  const before = new Map<number, number>()
  for (const row of twice) {
    const at = wall[row] as number
    byWall.set(at, [...(byWall.get(at) ?? []), row])
    before.set(at - 7200, 0)
  }
  for (const at of wall) {
    const seen = before.get(at)
    if (seen !== undefined) before.set(at, seen + 1)
  }
  return [...byWall].flatMap(([at, those]) => {
    const [one, other] = [clock.toUtc(at, 0), clock.toUtc(at, 1)]
    const kinds = new Map<string, number[]>()
    for (const row of those) {
      const says = saysOf(rows, row)
      kinds.set(says, [...(kinds.get(says) ?? []), row])
    }
    const usual = Math.max(1, before.get(at - 7200) ?? 1)
    if (kinds.size === 1 && those.length < 2 * usual) return those.map((row): [number, number] => [one, row])
    if (kinds.size === 1) return those.map((row, i): [number, number] => [i % 2 === 0 ? one : other, row])
    const sorted = [...kinds].sort(([a], [b]) => (a < b ? -1 : 1))
    return sorted.flatMap(([, same], i) => same.map((row): [number, number] => [i % 2 === 0 ? one : other, row]))
  })
}

function saysOf(rows: RunRows, row: number): string {
  return rows.runs.map((run) => `${rows.longest[run]?.[row]}/${rows.added[run]?.[row]}`).join(' ')
}

function saysSame(rows: RunRows, one: number, other: number): boolean {
  return rows.runs.every((run) => {
    const [values, sums] = [rows.longest[run], rows.added[run]]
    return Object.is(values?.[one], values?.[other]) && Object.is(sums?.[one], sums?.[other])
  })
}

function once(
  rows: RunRows,
  sorted: Float64Array,
): Pick<RunTimes, 'at' | 'rows' | 'start' | 'isForward' | 'repeated' | 'contradicting'> {
  const at = new Float64Array(sorted.length)
  const byTime = new Int32Array(sorted.length)
  const start = new Int32Array(sorted.length + 1)
  let [count, contradicting, contradicted] = [0, 0, -1]
  for (let i = 0; i < sorted.length; i++) {
    const key = sorted[i] as number
    const when = Math.floor(key / ROW_SPACE)
    const row = key - when * ROW_SPACE
    byTime[i] = row
    if (count > 0 && at[count - 1] === when) {
      if (contradicted !== count - 1 && !saysSame(rows, byTime[start[count - 1] as number] as number, row)) {
        contradicting++
        contradicted = count - 1
      }
      continue
    }
    at[count] = when
    start[count] = i
    count++
  }
  start[count] = sorted.length
  return {
    at: at.subarray(0, count),
    rows: byTime,
    start: start.subarray(0, count + 1),
    isForward: (byTime[0] ?? 0) <= (byTime.at(-1) ?? 0),
    repeated: sorted.length - count,
    contradicting,
  }
}
