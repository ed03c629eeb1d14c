import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { encode } from 'iconv-lite'
import { expect, test } from 'vitest'
import { csvText } from '@/lib/core/csv'
import type { Household } from '@/lib/core/household'
import { mergeUnit, newUnit } from '@/lib/core/unit-merge'
import { type SheetUnit, sheetRows, unitKey } from '@/lib/core/unit-sheet'
import { householdRules } from '@/lib/forms/rules/household-rules'
import { matchColumns, matchingFaults } from '@/lib/forms/unit-columns'
import { readUnitRow, slashOrder } from '@/lib/forms/unit-row'
import { readUnitsTable } from '@/lib/forms/units-table'
import { aHousehold } from '../support/a-household'
import { ARBITRARY_TODAY, household as anyHousehold } from '../support/arbitrary-household'
import { fortyUnits } from '../support/many-units'

const TODAY = ARBITRARY_TODAY
const PLACE = { timeZone: 'America/Chicago', units: 'us', climate: aHousehold().climate } as const

function read(sheet: string | Uint8Array) {
  const table = readUnitsTable(sheet)
  if (!table.ok) throw new Error(table.faults[0]?.say)
  const matching = matchColumns(table.value.headings)
  return table.value.rows.map(({ cells, line }) => ({
    line,
    ...readUnitRow(cells, matching, { today: TODAY, order: 'unknown' }),
  }))
}

function unitsOf(sheet: string | Uint8Array): SheetUnit[] {
  return read(sheet).map(({ unit, faults }) => {
    if (!unit) throw new Error(faults.join(' '))
    return unit
  })
}

test('what is exported and brought back changes nothing, whatever the homes are', () => {
  const homes = fc.array(anyHousehold(), { minLength: 1, maxLength: 4 })
  fc.assert(
    fc.property(homes, fc.constantFrom('=', "'=", '+', '-1', '@', ''), (made, formula) => {
      const stored = made.map((household, i) => ({
        household: { ...household, building: `${formula}Larkspur Court`, name: `${formula}${household.name} ${i}` },
        accessNote: formula === '' ? null : `${formula}cmd|' /C calc'!A0`,
      }))
      const sheet = csvText(sheetRows(stored))
      // By cell: a comma inside of quotes begins none.
      const cells: string[][] = parse(sheet, { bom: true })
      expect(cells.flat().filter((cell) => /^[=+@-]/.test(cell))).toEqual([])
      for (const [i, row] of unitsOf(sheet).entries()) {
        const before = stored[i]?.household as Household
        expect(unitKey(row.building, row.unit)).toBe(unitKey(before.building ?? '', before.name))
        expect(row.accessNote ?? null).toBe(stored[i]?.accessNote)
        const { household, records, changes, clashes } = mergeUnit(before, row)
        expect({ household, records, changes, clashes }).toEqual({
          household: before,
          records: [],
          changes: [],
          clashes: [],
        })
      }
    }),
    { numRuns: 150 },
  )
})

test('a sheet is read alike in every encoding and with every delimiter', () => {
  const rows = sheetRows(
    fortyUnits().map((household) => ({ household, accessNote: 'Schlüssel beim Hausmeister; 2. Stock' })),
  )
  const text = csvText(rows).slice(1)
  const expected = unitsOf(text)
  expect(expected).toHaveLength(40)
  expect(expected.some(({ building }) => building === 'Élm Row')).toBe(true)
  for (const encoding of ['utf8', 'utf16le', 'utf16-be', 'windows-1252'])
    expect(unitsOf(encode(text, encoding, { addBOM: false })), encoding).toEqual(expected)
  for (const encoding of ['utf8', 'utf16le', 'utf16-be'])
    expect(unitsOf(encode(text, encoding, { addBOM: true })), `${encoding} with its mark`).toEqual(expected)
  for (const delimiter of [';', '\t', '|']) {
    const quoted = rows.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(delimiter)).join('\n')
    expect(unitsOf(quoted), delimiter).toEqual(expected)
  }
})

test('a sheet is read alike however its lines end, one way or several', () => {
  const lines = ['Unit,Note', '1,ring', '2,"left\nthen up"', '3,', '4,dog']
  const read = (text: string) => {
    const table = readUnitsTable(text)
    if (!table.ok) throw new Error(table.faults[0]?.say)
    return table.value.rows.map(({ cells }) => cells)
  }
  const rows = [
    ['1', 'ring'],
    ['2', 'left\nthen up'],
    ['3', ''],
    ['4', 'dog'],
  ]
  for (const end of ['\n', '\r\n', '\r']) expect([end, read(lines.join(end))]).toEqual([end, rows])
  expect(read('Unit,Note\r\n1,ring\n2,"left\nthen up"\r3,\r\n4,dog\r\n')).toEqual(rows)
})

test('a sheet in Cyrillic letters of an old program is read', () => {
  const text = ['Building,Unit', ...Array.from({ length: 9 }, (_, i) => `Берёзовая улица дом,квартира ${i}`)].join('\n')
  expect(unitsOf(encode(text, 'windows-1251'))[0]).toMatchObject({
    building: 'Берёзовая улица дом',
    unit: 'квартира 0',
  })
})

