/** What a thermostat tells of: heating, cooling, and the blower. */
export const RUNS = ['heat', 'cool', 'fan'] as const
export type Run = (typeof RUNS)[number]

/** A row whose stamp has no offset of its own. */
export const NO_OFFSET = 32_767

/** Which of two numbers of a date comes first, where the year stands last. */
export type DateOrder = 'month-first' | 'day-first'

const FIRST_CAPACITY = 4096

/**
 * The rows of an export, one after another in plain arrays: 200,000 of them are 7 MB. Nothing is decided here that
 * only the whole file can tell: which number is the day, how long a row lasts, whether two columns ran at once.
 */
export class RunRows {
  count = 0
  /** `year·10000 + first·100 + second`, the two numbers as they stand; negative where the year stood first. */
  date = new Int32Array(FIRST_CAPACITY)
  /** Seconds into the day as written. */
  second = new Int32Array(FIRST_CAPACITY)
  /** Minutes ahead of UTC that the stamp states, or `NO_OFFSET`. */
  offset = new Int16Array(FIRST_CAPACITY)
  /** Where it stands in the file, counting rows with something in them from 1. */
  line = new Int32Array(FIRST_CAPACITY)
  /** Of each run the longest of its columns, in seconds or as a share of the row's time; NaN is unknown. */
  longest: Partial<Record<Run, Float32Array>> = {}
  /** The sum of its columns, where it has several. */
  added: Partial<Record<Run, Float32Array>> = {}

  constructor(
    readonly runs: readonly Run[],
    readonly several: readonly Run[],
  ) {
    for (const run of runs) this.longest[run] = new Float32Array(FIRST_CAPACITY)
    for (const run of several) this.added[run] = new Float32Array(FIRST_CAPACITY)
  }

  /** Enters one row; its runs are set by `set` afterwards. */
  add(line: number, { date, second, offset }: { date: number; second: number; offset: number }): void {
    if (this.count === this.date.length) this.grow()
    this.line[this.count] = line
    this.date[this.count] = date
    this.second[this.count] = second
    this.offset[this.count] = offset
    this.count++
  }

  /** Sets one run of the row that was entered last. */
  set(run: Run, longest: number, added: number): void {
    const values = this.longest[run]
    if (values) values[this.count - 1] = longest
    const sums = this.added[run]
    if (sums) sums[this.count - 1] = added
  }

  /** Takes what is not told of a run for none: some exports leave a cell empty where nothing ran. */
  emptyIsNone(run: Run): void {
    for (const list of [this.longest[run], this.added[run]])
      if (list) for (let i = 0; i < this.count; i++) if (Number.isNaN(list[i])) list[i] = 0
  }

  private grow(): void {
    const size = this.count * 2
    const larger = <T extends Int32Array | Int16Array | Float32Array>(from: T, to: T): T => {
      to.set(from)
      return to
    }
    this.line = larger(this.line, new Int32Array(size))
    this.date = larger(this.date, new Int32Array(size))
    this.second = larger(this.second, new Int32Array(size))
    this.offset = larger(this.offset, new Int16Array(size))
    for (const lists of [this.longest, this.added])
      for (const run of RUNS) {
        const list = lists[run]
        if (list) lists[run] = larger(list, new Float32Array(size))
      }
  }
}
