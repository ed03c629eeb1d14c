import type { DayNumber } from './day'
import { RUNS, type Run, type RunRows } from './run-rows'
import type { RunTimes } from './run-times'

/** What the numbers of a row are: seconds of its interval, a share of its time, or seconds of a whole day. */
export type RowKind = 'seconds' | 'share' | 'day'

/** How several columns of one run go together: at the same time (the longest counts) or in turn (they are added). */
export type Together = 'longest' | 'added'

/** Whether the blower's figures hold every hour it ran, or only those without heating or cooling. */
export interface FanMeans {
  withHeat: boolean
  withCool: boolean
}

/** Seconds of each day, and how many of them are known, by run. */
export interface RunDays {
  from: DayNumber
  /** Seconds of each day: a day of a clock change has 23 or 25 hours. */
  length: Float64Array
  ran: Record<Run, Float64Array>
  known: Record<Run, Float64Array>
  /** The usual time from one row to the next, in seconds. */
  step: number
  /** Rows come whenever something changes, instead of at regular times. */
  isChangeLog: boolean
  fan: FanMeans
  /** Rows with a run below none, and rows with one longer than their time. */
  negative: number[]
  tooLong: number[]
}

const DAY = 86_400
const HOUR = 3600
// A log of changes is silent while nothing changes: running that long is no run any more, and off that long is unknown.
const LONGEST_RUN = DAY
const LONGEST_OFF = 7 * DAY
// A run may be noted a moment late.
const TOLERANCE = 1.05

/** Adds the rows up by day of the home. A time of which no row tells is not "off": it is unknown. */
export function runDays(
  rows: RunRows,
  times: RunTimes,
  { kind, together, fan }: { kind: RowKind; together: Record<Run, Together>; fan: 'auto' | 'all' | 'alone' },
): RunDays {
  const { at, clock } = times
  const pace = paceOf(at, kind)
  const first = at.length > 0 ? clock.dayOf(at[0] as number) : 0
  const last = at.length > 0 ? clock.dayOf((at.at(-1) as number) + pace.step - 1) : -1
  const count = last - first + 2
  const perRun = () => ({
    heat: new Float64Array(count),
    cool: new Float64Array(count),
    fan: new Float64Array(count),
  })
  const days: Omit<RunDays, 'fan'> = {
    from: first,
    length: new Float64Array(count),
    ran: perRun(),
    known: perRun(),
    ...pace,
    negative: [],
    tooLong: [],
  }
  const starts = Float64Array.from({ length: count + 1 }, (_, i) => clock.startOf(first + i))
  for (let i = 0; i < count; i++) days.length[i] = (starts[i + 1] as number) - (starts[i] as number)

  const [heats, cools, fans] = RUNS.map((run) =>
    figuresOf(rows, times, run, { together, isChangeLog: pace.isChangeLog }),
  )
  const fanSeen = { heat: 0, fanInHeat: 0, cool: 0, fanInCool: 0 }
  let day = 0
  for (let i = 0; i < at.length; i++) {
    const begins = at[i] as number
    const heat = heats ? (heats[i] as number) : Number.NaN
    const cool = cools ? (cools[i] as number) : Number.NaN
    const blower = fans ? (fans[i] as number) : Number.NaN
    if (heat < 0 || cool < 0 || blower < 0) {
      days.negative.push(rowOf(i))
      continue
    }
    const runs = heat > 0 || cool > 0 || blower > 0
    const lasts = lastsOf(i, runs)
    if (lasts <= 0) continue
    if (heat > 0 && !(cool > 0) && blower >= 0) {
      fanSeen.heat += heat
      fanSeen.fanInHeat += Math.min(heat, blower)
    }
    if (cool > 0 && !(heat > 0) && blower >= 0) {
      fanSeen.cool += cool
      fanSeen.fanInCool += Math.min(cool, blower)
    }
    while (begins >= (starts[day + 1] as number)) day++
    const whole = kind === 'day' ? (days.length[day] as number) : lasts
    const most = whole * TOLERANCE + 1
    if (kind !== 'share' && (heat > most || cool > most || blower > most)) days.tooLong.push(rowOf(i))
    put(begins, kind === 'day' ? (starts[day] as number) + whole : begins + lasts, heat, cool, blower)
  }
  const means: FanMeans = {
    withHeat: fan === 'all' || (fan === 'auto' && fanSeen.fanInHeat >= fanSeen.heat / 2),
    withCool: fan === 'all' || (fan === 'auto' && fanSeen.fanInCool >= fanSeen.cool / 2),
  }
  return { ...days, fan: means }

  function lastsOf(i: number, runs: boolean): number {
    const next = i + 1 < at.length ? (at[i + 1] as number) - (at[i] as number) : Number.POSITIVE_INFINITY
    if (!pace.isChangeLog) return next <= pace.step * 1.5 && kind === 'share' ? next : Math.min(next, pace.step)
    return next <= (runs ? LONGEST_RUN : LONGEST_OFF) ? next : 0
  }

  function rowOf(i: number): number {
    return times.rows[times.start[i] as number] as number
  }

  /** Shares a row out over the days that it lies on. */
  function put(begins: number, ends: number, heat: number, cool: number, blower: number): void {
    const lasts = ends - begins
    for (let at = begins, on = day; at < ends; on++) {
      const until = Math.min(ends, starts[on + 1] as number)
      const part = until - at
      enter(days.ran.heat, days.known.heat, on, heat, part, lasts)
      enter(days.ran.cool, days.known.cool, on, cool, part, lasts)
      enter(days.ran.fan, days.known.fan, on, blower, part, lasts)
      at = until
    }
  }

  // Called for every figure of a file: plain arguments cost nothing.
  function enter(
    ran: Float64Array,
    known: Float64Array,
    on: number,
    figure: number,
    part: number,
    lasts: number,
  ): void {
    if (Number.isNaN(figure)) return
    const of = kind === 'share' ? Math.min(1, figure) * part : Math.min(figure, lasts) * (part / lasts)
    ran[on] = (ran[on] as number) + of
    known[on] = (known[on] as number) + part
  }
}

