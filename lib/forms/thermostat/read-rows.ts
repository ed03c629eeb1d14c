import { type Options, parse } from 'csv-parse'
import { getDecoder } from 'iconv-lite'
import { NO_OFFSET, RUNS, type Run, RunRows } from '@/lib/core/run-rows'
import { readRun, type Unit, wordMeans } from './cell'
import { type Role, runOf } from './columns'
import { csvOptions, type ExportHead } from './head'
import { StampReader } from './stamp'

/** The rows of an export and what was found while they were read. */
export interface ReadRows {
  rows: RunRows
  /** Rows of figures in the file. */
  count: number
  /** By what could not be read: the rows where it is so, the first of them only, and how many. */
  unread: Map<string, { lines: number[]; count: number }>
  /** Words that tell what the system was doing, and how often each stands. */
  words: Map<string, { means: number | null; count: number }>
  /** Runs with several columns: whether one of them runs whenever any does. */
  leads: Partial<Record<Run, boolean>>
  /** Runs whose empty cells were taken for none. */
  emptyIsNone: Run[]
  /** Why the file ends before its end; null where all was read. */
  broken: string | null
}

/** Two years of rows, one a minute. */
export const MOST_ROWS = 1_200_000
const MOST_WORDS = 60
const LINES_NAMED = 5
const A_BREATH = 20

interface RunColumns {
  run: Run
  columns: { at: number; unit: Unit }[]
  led: number[]
  ran: number
  empty: number
  none: number
}

/**
 * Reads a whole export row by row: what is kept is a few numbers a row. `chunks` are the bytes of the file; nothing
 * but the file's own failures is thrown.
 */
export async function readRows(
  chunks: AsyncIterable<Uint8Array>,
  head: ExportHead,
  {
    roles,
    words: said,
    isDays,
  }: { roles: readonly Role[]; words: ReadonlyMap<string, number | null>; isDays: boolean },
): Promise<ReadRows> {
  const [time, clock] = [roles.indexOf('time'), roles.indexOf('clock')]
  const states = roles.flatMap((role, i) => (role === 'state' ? [i] : []))
  const runs = runColumns(roles)
  const told = states.length > 0 ? RUNS.filter((run) => !runs.some((one) => one.run === run)) : []
  const rows = new RunRows(
    [...runs.map(({ run }) => run), ...told],
    runs.filter(({ columns }) => columns.length > 1).map(({ run }) => run),
  )
  const read: ReadRows = {
    ...{ rows, count: 0, unread: new Map(), words: new Map(), leads: {}, emptyIsNone: [], broken: null },
  }
  const stamps = new StampReader()
  const { stamp } = stamps
  let record = 0

  function unread(what: string): void {
    const found = read.unread.get(what)
    if (!found) read.unread.set(what, { lines: [record], count: 1 })
    else {
      if (found.lines.length < LINES_NAMED) found.lines.push(record)
      found.count++
    }
  }

  function means(word: string): number | null {
    let known = read.words.get(word)
    if (!known) {
      known = { means: said.has(word) ? (said.get(word) ?? null) : wordMeans(word), count: 0 }
      if (read.words.size >= MOST_WORDS) return null
      read.words.set(word, known)
    }
    known.count++
    return known.means
  }

  function nameOf(at: number): string {
    return `“${head.headings[at] || `column ${at + 1}`}”`
  }

  function take(cells: string[]): void {
    record++
    if (record <= head.skipped) return
    read.count++
    if (!stamps.read(cells[time] ?? '', clock < 0 ? undefined : cells[clock])) {
      unread('the stamp')
      return
    }
    if (isDays) [stamp.second, stamp.offset] = [0, NO_OFFSET]
    rows.add(record, stamp)
    for (const column of runs) takeRun(column, cells)
    if (told.length > 0) takeStates(cells)
  }

  function takeStates(cells: string[]): void {
    let bits: number | null = null
    for (const at of states) {
      const meaning = means((cells[at] ?? '').trim().slice(0, 60))
      if (meaning !== null) bits = (bits ?? 0) | meaning
    }
    for (const run of told) {
      const value = bits === null ? Number.NaN : bits & BITS[run] ? 1 : 0
      rows.set(run, value, value)
    }
  }

  function takeRun(of: RunColumns, cells: string[]): void {
    const [only, another] = of.columns
    if (only && !another) {
      const value = readRun(cells[only.at] ?? '', only.unit)
      if (value === undefined) unread(nameOf(only.at))
      else if (value === 0) of.none++
      else if (Number.isNaN(value)) of.empty++
      rows.set(of.run, value ?? Number.NaN, Number.NaN)
      return
    }
    let [longest, added] = [Number.NaN, Number.NaN]
    for (const { at, unit } of of.columns) {
      const value = readRun(cells[at] ?? '', unit)
      if (value === undefined) {
        unread(nameOf(at))
        continue
      }
      if (Number.isNaN(value)) {
        of.empty++
        continue
      }
      if (value === 0) of.none++
      // A figure below none is kept as it is: it is a fault, and no other column may hide it.
      if (!(longest >= value) && !(longest < 0)) longest = value
      if (value < 0) longest = value
      added = Number.isNaN(added) ? value : added + value
    }
    rows.set(of.run, longest, longest < 0 ? longest : added)
    if (of.columns.length > 1 && longest > 0) {
      of.ran++
      of.columns.forEach(({ at, unit }, i) => {
        if ((readRun(cells[at] ?? '', unit) ?? 0) >= longest * 0.98) of.led[i] = (of.led[i] ?? 0) + 1
      })
    }
  }

  read.broken = await eachRecord(chunks, head, take, () => read.count > MOST_ROWS)
  if (read.count > MOST_ROWS)
    read.broken = `has more than ${MOST_ROWS.toLocaleString('en-US')} rows, the most that is read at once: bring it year by year.`
  for (const { run, columns, led, ran, empty, none } of runs) {
    if (columns.length > 1) read.leads[run] = ran === 0 || Math.max(...led) >= ran * 0.95
    if (none === 0 && empty > read.count * columns.length * 0.3) {
      rows.emptyIsNone(run)
      read.emptyIsNone.push(run)
    }
  }
  return read
}

