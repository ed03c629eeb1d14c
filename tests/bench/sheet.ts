import { type Options, parse } from 'csv-parse/sync'
import { csvText } from '@/lib/core/csv'
import { sheetRows } from '@/lib/core/unit-sheet'
import { matchColumns } from '@/lib/forms/unit-columns'
import { readUnitRow, slashOrder } from '@/lib/forms/unit-row'
import { readUnitsTable } from '@/lib/forms/units-table'
import { manyHouseholds } from './many-households'
import { atMost, medians, type Row } from './table'

const ON = '2026-11-25'
const UNITS = 10_000
const RUNS = 7

/** A sheet of units, from its bytes to what each row says, against the CSV library alone. */
export async function sheetRowsMeasured(): Promise<Row[]> {
  const homes = manyHouseholds(UNITS, ON).map((household) => ({ household, accessNote: 'Ring at the side door' }))
  const bytes = new TextEncoder().encode(csvText(sheetRows(homes)))
  const found = await medians(RUNS, {
    alone: () => parse(Buffer.from(bytes), { bom: true } satisfies Options).length,
    table: () => readUnitsTable(bytes),
    whole: () => readAll(bytes),
  })
  return [
    {
      what: `a sheet of ${UNITS} units, ${(bytes.length / 1e6).toFixed(1)} MB, by the CSV library alone`,
      figure: `${found.alone.toFixed(0)} ms`,
    },
    atMost('the same as a table, any encoding and delimiter / the library alone', found.table / found.alone, 1.5),
    {
      what: 'every cell of it understood / the library alone',
      figure: `${(found.whole / found.alone).toFixed(1)} times`,
    },
  ]
}

function readAll(bytes: Uint8Array): void {
  const table = readUnitsTable(bytes)
  if (!table.ok) throw new Error(table.faults[0]?.say)
  const { headings, rows } = table.value
  const matching = matchColumns(headings)
  const days = matching.flatMap((column, i) => (/chang|servic/i.test(column) ? [i] : []))
  const order = slashOrder(rows.flatMap(({ cells }) => days.map((i) => cells[i] ?? '')))
  const read = rows.filter(({ cells }) => readUnitRow(cells, matching, { today: ON, order }).unit)
  if (read.length !== UNITS) throw new Error(`${read.length} units were read`)
}
