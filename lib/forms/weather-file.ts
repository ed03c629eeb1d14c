import { parse } from 'csv-parse/sync'
import { type Day, isDay } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { MonthlyClimate } from '@/lib/core/household'
import { shown } from './fields'
import { fahrenheitFrom } from './quantities'
import { readText } from './read-text'

export interface DailyWeather {
  on: Day
  minF: number
  maxF: number
}

/** What a weather file gives: a climate without design temperatures, and how many days stand behind it. */
export interface WeatherClimate extends Pick<MonthlyClimate, 'hdd65' | 'cdd65'> {
  /** Sums of the twelve months, °F·day. */
  annual: { hdd65: number; cdd65: number }
  days: number
}

const LEAST_DAYS = 360
const BASE_F = 65
const LIMITS = { F: { min: -100, max: 150 }, C: { min: -75, max: 65 } } as const

/**
 * Daily weather as comma-separated text with the headings `date`, `min`, `max` (others are passed over), in °F or °C.
 * Faults have a path such as `line 12`; the whole file has the empty one. All of them at once.
 */
export function parseWeatherFile(
  input: string | Uint8Array,
  unit: 'F' | 'C',
): { ok: true; days: DailyWeather[]; climate: WeatherClimate } | { ok: false; faults: Fault[] } {
  const read = readText(input)
  if (!read.ok) return { ok: false, faults: [read.fault] }
  let rows: { record: string[]; info: { lines: number } }[]
  try {
    // With `info` each row comes with its line, which the package's types leave out.
    rows = parse(read.text, {
      info: true,
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
    }) as unknown as typeof rows
  } catch (error) {
    return whole(`is not comma-separated text: ${(error as Error).message}`)
  }
  const headings = (rows.shift()?.record ?? []).map((heading) => heading.toLowerCase())
  const missing = ['date', 'min', 'max'].filter((heading) => headings.filter((found) => found === heading).length !== 1)
  if (missing.length > 0)
    return whole(`must have a first line with the headings date, min and max, each once; wrong: ${missing.join(', ')}`)

  const faults: Fault[] = []
  const byDay = new Map<Day, DailyWeather>()
  for (const { record, info } of rows) {
    const cell = (heading: string) => record[headings.indexOf(heading)] ?? ''
    const say = (text: string) => faults.push({ path: `line ${info.lines}`, say: text })
    const on = cell('date')
    const isReal = isDay(on)
    if (!isReal) say(`date must be a day that exists, written like 2026-11-25, but is ${shown(on)}`)
    else if (byDay.has(on)) say(`${on} is there twice; keep one of the two`)
    const min = temperature(cell('min'), unit)
    const max = temperature(cell('max'), unit)
    for (const [name, value] of Object.entries({ min, max })) {
      if (value === undefined) say(`${name} must be a temperature in °${unit}, but is ${shown(cell(name))}`)
    }
    if (min !== undefined && max !== undefined && min > max)
      say(`min is ${cell('min')}, higher than max, ${cell('max')}`)
    if (isReal && min !== undefined && max !== undefined && !byDay.has(on)) byDay.set(on, { on, minF: min, maxF: max })
  }
  if (faults.length > 0) return { ok: false, faults }
  const days = [...byDay.values()].toSorted((a, b) => (a.on < b.on ? -1 : 1))
  const climate = climateFrom(days)
  return typeof climate === 'string' ? whole(climate) : { ok: true, days, climate }
}

function whole(say: string) {
  return { ok: false as const, faults: [{ path: '', say }] }
}

/** °F, or nothing where the cell holds no temperature that the earth has seen. */
function temperature(cell: string, unit: 'F' | 'C'): number | undefined {
  if (!/^[-+]?\d{1,3}(?:\.\d{1,6})?$/.test(cell)) return undefined
  const degrees = Number(cell)
  if (degrees < LIMITS[unit].min || degrees > LIMITS[unit].max) return undefined
  return unit === 'F' ? degrees : fahrenheitFrom(degrees)
}

/** Degree-days of one day by the mean-temperature method, unrounded (model.md section 1). */
export function degreeDays({ minF, maxF }: Pick<DailyWeather, 'minF' | 'maxF'>): { hdd65: number; cdd65: number } {
  const mean = (minF + maxF) / 2
  return { hdd65: Math.max(0, BASE_F - mean), cdd65: Math.max(0, mean - BASE_F) }
}

// 29 February is in one year of four, and the model's year has 365 days.
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** Each month's mean day times its length: a few missing days and several years weigh as they should. */
function climateFrom(days: readonly DailyWeather[]): WeatherClimate | string {
  const months = DAYS_IN_MONTH.map((length) => ({
    length,
    count: 0,
    hdd65: 0,
    cdd65: 0,
    daysOfYear: new Set<string>(),
  }))
  for (const day of days) {
    const month = months[Number(day.on.slice(5, 7)) - 1]
    if (!month) throw new Error(`no month: ${day.on}`)
    const { hdd65, cdd65 } = degreeDays(day)
    month.count++
    month.hdd65 += hdd65
    month.cdd65 += cdd65
    month.daysOfYear.add(day.on.slice(5))
  }
  const covered = months.reduce((sum, { daysOfYear }) => sum + daysOfYear.size, 0)
  if (covered < LEAST_DAYS) return `covers ${covered} days of the year; a climate needs at least ${LEAST_DAYS} of them`
  const hdd65 = months.map(({ hdd65, count, length }) => (hdd65 / count) * length)
  const cdd65 = months.map(({ cdd65, count, length }) => (cdd65 / count) * length)
  return { hdd65, cdd65, annual: { hdd65: sum(hdd65), cdd65: sum(cdd65) }, days: days.length }
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
