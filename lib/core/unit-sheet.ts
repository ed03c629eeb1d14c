import type { Day } from './day'
import type { CoolSource, FilterPlace, HeatSource, Household, LogRecord, Medium, NominalSize } from './household'
import { sizeText } from './supplies'

/** How many filters of a unit a sheet has room for. */
export const SHEET_FILTERS = 4

/** One filter of a row; what the row does not say is left out. */
export interface SheetFilter {
  place?: FilterPlace
  nominal?: NominalSize
  medium?: Medium
  merv?: number
  changed?: Day
}

/** What one row of a sheet says of a unit. Only building and unit are always there. */
export interface SheetUnit {
  building: string
  unit: string
  heat?: HeatSource | 'none'
  cool?: CoolSource | 'none'
  tons?: number
  inputBtuh?: number
  people?: number
  pets?: number
  heatingServiced?: Day
  coolingServiced?: Day
  accessNote?: string
  /** By place in the home's list; a filter of which nothing is said is an empty group. */
  filters: SheetFilter[]
}

const UNIT_COLUMNS = {
  building: 'Building',
  unit: 'Unit',
  heat: 'Heating',
  cool: 'Cooling',
  tons: 'Tons of cooling',
  inputBtuh: 'Burner input (Btu/h)',
  people: 'People',
  pets: 'Pets',
  heatingServiced: 'Heating serviced on',
  coolingServiced: 'Cooling serviced on',
  accessNote: 'Access note',
} as const
const FILTER_COLUMNS = {
  place: 'place',
  size: 'size (in)',
  medium: 'kind',
  merv: 'MERV',
  changed: 'changed on',
} as const

export type UnitColumn = keyof typeof UNIT_COLUMNS
export type FilterColumn = keyof typeof FILTER_COLUMNS
export type SheetColumn = UnitColumn | `${FilterColumn}-${number}`

/** Every column that a sheet may have, in its order, with its heading. `size-2` is the second filter's size. */
export const SHEET_COLUMNS: ReadonlyMap<SheetColumn, string> = new Map<SheetColumn, string>([
  ...(Object.entries(UNIT_COLUMNS) as [UnitColumn, string][]),
  ...Array.from({ length: SHEET_FILTERS }, (_, i) =>
    (Object.entries(FILTER_COLUMNS) as [FilterColumn, string][]).map(([column, name]): [SheetColumn, string] => [
      `${column}-${i + 1}`,
      `Filter ${i + 1} ${name}`,
    ]),
  ).flat(),
])

/** What makes two rows the same unit: case and runs of blanks do not count. */
export function unitKey(building: string, unit: string): string {
  const plain = (text: string) => text.normalize('NFKC').toLowerCase().replaceAll(/\s+/g, ' ').trim()
  return `${plain(building)}\n${plain(unit)}`
}

/** The rows of a sheet, headings first: as many filters as the home with the most has, at most `SHEET_FILTERS`. */
export function sheetRows(homes: readonly { household: Household; accessNote: string | null }[]): string[][] {
  const most = Math.min(SHEET_FILTERS, Math.max(1, ...homes.map(({ household }) => household.filters.length)))
  const columns = [...SHEET_COLUMNS].filter(([column]) => filterNumber(column) <= most)
  return [
    columns.map(([, heading]) => heading),
    ...homes.map(({ household, accessNote }) => {
      const cells = cellsOf(household, accessNote ?? '')
      return columns.map(([column]) => cells.get(column) ?? '')
    }),
  ]
}

/** `size-2` is of filter 2; what is of no filter has the number 0. */
export function filterNumber(column: SheetColumn): number {
  return Number(column.split('-')[1] ?? 0)
}

function cellsOf(household: Household, accessNote: string): Map<SheetColumn, string> {
  const [system] = household.systems
  const isAssumed = (code: string, subject = system?.id ?? '') =>
    household.assumed?.some((one) => one.code === code && one.subject === subject) ?? false
  const cells = new Map<SheetColumn, string>()
  const set = (column: SheetColumn, value: string | number | undefined) =>
    value !== undefined && cells.set(column, String(value))
  set('building', household.building)
  set('unit', household.name)
  // What nobody knew is left empty, and stays so when the sheet comes back.
  if (system && !isAssumed('heat-source')) set('heat', system.heat?.source ?? 'none')
  if (system && !isAssumed('cool-source')) set('cool', system.cool?.source ?? 'none')
  set('tons', system?.cool?.tons)
  set('inputBtuh', system?.heat?.inputBtuh)
  set('people', household.people)
  set('pets', household.pets)
  set('heatingServiced', system && lastDay(household.records, isService(system.id, HEATING)))
  set('coolingServiced', system && lastDay(household.records, isService(system.id, ['cooling-service'])))
  set('accessNote', accessNote.replaceAll(/\s+/g, ' ') || undefined)
  for (const [i, { id, place, nominal, medium, merv }] of household.filters.slice(0, SHEET_FILTERS).entries()) {
    const n = i + 1
    if (!isAssumed('filter-place', id)) set(`place-${n}`, place)
    if (!isAssumed('filter-size', id)) set(`size-${n}`, sizeText(nominal))
    if (!isAssumed('filter-medium', id)) set(`medium-${n}`, medium)
    set(`merv-${n}`, merv)
    set(
      `changed-${n}`,
      lastDay(household.records, (record) => record.kind === 'filter-changed' && record.filter === id),
    )
  }
  return cells
}

const HEATING = ['heating-service', 'boiler-service']

function isService(subject: string, tasks: readonly string[]) {
  return (record: LogRecord) =>
    record.kind === 'service-done' && record.subject === subject && tasks.includes(record.task)
}

function lastDay(records: readonly LogRecord[], counts: (record: LogRecord) => boolean): Day | undefined {
  return records
    .filter(counts)
    .map(({ on }) => on)
    .toSorted()
    .at(-1)
}
