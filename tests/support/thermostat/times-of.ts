import type { DateOrder } from '@/lib/core/run-rows'
import { type RunTimes, runTimes } from '@/lib/core/run-times'
import { type SomeRow, someRows } from './some-rows'

export const HOME = 'America/Chicago'

/** The rows in the order of time, of a file in the home’s own time unless another is named. */
export function timesOf(
  list: readonly SomeRow[],
  { zone = HOME, order }: { zone?: string; order?: DateOrder } = {},
): RunTimes {
  return runTimes(someRows(list, { several: ['heat'] }), { zone, homeZone: HOME, order })
}

/** As text in UTC, to the minute. */
export function instants(times: RunTimes): string[] {
  return [...times.at].map((at) => new Date(at * 1000).toISOString().slice(0, 16))
}

/** Of each instant the rows that tell of it. */
export function rowsOf({ at, rows, start }: RunTimes): number[][] {
  return [...at].map((_, i) => [...rows.slice(start[i], start[i + 1])])
}
