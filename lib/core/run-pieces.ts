import { type Day, type DayNumber, dayText } from './day'
import type { RunDays } from './run-days'
import { RUNS, type Run } from './run-rows'

/** Measured hours between two days, both included, as they become a reading. */
export interface Piece {
  from: Day
  to: Day
  heatHours?: number
  coolHours?: number
  fanHours?: number
}

/** One calendar month of an export. */
export interface RunMonth {
  /** `2026-01`. */
  month: string
  days: number
  piece: Omit<Piece, 'from' | 'to'>
}

/** Less of a day than this and it is left out: what is missing is not "off". Our choice: two hours and a half. */
export const LEAST_SHARE_OF_DAY = 0.9

/** How the hours of the blower follow from what was told. */
export interface FanRule {
  /** It blows on after heating: its hours for an hour of heating (0 where heating does not blow). */
  heatBlower: number
  /** Cooling blows. */
  coolBlows: boolean
}

type Hours = Partial<Record<Run, number>>

/** The hours of each day that is known well enough, by run; a day of which nothing is known well enough is absent. */
export function knownDays(days: RunDays, rule: FanRule, last: DayNumber): Map<DayNumber, Hours> {
  const found = new Map<DayNumber, Hours>()
  for (let i = 0; i < days.length.length; i++) {
    const length = days.length[i] as number
    if (days.from + i > last) break
    const hours: Hours = {}
    for (const run of RUNS) {
      const known = days.known[run][i] as number
      if (known < length * LEAST_SHARE_OF_DAY) continue
      // The little that is missing is taken to be like the rest of the day. No day of the model has more than 24 hours.
      hours[run] = Math.min(24, (((days.ran[run][i] as number) / known) * length) / 3600)
    }
    const fan = fanHours(hours, days, rule)
    if (fan === null) delete hours.fan
    else if (fan !== undefined) hours.fan = fan
    if (Object.keys(hours).length > 0) found.set(days.from + i, hours)
  }
  return found
}

/** Every hour of the blower; undefined where none was told, null where what it leaves out is not known of this day. */
function fanHours({ heat, cool, fan }: Hours, days: RunDays, rule: FanRule): number | undefined | null {
  if (fan === undefined) return undefined
  const lacksHeat = !days.fan.withHeat && rule.heatBlower > 0
  const lacksCool = !days.fan.withCool && rule.coolBlows
  if ((lacksHeat && heat === undefined) || (lacksCool && cool === undefined)) return null
  return Math.min(24, fan + (lacksHeat ? (heat ?? 0) * rule.heatBlower : 0) + (lacksCool ? (cool ?? 0) : 0))
}

/** Days in a row of one month, with the same things known of them, are one piece: it ends at a gap. */
export function monthlyPieces(days: ReadonlyMap<DayNumber, Hours>): Piece[] {
  const pieces: { from: DayNumber; to: DayNumber; hours: Hours; sign: string }[] = []
  for (const [day, hours] of [...days].sort(([a], [b]) => a - b)) {
    const sign = `${dayText(day).slice(0, 7)} ${RUNS.filter((run) => hours[run] !== undefined)}`
    const last = pieces.at(-1)
    if (last && last.to === day - 1 && last.sign === sign) {
      last.to = day
      for (const run of RUNS) if (hours[run] !== undefined) last.hours[run] = (last.hours[run] ?? 0) + hours[run]
    } else pieces.push({ from: day, to: day, hours: { ...hours }, sign })
  }
  return pieces.map(({ from, to, hours }) => ({ from: dayText(from), to: dayText(to), ...named(hours) }))
}

/** The same by month, for a table. */
export function monthsOf(days: ReadonlyMap<DayNumber, Hours>): RunMonth[] {
  const months = new Map<string, { days: number; hours: Hours }>()
  for (const [day, hours] of days) {
    const key = dayText(day).slice(0, 7)
    const month = months.get(key) ?? { days: 0, hours: {} }
    month.days++
    for (const run of RUNS) if (hours[run] !== undefined) month.hours[run] = (month.hours[run] ?? 0) + hours[run]
    months.set(key, month)
  }
  return [...months]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, { days: count, hours }]) => ({ month, days: count, piece: named(hours) }))
}

// Hundredths of an hour are half a minute: nothing measures better, and sums of many rows are not longer than they need be.
function named({ heat, cool, fan }: Hours): Omit<Piece, 'from' | 'to'> {
  const round = (hours: number) => Math.round(hours * 100) / 100
  return {
    ...(heat !== undefined && { heatHours: round(heat) }),
    ...(cool !== undefined && { coolHours: round(cool) }),
    ...(fan !== undefined && { fanHours: round(fan) }),
  }
}
