import { NO_OFFSET, RUNS, type Run, RunRows } from '@/lib/core/run-rows'

/** A row of an export before anything is known of it; a run that is left out is unknown. */
export interface SomeRow extends Partial<Record<Run, number>> {
  /** `2026-10-05`, year first; or its packed number as it stands, the year last. */
  date: string | number
  /** `23:59`, or `23:59:30`; midnight where it is left out. */
  time?: string
  /** Minutes ahead of UTC. */
  offset?: number
  /** The sum of the columns of a run that has several. */
  added?: Partial<Record<Run, number>>
}

/** Rows as the reader of files enters them. */
export function someRows(
  list: readonly SomeRow[],
  { runs = RUNS, several = [] }: { runs?: readonly Run[]; several?: readonly Run[] } = {},
): RunRows {
  const rows = new RunRows(runs, several)
  list.forEach(({ date, time = '00:00', offset = NO_OFFSET, added, ...ran }, i) => {
    const [hour = 0, minute = 0, second = 0] = time.split(':').map(Number)
    const packed = typeof date === 'number' ? date : -Number(date.replaceAll('-', ''))
    rows.add(i + 1, { date: packed, second: (hour * 60 + minute) * 60 + second, offset })
    for (const run of runs) rows.set(run, ran[run] ?? Number.NaN, added?.[run] ?? Number.NaN)
  })
  return rows
}
