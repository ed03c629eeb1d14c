import { withoutApostrophe } from '@/lib/core/csv'
import { type Day, isDay } from '@/lib/core/day'
import { placeName } from '@/lib/core/filter-words'
import { COOL_SOURCES, FILTER_PLACES, HEAT_SOURCES, MEDIA, type NominalSize } from '@/lib/core/household'
import { SHEET_COLUMNS, SHEET_FILTERS, type SheetColumn, type SheetFilter, type SheetUnit } from '@/lib/core/unit-sheet'
import { LIMITS } from './equipment-schema'
import { shown } from './fields'
import { typedNumber } from './lengths'
import type { Matching } from './unit-columns'

/** Which of two numbers with slashes between is the month: told by the whole file, or by nothing. */
export type SlashOrder = 'month-first' | 'day-first' | 'unknown'

/** Reads the order of days like 11/25/2026 from all cells that hold days. */
export function slashOrder(days: Iterable<string>): SlashOrder {
  let month = false
  let day = false
  for (const text of days) {
    const [, first, second] = SLASHED.exec(text.trim()) ?? []
    if (Number(first) > 12) day = true
    if (Number(second) > 12) month = true
  }
  if (month === day) return 'unknown'
  return month ? 'month-first' : 'day-first'
}

const SLASHED = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/

/** What a row says, or everything that is wrong with it, each in a sentence that begins with the column. */
export function readUnitRow(
  cells: readonly string[],
  matching: Matching,
  { today, order }: { today: Day; order: SlashOrder },
): { unit: SheetUnit | null; faults: string[] } {
  const faults: string[] = []
  const texts = new Map<SheetColumn, string>()
  // No column takes so long a text: what is longer is cut before expressions look at it.
  for (const [i, column] of matching.entries())
    if (column !== '') texts.set(column, withoutApostrophe(shortened(cells[i] ?? '')).trim())

  function read<T>(column: SheetColumn, to: (text: string) => T | undefined, must: string): T | undefined {
    const text = texts.get(column) ?? ''
    if (text === '') return undefined
    const value = to(text)
    if (value === undefined) faults.push(`“${SHEET_COLUMNS.get(column)}” must be ${must}, but is ${shown(text)}.`)
    return value
  }
  const number = (column: SheetColumn, { min, max, unit, whole }: Limit) =>
    read(
      column,
      (text) => {
        const value = typedNumber(text) ?? exactNumber(text)
        return value !== undefined && value >= min && value <= max && (!whole || Number.isInteger(value))
          ? value
          : undefined
      },
      `a ${whole ? 'whole ' : ''}number between ${min} and ${max} (${unit})`,
    )
  const word = <const W extends readonly string[]>(column: SheetColumn, words: W, names = NAMES) =>
    read(column, (text) => wordOf(text, words, names), `one of ${words.join(', ')}`)
  const past = (column: SheetColumn) => {
    const on = read(column, (text) => dayOf(text, order), 'a day that exists, written like 2026-11-25')
    if (on === undefined || on <= today) return on
    faults.push(`“${SHEET_COLUMNS.get(column)}” is ${on}, which is not over yet: write what has been done.`)
    return undefined
  }

  const [building, unit] = (['building', 'unit'] as const).map((column) => read(column, lineOf, LINE))
  const missing = (column: SheetColumn) => (texts.get(column) ?? '') === ''
  if (missing('building') && missing('unit')) faults.push('Neither building nor unit is named; both are needed.')
  else if (missing('building'))
    faults.push('The unit has no building. Write its name; for a house that stands alone, the street and number.')
  else if (missing('unit'))
    faults.push('The building has no unit in this row. Write one row for each unit, and what the unit is called.')

  const row = {
    heat: word('heat', [...HEAT_SOURCES, 'none']),
    cool: word('cool', [...COOL_SOURCES, 'none']),
    tons: number('tons', LIMITS.tons),
    inputBtuh: number('inputBtuh', LIMITS.input),
    people: number('people', { min: 0, max: 30, unit: 'people', whole: true }),
    pets: number('pets', { min: 0, max: 30, unit: 'pets with fur', whole: true }),
    heatingServiced: past('heatingServiced'),
    coolingServiced: past('coolingServiced'),
    accessNote: read('accessNote', noteOf, 'a text of at most 500 characters'),
  }
  const filters = Array.from({ length: SHEET_FILTERS }, (_, i): SheetFilter => {
    const n = i + 1
    return present({
      place: word(`place-${n}`, FILTER_PLACES, PLACE_NAMES),
      nominal: read(`size-${n}`, sizeOf, 'a size in inches, width x height x depth, like 16x25x1'),
      medium: word(`medium-${n}`, MEDIA),
      merv: number(`merv-${n}`, LIMITS.merv),
      changed: past(`changed-${n}`),
    })
  })
  if (faults.length > 0 || building === undefined || unit === undefined) return { unit: null, faults }
  return { unit: { building, unit, ...present(row), filters }, faults }
}

