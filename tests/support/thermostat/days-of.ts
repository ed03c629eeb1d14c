import { type RowKind, runDays, type Together } from '@/lib/core/run-days'
import type { Run } from '@/lib/core/run-rows'
import { runTimes } from '@/lib/core/run-times'
import { type SomeRow, someRows } from './some-rows'

const HOME = 'America/Chicago'
export const HOUR = 3600
export const DAY = 24 * HOUR

/** How the columns of rows are understood. */
export interface Ways {
  fan?: 'auto' | 'all' | 'alone'
  runs?: Run[]
  several?: Run[]
  together?: Partial<Record<Run, Together>>
}

/** Rows of a home in Chicago, by day. */
export function daysOf(kind: RowKind, list: readonly SomeRow[], { fan = 'auto', together, ...columns }: Ways = {}) {
  const rows = someRows(list, columns)
  return runDays(rows, runTimes(rows, { zone: HOME, homeZone: HOME }), {
    ...{ kind, fan, together: { heat: 'longest', cool: 'longest', fan: 'longest', ...together } },
  })
}

/** Seconds of heating, of all days, and how many seconds are known of them. */
export function heatOf(kind: RowKind, list: readonly SomeRow[], ways: Ways = {}): [ran: number[], known: number[]] {
  const days = daysOf(kind, list, ways)
  return [[...days.ran.heat], [...days.known.heat]]
}

/** Rows that begin so many seconds after midnight of Monday 5 October 2026. */
export function rowsAt(seconds: readonly number[], of: (i: number) => Omit<SomeRow, 'date'>): SomeRow[] {
  const two = (value: number) => `${value}`.padStart(2, '0')
  return seconds.map((second, i) => {
    const date = new Date(Date.UTC(2026, 9, 5 + Math.floor(second / DAY))).toISOString().slice(0, 10)
    const time = [(second % DAY) / HOUR, (second % HOUR) / 60, second % 60].map(Math.floor).map(two).join(':')
    return { date, time, ...of(i) }
  })
}

export function everySo(step: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => i * step)
}
