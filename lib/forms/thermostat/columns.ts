import { RUNS, type Run } from '@/lib/core/run-rows'
import { readRun, UNITS, type Unit, wordMeans } from './cell'
import { StampReader } from './stamp'

/** What a column is: the stamp, its time of day, words of what the system did, a run in a unit, or passed over. */
export type Role = '' | 'time' | 'clock' | 'state' | `${Run}-${Unit}`

export const ROLES: readonly Role[] = [
  '',
  'time',
  'clock',
  'state',
  ...RUNS.flatMap((run) => UNITS.map((unit): Role => `${run}-${unit}`)),
]

/** `heat-min` is heating in minutes; null for the roles that are no run. */
export function runOf(role: Role): { run: Run; unit: Unit } | null {
  const [run, unit] = role.split('-')
  return RUNS.some((one) => one === run) ? { run: run as Run, unit: unit as Unit } : null
}

/** The least seconds from one stamp to another among the first rows; a day or more is a list of days. */
function stepOf(rows: readonly string[][], time: number, clock: number): number {
  const reader = new StampReader()
  const at = rows.flatMap((row) => {
    if (!reader.read(row[time] ?? '', clock < 0 ? undefined : row[clock])) return []
    const { date, second, isDayOnly } = reader.stamp
    const packed = Math.abs(date)
    const day = Date.UTC(Math.floor(packed / 10_000), (Math.floor(packed / 100) % 100) - 1, packed % 100) / 1000
    return [{ at: day + second, isDayOnly }]
  })
  if (at.length > 0 && at.every(({ isDayOnly }) => isDayOnly)) return 86_400
  // Rows may stand in any order: the shortest way from one to another is the step, or near it.
  const inOrder = at.map((one) => one.at).sort((a, b) => a - b)
  const gaps = inOrder.slice(1).map((one, i) => one - (inOrder[i] ?? one))
  const least = Math.min(...gaps.filter((gap) => gap > 0))
  return Number.isFinite(least) ? least : 3600
}

/** Whether the stamps name days, one a row, rather than moments. */
export function isListOfDays(rows: readonly string[][], roles: readonly Role[]): boolean {
  const time = roles.indexOf('time')
  return time >= 0 && stepOf(rows, time, roles.indexOf('clock')) >= 72_000
}

const NOT_A_RUN = /temp|set ?point|setting|target|humid|outdoor|outside|weather|demand|cost|price|energy|kwh|°|\bset\b/i
const NAMES: [Run, RegExp][] = [
  ['fan', /fan|blower|circulat|ventilat|\bg\b/i],
  ['cool', /cool|\bac\b|a\/c|air ?condition|compressor|\by ?[123]?\b/i],
  ['heat', /heat|furnace|burner|boiler|\baux|emergency|\bw ?[123]?\b/i],
]

/** What each column seems to be, from its heading and its first cells. */
export function guessRoles(headings: readonly string[], rows: readonly string[][]): Role[] {
  const cells = headings.map((_, i) => rows.map((row) => (row[i] ?? '').trim()).filter((cell) => cell !== ''))
  const roles: Role[] = headings.map(() => '')
  const time = bestTime(headings, cells)
  if (time >= 0) roles[time] = 'time'
  const reader = new StampReader()
  const isDays = time >= 0 && share(cells[time] ?? [], (cell) => reader.read(cell) && reader.stamp.isDayOnly) > 0.8
  const clock = isDays
    ? headings.findIndex((_, i) => i !== time && share(cells[i] ?? [], (cell) => isClock(cell)) > 0.8)
    : -1
  // A column like `0:25` may as well be a run of a day: a time of day fills the day.
  if (clock >= 0 && /time|clock|hour|start|from/i.test(headings[clock] ?? '')) roles[clock] = 'clock'
  const step = time < 0 ? 3600 : stepOf(rows, time, roles.indexOf('clock'))
  headings.forEach((heading, i) => {
    if (roles[i] === '') roles[i] = runRole(heading, cells[i] ?? [], step)
  })
  if (roles.some((role) => runOf(role))) return oneKind(roles)
  const state = bestState(headings, cells, roles)
  if (state >= 0) roles[state] = 'state'
  return roles
}