test('no bytes and no text make the reader throw', () => {
  const bytes = fc.oneof(
    fc.uint8Array({ maxLength: 400 }),
    fc.string({ unit: 'binary' }).map((text) => `Building,Unit,Size\n${text}`),
    fc
      .array(fc.constantFrom('"', ',', ';', '\n', '\r', '\t', 'a', '\uFEFF', "'", '='), { maxLength: 60 })
      .map((all) => all.join('')),
  )
  fc.assert(
    fc.property(bytes, (sent) => {
      const table = readUnitsTable(sent)
      if (!table.ok) {
        expect(table.faults[0]?.say).toMatch(/^The file /)
        return
      }
      const matching = matchColumns(table.value.headings)
      for (const { cells } of table.value.rows) {
        const { unit, faults } = readUnitRow(cells, matching, { today: TODAY, order: slashOrder(cells) })
        expect(unit === null).toBe(faults.length > 0)
      }
    }),
    { numRuns: 500 },
  )
})

test('whatever a row may say of a new unit makes a home that the household file takes too', () => {
  const cell = (...texts: string[]) => fc.constantFrom('', ...texts)
  const row = fc.tuple(
    cell('gas furnace', 'heat-pump', 'gas boiler', 'none', 'electric-baseboard', 'dual-fuel', 'wall furnace'),
    cell('central-ac', 'heat pump', 'none'),
    cell('3', '2,5'),
    cell('16x25x1', '20 × 20 × 2', '15½x24x1'),
    cell('wall grille', 'furnace-slot', 'ductless-head', 'ventilator'),
    cell('pleated', 'washable', 'screen'),
    cell('8', '13'),
    cell('2026-01-05', '5.1.2026'),
  )
  let kept = 0
  fc.assert(
    fc.property(row, (cells) => {
      const sheet = `Building,Unit,Heating,Cooling,Tons,Size,Place,Kind,MERV,Changed\nA,1,${cells.map((text) => `"${text}"`).join(',')}`
      const [unit] = unitsOf(sheet)
      const { household, records, clashes } = newUnit(unit as SheetUnit, { id: 'a-1', on: TODAY, place: PLACE })
      const faults = householdRules([{ ...household, records }], () => TODAY)
      if (clashes.length + faults.length > 0) return
      kept++
      expect(household).toMatchObject({ building: 'A', name: '1', tenure: 'let', since: TODAY })
      expect(mergeUnit({ ...household, records }, unit as SheetUnit).changes).toEqual([])
    }),
    { numRuns: 400 },
  )
  expect(kept).toBeGreaterThan(200)
})

test('every fault of a row is named at once, with what is in the cell', () => {
  const sheet = `Building;Unit;Heating;Tons;Filter size;Changed
;Flat 1;gas furnace;3;16x25x1;2026-11-01
Larkspur Court;;gas furnace;3;16x25x1;2026-11-01
;;;3;;
Larkspur Court;Flat 2;wood stove;300;16x25;2027-01-01`
  expect(read(sheet).map(({ faults }) => faults)).toEqual([
    ['The unit has no building. Write its name; for a house that stands alone, the street and number.'],
    ['The building has no unit in this row. Write one row for each unit, and what the unit is called.'],
    ['Neither building nor unit is named; both are needed.'],
    [
      expect.stringMatching(/^“Heating” must be one of gas-furnace, .*, but is the text "wood stove"/),
      expect.stringMatching(/^“Tons of cooling” must be a number between 0.5 and 10 .*"300"/),
      expect.stringMatching(/^“Filter 1 size \(in\)” must be a size in inches/),
      expect.stringMatching(/^“Filter 1 changed on” is 2027-01-01, which is not over yet/),
    ],
  ])
})

test('days with slashes are read only where the file tells which number is the month', () => {
  expect(slashOrder(['11/25/2026', '1/2/2026'])).toBe('month-first')
  expect(slashOrder(['25/11/2026', '1/2/2026'])).toBe('day-first')
  expect(slashOrder(['1/2/2026'])).toBe('unknown')
  expect(slashOrder(['25/11/2026', '11/25/2026'])).toBe('unknown')
  const cells = ['A', '1', '1/2/2026']
  const matching = matchColumns(['Building', 'Unit', 'Changed'])
  const changed = (order: 'month-first' | 'day-first' | 'unknown') =>
    readUnitRow(cells, matching, { today: TODAY, order }).unit?.filters[0]?.changed
  expect([changed('month-first'), changed('day-first'), changed('unknown')]).toEqual([
    '2026-01-02',
    '2026-02-01',
    undefined,
  ])
})

test('a workbook, an empty file, one column and no rows are each refused with what to do', () => {
  const say = (sent: string | Uint8Array) => {
    const table = readUnitsTable(sent)
    return table.ok ? '' : table.faults[0]?.say
  }
  expect(say(new Uint8Array([0x50, 0x4b, 3, 4]))).toContain('Save as')
  expect(say(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0]))).toContain('Save as')
  expect(say('')).toContain('is empty')
  expect(say('Unit\nFlat 1')).toContain('one column only')
  expect(say('Building,Unit')).toContain('nothing below')
  expect(say('Building,Unit\nA,"Flat 1')).toContain('quotation mark')
})

test('columns are told by what people call them, and two for one or none for the key are said', () => {
  expect(matchColumns(['Property', 'Apt #', 'AC', 'Filter Size', 'Filter 2 size', 'Rent', 'Unit'])).toEqual([
    'building',
    'unit',
    'cool',
    'size-1',
    'size-2',
    '',
    '',
  ])
  expect(matchingFaults(['building', 'building'], ['House', 'Site'])).toEqual([
    '“Building” is chosen for 2 columns: House, Site. Keep one.',
    'No column is “Unit”. Choose which column names the unit.',
  ])
})