const BITS: Record<Run, number> = { heat: 1, cool: 2, fan: 4 }

function runColumns(roles: readonly Role[]): RunColumns[] {
  return RUNS.flatMap((run) => {
    const columns = roles.flatMap((role, at) => {
      const of = runOf(role)
      return of?.run === run ? [{ at, unit: of.unit }] : []
    })
    return columns.length === 0 ? [] : [{ run, columns, led: columns.map(() => 0), ran: 0, empty: 0, none: 0 }]
  })
}

/** Hands over every record; gives why it stopped before the end, or null. */
async function eachRecord(
  chunks: AsyncIterable<Uint8Array>,
  { encoding, delimiter }: ExportHead,
  take: (cells: string[]) => void,
  isEnough: () => boolean,
): Promise<string | null> {
  // csv-parse reads UTF-8 by itself, and faster than text that was decoded before.
  const decoder = encoding === 'utf8' ? null : getDecoder(encoding)
  const parser = parse(csvOptions(delimiter) as Options)
  let fault: { lines?: number } | null = null
  let records = 0
  parser.on('data', (cells: string[]) => {
    records++
    take(cells)
  })
  parser.on('error', (error) => {
    fault = error as { lines?: number }
  })
  const over = new Promise<void>((resolve) => {
    parser.once('end', resolve)
    parser.once('close', resolve)
    parser.once('error', () => resolve())
  })
  let number = 0
  for await (const chunk of chunks) {
    if (fault || isEnough()) break
    if (!parser.write(decoder ? decoder.write(Buffer.from(chunk)) : chunk) && !fault)
      await Promise.race([new Promise<void>((resolve) => parser.once('drain', resolve)), over])
    // Whoever else waits for this process has their turn between the pieces of the file.
    if (++number % A_BREATH === 0) await new Promise((resolve) => setTimeout(resolve, 0))
  }
  if (!fault) {
    parser.end(decoder ? decoder.end() : undefined)
    await over
  }
  parser.destroy()
  return fault ? `cannot be read as a table from row ${records + 1} on: is a quotation mark open there?` : null
}
