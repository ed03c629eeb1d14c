import { detect } from 'chardet'
import { parse } from 'csv-parse/sync'
import { decode, encodingExists } from 'iconv-lite'
import type { Fault } from '@/lib/core/fault'

/** A table as it stands in a file: headings, and rows with the line each begins on. */
export interface SheetTable {
  /** The whole as text, so that it can be sent again. */
  text: string
  headings: string[]
  rows: { line: number; cells: string[] }[]
}

/** The largest sheet that is read, 4 MB: some twenty thousand units. It travels in the page until it is kept. */
export const SHEET_LIMIT_BYTES = 4_000_000
export const SHEET_LIMIT_ROWS = 20_000
const DELIMITERS = [',', ';', '\t', '|'] as const
const COLUMNS_LIMIT = 100

type Read<T> = { ok: true; value: T } | { ok: false; faults: Fault[] }

/** A sheet in any encoding and with any of the usual delimiters, or what is wrong with it as a whole. */
export function readUnitsTable(input: string | Uint8Array): Read<SheetTable> {
  const decoded = typeof input === 'string' ? { ok: true as const, value: input } : decodeSheet(input)
  if (!decoded.ok) return decoded
  const text = decoded.value.replace(/^\uFEFF/, '')
  if (text.length > SHEET_LIMIT_BYTES) return whole('is larger than 4 MB, the most that is read: split it by building.')
  if (text.trim() === '') return whole('is empty: choose a file with a row of headings and a row for each unit.')
  const parsed = parseWith(text, guessDelimiter(text))
  if (typeof parsed === 'string') return whole(parsed)
  const [head, ...rows] = parsed
  const headings = (head?.cells ?? []).map((heading) => heading.replaceAll(/\s+/g, ' ').trim())
  if (headings.length < 2)
    return whole('has one column only: it must be a table with a comma, semicolon or tab between the cells.')
  if (headings.length > COLUMNS_LIMIT)
    return whole(`has ${headings.length} columns; at most ${COLUMNS_LIMIT} are read.`)
  if (rows.length === 0) return whole('has a row of headings and nothing below: write a row for each unit.')
  if (rows.length > SHEET_LIMIT_ROWS)
    return whole(`has more than ${SHEET_LIMIT_ROWS} rows, the most that are read at once: split it by building.`)
  return { ok: true, value: { text, headings, rows } }
}

function whole(say: string): { ok: false; faults: Fault[] } {
  return { ok: false, faults: [{ path: 'file', say: `The file ${say}` }] }
}

function decodeSheet(bytes: Uint8Array): Read<string> {
  if (bytes.length > SHEET_LIMIT_BYTES)
    return whole('is larger than 4 MB, the most that is read: split it by building.')
  // A workbook is an archive, and an older one a compound document.
  if (bytes[0] === 0x50 && bytes[1] === 0x4b)
    return whole('is a workbook: in your spreadsheet choose “Save as”, “CSV”.')
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf)
    return whole('is a workbook: in your spreadsheet choose “Save as”, “CSV”.')
  const text = isUtf16(bytes) ? decodeUtf16(bytes) : (asUtf8(bytes) ?? decodeGuessed(bytes))
  // biome-ignore lint/suspicious/noControlCharactersInRegex: what these find is no text.
  return /[\u0000-\u0008\u000E-\u001F]/.test(text)
    ? whole('is not a table of text: in your spreadsheet choose “Save as”, “CSV”.')
    : { ok: true, value: text }
}

function asUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return undefined
  }
}

/** By its mark, or by the empty half of each plain letter. */
function isUtf16(bytes: Uint8Array): boolean {
  const marked = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)
  if (marked) return true
  const start = bytes.subarray(0, 400)
  return start.length > 3 && start.filter((byte) => byte === 0).length > start.length / 3
}

function decodeUtf16(bytes: Uint8Array): string {
  const isBig = bytes[0] === 0xfe || bytes[0] === 0
  return decode(Buffer.from(bytes), isBig ? 'utf16-be' : 'utf16-le')
}

// What is no UTF-8 was saved by an older program: Windows-1252 unless the letters say otherwise.
function decodeGuessed(bytes: Uint8Array): string {
  const guess = detect(bytes) ?? ''
  // Latin scripts differ in few letters, and a short sheet does not tell them apart: the most common one is taken.
  const isLatin = /^(ISO-8859-(1|9|15)|windows-125[24]|UTF-)/i.test(guess)
  return decode(Buffer.from(bytes), !isLatin && encodingExists(guess) ? guess : 'windows-1252')
}

/** The delimiter that stands most often in the headings outside of quotes. */
function guessDelimiter(text: string): string {
  const head = /^(?:"(?:[^"]|"")*"|[^"\r\n])*/.exec(text.trimStart())?.[0] ?? ''
  const bare = head.replaceAll(/"(?:[^"]|"")*"/g, '')
  const counts = DELIMITERS.map((delimiter) => bare.split(delimiter).length)
  return DELIMITERS[counts.indexOf(Math.max(...counts))] ?? ','
}

// Most files end their lines in one way, which is read a third faster than in any.
function lineEndsOf(text: string): string[] {
  if (!text.includes('\r')) return ['\n']
  return /\r(?!\n)|(?<!\r)\n/.test(text) ? ['\r\n', '\n', '\r'] : ['\r\n']
}

function parseWith(text: string, delimiter: string): SheetTable['rows'] | string {
  try {
    // With `info` each row comes with its line, which the package's types leave out.
    const rows = parse(text, {
      delimiter,
      info: true,
      relax_column_count: true,
      // The headings, the rows that are read, and one more that says that there are too many.
      to: SHEET_LIMIT_ROWS + 2,
      relax_quotes: true,
      skip_records_with_empty_values: true,
      record_delimiter: lineEndsOf(text),
    }) as unknown as { record: string[]; info: { lines: number } }[]
    return rows.map(({ record, info }) => ({ line: info.lines, cells: record }))
  } catch (error) {
    const line = (error as { lines?: number }).lines
    return `cannot be read as a table${line === undefined ? '' : `, from row ${line} on`}: is a quotation mark open there?`
  }
}
