import { detect } from 'chardet'
import { parse } from 'csv-parse/sync'
import { encodingExists, getDecoder } from 'iconv-lite'
import { StampReader } from './stamp'

/** The beginning of an export: how its text is written, and its first rows as a table. */
export interface ExportHead {
  encoding: string
  delimiter: string
  /** Records before the first row of figures: a title and the headings, or none. */
  skipped: number
  headings: string[]
  rows: string[][]
}

/** So much of a file tells how it is written. */
export const HEAD_BYTES = 256 * 1024
const DELIMITERS = [',', ';', '\t', '|'] as const
const MOST_COLUMNS = 60
const ROWS = 400
const TITLE_LINES = 40

export type HeadRead = { ok: true; value: ExportHead } | { ok: false; say: string }

/** Reads the first bytes of an export in any encoding and with any usual delimiter, or says why it is none. */
export function readHead(bytes: Uint8Array): HeadRead {
  if (bytes.length === 0) return no('is empty.')
  if (bytes[0] === 0x50 && bytes[1] === 0x4b)
    return no('is a workbook or an archive: open it, and save its table as CSV.')
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) return no('is a workbook: in your spreadsheet choose “Save as”, “CSV”.')
  const encoding = encodingOf(bytes)
  const text = getDecoder(encoding)
    .write(Buffer.from(bytes))
    .replace(/^\uFEFF/, '')
  // biome-ignore lint/suspicious/noControlCharactersInRegex: what these find is no text.
  if (/[\u0000-\u0008\u000E-\u001F]/.test(text)) return no('is not a table of text. Export it as CSV.')
  // The last line of the piece may be cut off in the middle.
  const end = bytes.length < HEAD_BYTES ? text.length : text.lastIndexOf('\n') + 1
  const whole = text.slice(0, end || text.length)
  if (whole.trim() === '') return no('is empty.')
  const tables = DELIMITERS.map((delimiter) => tableWith(whole, delimiter)).filter((table) => table !== null)
  const best = tables.sort((a, b) => b.score - a.score)[0]
  if (!best)
    return no('has no rows that begin with a day or a time in a table with comma, semicolon or tab between the cells.')
  if (best.headings.length > MOST_COLUMNS)
    return no(`has ${best.headings.length} columns; at most ${MOST_COLUMNS} are read.`)
  const { score: _, ...table } = best
  return { ok: true, value: { encoding, ...table } }
}

function no(say: string): { ok: false; say: string } {
  return { ok: false, say: `The file ${say}` }
}

/** UTF-8 where it is; UTF-16 by its mark or its empty halves; else what the letters look like. */
function encodingOf(bytes: Uint8Array): string {
  const [a, b] = bytes
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return a === 0xff ? 'utf16-le' : 'utf16-be'
  const start = bytes.subarray(0, 400)
  const empty = (odd: 0 | 1) => start.filter((byte, i) => i % 2 === odd && byte === 0).length
  if (start.length > 8 && empty(1) > start.length / 3 && empty(0) === 0) return 'utf16-le'
  if (start.length > 8 && empty(0) > start.length / 3 && empty(1) === 0) return 'utf16-be'
  try {
    // A letter that the piece cuts off is no fault.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true })
    return 'utf8'
  } catch {
    const guess = detect(bytes.subarray(0, 4096)) ?? ''
    const isLatin = /^(ISO-8859-(1|9|15)|windows-125[24]|UTF-)/i.test(guess)
    return !isLatin && encodingExists(guess) ? guess : 'windows-1252'
  }
}

type Table = Omit<ExportHead, 'encoding'> & { score: number }

/** The table that a delimiter makes of a text: the first record with a stamp begins it, the one before names its columns. */
function tableWith(text: string, delimiter: string): Table | null {
  const records = recordsOf(text, delimiter)
  if (!records) return null
  const reader = new StampReader()
  const widths = new Map<number, number>()
  for (const { length } of records) widths.set(length, (widths.get(length) ?? 0) + 1)
  const width = [...widths].sort(([a, m], [b, n]) => n - m || b - a)[0]?.[0] ?? 0
  if (width < 2) return null
  const hasStamp = (record: string[]) =>
    record.length > width / 2 && record.some((cell) => cell.length > 5 && reader.read(cell.trim()))
  const first = records.findIndex(hasStamp)
  if (first < 0 || first > TITLE_LINES) return null
  const above = records[first - 1]
  const named = above !== undefined && above.length > 1 && above.length >= width / 2
  const count = Math.min(200, Math.max(width, named ? above.length : 0))
  const headings = Array.from({ length: count }, (_, i) =>
    (named ? (above[i] ?? '') : '').replaceAll(/\s+/g, ' ').trim().slice(0, 80),
  )
  const rows = records.slice(first, first + ROWS)
  const fitting = rows.filter((row) => row.length === width && hasStamp(row)).length
  return { delimiter, skipped: first, headings, rows, score: fitting * width }
}

function recordsOf(text: string, delimiter: string): string[][] | null {
  try {
    return parse(text, { ...csvOptions(delimiter), to: ROWS + TITLE_LINES }) as string[][]
  } catch {
    return null
  }
}

/** How every export is parsed, in its head and as a whole. */
export function csvOptions(delimiter: string) {
  return {
    delimiter,
    bom: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_records_with_empty_values: true,
    // A quotation mark that nothing closes must not swallow the rest of the file.
    max_record_size: 64 * 1024,
  } as const
}