interface Limit {
  min: number
  max: number
  unit: string
  whole?: boolean
}

function shortened(cell: string): string {
  return cell.length > 2000 ? `${cell.slice(0, 2000)}…` : cell
}

/** The same without what is undefined. */
function present<T extends object>(value: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as never
}

const LINE = 'a name of 1 to 200 characters on one line'

function lineOf(text: string): string | undefined {
  const line = text.replaceAll(/[ \u00A0]+/g, ' ')
  return line.length <= 200 && !/[\p{Cc}\p{Cs}]/u.test(line) ? line : undefined
}

function noteOf(text: string): string | undefined {
  const note = text.replaceAll(/\s+/g, ' ')
  return note.length <= 500 && !/[\p{Cc}\p{Cs}]/u.test(note) ? note : undefined
}

// What people write for our words.
const NAMES: Record<string, string> = {
  furnace: 'gas-furnace',
  gas: 'gas-furnace',
  'natural-gas': 'gas-furnace',
  'gas-heat': 'gas-furnace',
  propane: 'propane-furnace',
  oil: 'oil-furnace',
  electric: 'electric-furnace',
  boiler: 'gas-boiler',
  baseboard: 'electric-baseboard',
  heatpump: 'heat-pump',
  ac: 'central-ac',
  'a-c': 'central-ac',
  central: 'central-ac',
  'central-air': 'central-ac',
  no: 'none',
  pleat: 'pleated',
  'deep-pleated-media': 'media',
}

const PLACE_NAMES: Record<string, string> = {
  ceiling: 'ceiling-grille',
  wall: 'wall-grille',
  floor: 'floor-grille',
  furnace: 'furnace-slot',
  slot: 'furnace-slot',
  cabinet: 'in-cabinet',
  'mini-split': 'ductless-head',
  head: 'ductless-head',
  ...Object.fromEntries(FILTER_PLACES.map((place) => [placeName(place).replaceAll(' ', '-'), place])),
}

function wordOf<const W extends readonly string[]>(
  text: string,
  words: W,
  names: Record<string, string>,
): W[number] | undefined {
  const plain = text
    .toLowerCase()
    .replaceAll(/[^a-z]+/g, '-')
    .replaceAll(/^-|-$/g, '')
  const name = Object.hasOwn(names, plain) ? names[plain] : plain
  return words.find((word) => word === plain) ?? words.find((word) => word === name)
}

function sizeOf(text: string): NominalSize | undefined {
  const sides = text
    .replaceAll(/["”″]|in(?:ches|\.)?/gi, '')
    .split(/\s*[x×*]\s*/i)
    .map((side) => typedNumber(side) ?? exactNumber(side))
  const [widthIn, heightIn, depthIn] = sides
  if (sides.length !== 3 || widthIn === undefined || heightIn === undefined || depthIn === undefined) return undefined
  const isSide = (side: number) => side >= LIMITS.side.min && side <= LIMITS.side.max
  const isDepth = depthIn >= LIMITS.depth.min && depthIn <= LIMITS.depth.max
  return isSide(widthIn) && isSide(heightIn) && isDepth ? { widthIn, heightIn, depthIn } : undefined
}

/** More decimals than anybody types, as our own export writes them. */
function exactNumber(text: string): number | undefined {
  return /^\d{1,7}\.\d{1,20}$/.test(text) ? Number(text) : undefined
}

/** A day as a file or a spreadsheet writes it; with slashes only where the file tells which number is the month. */
function dayOf(text: string, order: SlashOrder): Day | undefined {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ]00:00(?::00)?)?$/.exec(text)
  if (iso) return asDay(iso[1], iso[2], iso[3])
  const dotted = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text)
  if (dotted) return asDay(dotted[3], dotted[2], dotted[1])
  const [, first, second, year] = SLASHED.exec(text) ?? []
  if (order === 'month-first' || first === second) return asDay(year, first, second)
  return order === 'day-first' ? asDay(year, second, first) : undefined
}

function asDay(year = '', month = '', date = ''): Day | undefined {
  const day = `${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`
  return isDay(day) ? day : undefined
}