/** Seconds and shares cannot both tell of the rows of one file: what there is more of stays. */
function oneKind(roles: Role[]): Role[] {
  const isShare = (role: Role) => /-(pct|flag)$/.test(role)
  const runs = roles.filter((role) => runOf(role))
  const keepShares = runs.filter(isShare).length > runs.length / 2
  return roles.map((role) => (runOf(role) && isShare(role) !== keepShares ? '' : role))
}

function bestTime(headings: readonly string[], cells: string[][]): number {
  const reader = new StampReader()
  const scores = headings.map((heading, i) => {
    const read = share(cells[i] ?? [], (cell) => reader.read(cell))
    return read < 0.8 ? 0 : read + (/date|time|stamp|day|when/i.test(heading) ? 1 : 0)
  })
  const best = Math.max(0, ...scores)
  return best === 0 ? -1 : scores.indexOf(best)
}

function isClock(cell: string): boolean {
  const reader = new StampReader()
  return reader.read('2026-01-01', cell) && !reader.stamp.isDayOnly
}

function runRole(heading: string, cells: string[], step: number): Role {
  const plain = heading.replaceAll('_', ' ').replace(/([a-z])([A-Z])/g, '$1 $2')
  if (NOT_A_RUN.test(plain)) return ''
  const run = NAMES.find(([, name]) => name.test(plain))?.[0]
  if (!run || cells.length === 0) return ''
  const unit = unitOf(plain, cells, step)
  if (!unit || share(cells, (cell) => readRun(cell, unit) !== undefined) < 0.8) return ''
  return `${run}-${unit}`
}

function unitOf(heading: string, cells: string[], step: number): Unit | null {
  const named = /%|percent|duty/i.test(heading)
    ? 'pct'
    : /\bsec|\(s\)|\bs\b/i.test(heading)
      ? 's'
      : /\bmin|\(m\)/i.test(heading)
        ? 'min'
        : /\bhours?\b|\bhrs?\b|\(h\)|\bh\b/i.test(heading)
          ? 'h'
          : null
  if (named) return named
  const numbers = cells.map((cell) => readRun(cell, 's')).filter((value) => value !== undefined && !Number.isNaN(value))
  if (numbers.length < cells.length / 2)
    return share(cells, (cell) => readRun(cell, 'flag') !== undefined) > 0.8 ? 'flag' : null
  if (cells.some((cell) => /[a-z:%]/i.test(cell)))
    return cells.some((cell) => cell.includes('%')) ? 'pct' : step >= 72_000 ? 'h' : 's'
  const most = Math.max(0, ...(numbers as number[]))
  const isWhole = numbers.every((value) => Number.isInteger(value))
  if (most <= 1 && isWhole) return 'flag'
  if (step >= 72_000) return most <= 24 ? 'h' : most <= 1440 ? 'min' : 's'
  if (most <= step / 60 && most <= 60 && step > 60) return 'min'
  return most <= step ? 's' : most <= 100 && step < 100 ? 'pct' : 's'
}

/** The column whose words tell what the system was doing; one of what it was set to only where there is no other. */
function bestState(headings: readonly string[], cells: string[][], roles: readonly Role[]): number {
  const scores = headings.map((heading, i) => {
    const list = cells[i] ?? []
    if (roles[i] !== '' || list.length === 0) return 0
    const told = share(list, (cell) => wordMeans(cell) !== null && !/^-?\d/.test(cell))
    if (told < 0.5) return 0
    const doing = /state|status|action|activ|running|operat|call|equipment|doing/i.test(heading) ? 1 : 0
    return told + doing - (/mode|setting|set\b/i.test(heading) ? 0.4 : 0)
  })
  const best = Math.max(0, ...scores)
  return best === 0 ? -1 : scores.indexOf(best)
}

function share(cells: readonly string[], is: (cell: string) => boolean): number {
  return cells.length === 0 ? 0 : cells.filter(is).length / cells.length
}
