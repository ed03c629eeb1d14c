import { type Day, dayNumber, dayText } from '@/lib/core/day'
import { plural } from '@/lib/core/day-words'
import { type FanMeans, type RowKind, type RunDays, runDays, type Together } from '@/lib/core/run-days'
import { type FanRule, knownDays, monthlyPieces, monthsOf, type Piece, type RunMonth } from '@/lib/core/run-pieces'
import { type DateOrder, RUNS, type Run } from '@/lib/core/run-rows'
import { type RunTimes, runTimes } from '@/lib/core/run-times'
import type { ExportChoices } from './choices'
import { guessRoles, isListOfDays, type Role, runOf } from './columns'
import type { ExportHead } from './head'
import { type ReadRows, readRows } from './read-rows'

/** What an export was understood to say, and everything that is wrong with it. */
export interface Understood {
  roles: Role[]
  rows: number
  /** First and last day of which a row tells; null where no row could be read. */
  span: { from: Day; to: Day } | null
  kind: RowKind
  stepSeconds: number
  isChangeLog: boolean
  order: DateOrder
  isOrderGuessed: boolean
  /** Runs with several columns, and how they were put together. */
  together: Partial<Record<Run, Together>>
  fan: FanMeans
  words: { word: string; means: number | null; count: number }[]
  months: RunMonth[]
  pieces: Piece[]
  /** Stretches of days of which too little is known. */
  leftOut: { from: Day; to: Day }[]
  /** What is worth knowing and stops nothing. */
  notes: string[]
  /** What has to be mended first. */
  faults: string[]
}

export interface UnderstandOptions {
  choices: ExportChoices
  homeZone: string
  /** Today at home: nothing is measured after it. */
  today: Day
  fanRule: FanRule
}

const RUN_WORDS: Record<Run, string> = { heat: 'heating', cool: 'cooling', fan: 'the blower' }
const PASSED_OVER_SHARE = 0.01
const PASSED_OVER = 5

/** Reads a whole export and adds it up by day and month. Throws only where the file itself cannot be read. */
export async function understandExport(
  chunks: AsyncIterable<Uint8Array>,
  head: ExportHead,
  { choices, homeZone, today, fanRule }: UnderstandOptions,
): Promise<Understood> {
  const roles = choices.roles?.length === head.headings.length ? choices.roles : guessRoles(head.headings, head.rows)
  const faults = roleFaults(roles)
  const empty = { ...EMPTY, roles, faults }
  if (faults.length > 0) return empty
  const isDays = isListOfDays(head.rows, roles)
  const read = await readRows(chunks, head, { roles, words: choices.words, isDays })
  if (read.broken) return { ...empty, rows: read.count, faults: [`The file ${read.broken}`] }
  const words = [...read.words].map(([word, one]) => ({ word, ...one })).sort((a, b) => b.count - a.count)
  if (read.rows.count === 0)
    return { ...empty, rows: read.count, words, faults: ['No row begins with a day or a time that can be read.'] }
  const isShare = roles.some((role) => role === 'state' || /-(pct|flag)$/.test(role))
  const kind: RowKind = isShare ? 'share' : isDays ? 'day' : 'seconds'
  const zone = choices.zone === 'utc' && !isDays ? 'UTC' : homeZone
  const times = runTimes(read.rows, { zone, homeZone, order: choices.order })
  const together = Object.fromEntries(
    RUNS.map((run) => [run, choices.together[run] ?? (read.leads[run] === false ? 'added' : 'longest')]),
  ) as Record<Run, Together>
  const isTold = roles.includes('state') && !roles.some((role) => runOf(role)?.run === 'fan')
  const days = runDays(read.rows, times, { kind, together, fan: isTold ? 'alone' : choices.fan })
  // A word for the fan alone that never comes says nothing of the blower: its setting does.
  if (isTold && !days.ran.fan.some((seconds) => seconds > 0)) days.known.fan.fill(0)
  const known = knownDays(days, fanRule, dayNumber(today))
  const notes = [...notesOf(read, times, days, head), ...futureNotes(days, today)]
  return {
    ...{ roles, rows: read.count, words, kind, notes },
    span: times.at.length === 0 ? null : { from: dayText(days.from), to: lastDay(times, days) },
    stepSeconds: days.step,
    isChangeLog: days.isChangeLog,
    order: times.order,
    isOrderGuessed: times.isOrderGuessed && choices.order === undefined,
    together: Object.fromEntries(Object.keys(read.leads).map((run) => [run, together[run as Run]])),
    fan: days.fan,
    months: monthsOf(known),
    pieces: monthlyPieces(known),
    leftOut: leftOutOf(known, days, today),
    faults: faultsOf(read, { times, days, kind, known: known.size, isState: isShare, today }),
  }
}