/** The commonest time between rows, and whether most rows keep to it. */
function paceOf(at: Float64Array, kind: RowKind): { step: number; isChangeLog: boolean } {
  if (kind === 'day') return { step: DAY, isChangeLog: false }
  const counts = new Map<number, number>()
  // The same gap comes many times on end: it is counted before it is entered.
  let [last, inARow] = [0, 0]
  for (let i = 1; i <= at.length; i++) {
    const gap = i < at.length ? (at[i] as number) - (at[i - 1] as number) : 0
    if (gap === last) {
      inARow++
      continue
    }
    if (last > 0) counts.set(last, (counts.get(last) ?? 0) + inARow)
    ;[last, inARow] = [gap, 1]
  }
  let [step, most] = [HOUR, 0]
  for (const [gap, times] of counts) if (times > most || (times === most && gap < step)) [step, most] = [gap, times]
  step = Math.min(step, DAY)
  let near = 0
  for (const [gap, times] of counts) if (gap >= step * 0.8 && gap <= step * 1.2) near += times
  return { step, isChangeLog: kind === 'share' && at.length > 2 && near < (at.length - 1) * 0.6 }
}

/** The figures of a run by instant: of rows that tell different things the larger, in a log of changes the last. NaN is unknown. */
function figuresOf(
  rows: RunRows,
  { at, start, rows: byTime, isForward }: RunTimes,
  run: Run,
  { together, isChangeLog }: { together: Record<Run, Together>; isChangeLog: boolean },
): Float32Array | null {
  const list = (together[run] === 'added' && rows.added[run]) || rows.longest[run]
  if (!list) return null
  const figures = new Float32Array(at.length)
  for (let instant = 0; instant < at.length; instant++) {
    const [from, to] = [start[instant] as number, start[instant + 1] as number]
    if (to - from === 1 || isChangeLog) {
      figures[instant] = list[byTime[isForward ? to - 1 : from] as number] as number
      continue
    }
    let figure = Number.NaN
    for (let i = from; i < to; i++) {
      const next = list[byTime[i] as number] as number
      if (!Number.isNaN(next) && !(next <= figure)) figure = next
    }
    figures[instant] = figure
  }
  return figures
}