const EMPTY: Omit<Understood, 'roles' | 'faults'> = {
  ...{ rows: 0, span: null, kind: 'seconds', stepSeconds: 0, isChangeLog: false, order: 'month-first' },
  ...{ isOrderGuessed: false, together: {}, fan: { withHeat: true, withCool: true }, words: [], months: [] },
  ...{ pieces: [], leftOut: [], notes: [] },
}

/** What is wrong with a choice of columns, all at once. */
export function roleFaults(roles: readonly Role[]): string[] {
  const count = (role: Role) => roles.filter((one) => one === role).length
  const runs = roles.map(runOf).filter((run) => run !== null)
  const faults: string[] = []
  if (count('time') === 0)
    faults.push('No column is “day and time”. Choose the one that says when each row was written.')
  if (count('time') > 1)
    faults.push('Several columns are “day and time”. Keep one; the time of day alone may have another.')
  if (count('clock') > 1) faults.push('Several columns are “time of day”. Keep one.')
  if (runs.length === 0 && count('state') === 0)
    faults.push('No column tells of heating, cooling or the fan. Choose which one does, and what it counts in.')
  const shares = runs.filter(({ unit }) => unit === 'pct' || unit === 'flag').length
  if ((shares > 0 || count('state') > 0) && shares < runs.length)
    faults.push('Some columns count time, others say on or off, or a share. Keep one of the two kinds.')
  return faults
}

function lastDay(times: RunTimes, days: RunDays): Day {
  return dayText(Math.max(days.from, times.clock.dayOf(times.at.at(-1) as number)))
}

function rowsNamed(lines: readonly number[], count: number): string {
  const named = [...lines].sort((a, b) => a - b).slice(0, 5)
  const more = count - named.length
  return `${count === 1 ? 'row' : 'rows'} ${named.join(', ')}${more > 0 ? ` and ${more.toLocaleString('en-US')} more` : ''}`
}

function notesOf(read: ReadRows, times: RunTimes, days: RunDays, head: ExportHead): string[] {
  const notes: string[] = []
  if (times.repeated > 0)
    notes.push(
      `${plural(times.repeated, 'row')} repeat${times.repeated === 1 ? 's' : ''} the time of another: each time counts once.` +
        (times.contradicting > 0
          ? ` ${times.contradicting} of these times ${times.contradicting === 1 ? 'has' : 'have'} different figures: the larger counts.`
          : ''),
    )
  // A list of days is dated by the midnights of its days, and some clocks go forward at midnight.
  if (times.leftOut > 0 && days.step < 86_400)
    notes.push(
      `${plural(times.leftOut, 'row')} stand${times.leftOut === 1 ? 's' : ''} in an hour that the clocks of this home left out when they went forward. If there are such rows the file may be in UTC: choose that below.`,
    )
  for (const run of read.emptyIsNone) notes.push(`Empty cells of ${RUN_WORDS[run]} count as none: no cell says 0.`)
  for (const [what, { lines, count }] of read.unread)
    if (isFew(count, read.count))
      notes.push(`Passed over, because ${what} there cannot be read: ${rowsNamed(lines, count)}.`)
  if (days.tooLong.length > 0 && days.tooLong.length <= read.count / 1000 && days.step < 86_400)
    notes.push(
      `${plural(days.tooLong.length, 'row')} with a run longer than the row’s own time: cut to it (${rowsNamed(linesOf(read, days.tooLong), days.tooLong.length)}).`,
    )
  if (head.headings.every((heading) => heading === '')) notes.push('The file has no row of headings.')
  return notes
}

function isFew(count: number, rows: number): boolean {
  return count <= Math.max(PASSED_OVER, rows * PASSED_OVER_SHARE) && count < rows / 2
}

function futureNotes(days: RunDays, today: Day): string[] {
  const last = days.from + days.length.length - 1
  const later = Array.from({ length: days.length.length }, (_, i) => days.from + i).filter(
    (day) => day > dayNumber(today) && RUNS.some((run) => (days.known[run][day - days.from] ?? 0) > 0),
  )
  return last > dayNumber(today) && later.length > 0
    ? [`${plural(later.length, 'day')} after today: left out, nothing can be measured before it happens.`]
    : []
}

function linesOf(read: ReadRows, rows: readonly number[]): number[] {
  return rows.map((row) => read.rows.line[row] ?? 0)
}

interface Found {
  times: RunTimes
  days: RunDays
  kind: RowKind
  known: number
  isState: boolean
  today: Day
}

function faultsOf(read: ReadRows, { times, days, kind, known, isState, today }: Found): string[] {
  const faults: string[] = []
  const { negative, tooLong } = days
  if (negative.length > 0)
    faults.push(
      `A run cannot be shorter than nothing: ${rowsNamed(linesOf(read, negative), negative.length)} ${negative.length === 1 ? 'has' : 'have'} a figure below 0.`,
    )
  if (tooLong.length > 0 && (kind === 'day' || tooLong.length > read.count / 1000))
    faults.push(
      kind === 'day'
        ? `A day has 24 hours: ${rowsNamed(linesOf(read, tooLong), tooLong.length)} ${tooLong.length === 1 ? 'says' : 'say'} more. Look at the unit of the column.`
        : `The rows come every ${stepInWords(days.step)}, but ${rowsNamed(linesOf(read, tooLong), tooLong.length)} ${tooLong.length === 1 ? 'has a run' : 'have runs'} longer than that. Look at the unit of the column.`,
    )
  for (const [what, { lines, count }] of read.unread)
    if (!isFew(count, read.count)) faults.push(`${capital(what)} cannot be read in ${rowsNamed(lines, count)}.`)
  if (times.noDate > 0)
    faults.push(
      `${plural(times.noDate, 'row')} ${times.noDate === 1 ? 'has a date that does' : 'have dates that do'} not exist when the ${times.order === 'day-first' ? 'day' : 'month'} stands first. Choose the other order of the date, or put these rows right.`,
    )
  if (isState) faults.push(...stateFaults(read, days))
  if (faults.length === 0 && known === 0)
    faults.push(
      days.from > dayNumber(today)
        ? 'Everything in this file lies after today. Look at the order of day and month.'
        : 'No day of this file is known well enough: rows are there for less than nine tenths of each day.',
    )
  return faults
}

/** Words that nobody knows, and a column that says what the thermostat was set to. */
function stateFaults(read: ReadRows, days: RunDays): string[] {
  const unknown = [...read.words].filter(([word, { means }]) => means === null && word !== '')
  const count = unknown.reduce((sum, [, one]) => sum + one.count, 0)
  if (count > read.count / 2)
    return [
      `What the words ${unknown
        .slice(0, 5)
        .map(([word]) => `“${word}”`)
        .join(', ')} mean is not known here. Say below what each means.`,
    ]
  for (const run of ['heat', 'cool'] as const) {
    const ran = days.ran[run].reduce((sum, seconds) => sum + seconds, 0)
    const known = days.known[run].reduce((sum, seconds) => sum + seconds, 0)
    if (known >= 7 * 86_400 && ran > known * 0.97)
      return [
        `By this column ${RUN_WORDS[run]} ran day and night without a pause. It says what the thermostat was set to, not what ran: choose another column.`,
      ]
  }
  return []
}

function leftOutOf(known: ReadonlyMap<number, unknown>, days: RunDays, today: Day): { from: Day; to: Day }[] {
  const spans: { from: number; to: number }[] = []
  const last = Math.min(dayNumber(today), days.from + days.length.length - 2)
  for (let day = days.from; day <= last; day++) {
    if (known.has(day)) continue
    const before = spans.at(-1)
    if (before?.to === day - 1) before.to = day
    else spans.push({ from: day, to: day })
  }
  return spans.map(({ from, to }) => ({ from: dayText(from), to: dayText(to) }))
}

/** `5 minutes`, `an hour`, `a day`. */
export function stepInWords(seconds: number): string {
  if (seconds === 86_400) return 'day'
  if (seconds === 3600) return 'hour'
  if (seconds % 3600 === 0) return plural(seconds / 3600, 'hour')
  return seconds % 60 === 0 ? plural(seconds / 60, 'minute') : plural(seconds, 'second')
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
