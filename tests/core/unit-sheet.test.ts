import { describe, expect, test } from 'vitest'
import type { Filter, Household } from '@/lib/core/household'
import { filterNumber, SHEET_COLUMNS, sheetRows, unitKey } from '@/lib/core/unit-sheet'
import { bareHome } from '../support/plan-of'

const UNIT_HEADINGS = [
  ...['Building', 'Unit', 'Heating', 'Cooling', 'Tons of cooling', 'Burner input (Btu/h)', 'People', 'Pets'],
  ...['Heating serviced on', 'Cooling serviced on', 'Access note'],
]
const hall: Filter = {
  ...{ id: 'hall', system: 'main', place: 'wall-grille', medium: 'pleated', merv: 8 },
  nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
}
const den: Filter = {
  ...{ id: 'den', system: 'main', place: 'floor-grille', medium: 'fiberglass' },
  nominal: { widthIn: 15.5, heightIn: 24, depthIn: 1 },
}

function rowOf(change: Partial<Household>, accessNote: string | null = null): string[] {
  return sheetRows([{ household: bareHome(change), accessNote }])[1] ?? []
}

describe('a sheet of units', () => {
  test('says what is known of each home, the last time of each thing done', () => {
    const [headings, ...rows] = sheetRows([
      {
        household: bareHome({
          filters: [hall, den],
          records: [
            { on: '2026-03-01', kind: 'filter-changed', filter: 'hall' },
            { on: '2026-09-20', kind: 'filter-changed', filter: 'hall' },
            { on: '2025-11-30', kind: 'filter-changed', filter: 'hall' },
            { on: '2026-11-01', kind: 'filter-looked', filter: 'hall' },
            { on: '2024-10-01', kind: 'service-done', task: 'boiler-service', subject: 'main' },
            { on: '2025-10-02', kind: 'service-done', task: 'heating-service', subject: 'main' },
            { on: '2023-10-02', kind: 'service-done', task: 'heating-service', subject: 'main' },
            { on: '2026-10-03', kind: 'service-done', task: 'heating-service', subject: 'another' },
            { on: '2026-04-20', kind: 'service-done', task: 'cooling-service', subject: 'main' },
            { on: '2026-11-20', kind: 'service-done', task: 'condensate-look', subject: 'main' },
          ],
        }),
        accessNote: 'Key at the\n  office',
      },
      {
        household: bareHome({ name: 'Flat 2', building: undefined, filters: [], people: 0, pets: 0 }),
        accessNote: null,
      },
    ])
    const filter = (n: number) =>
      ['place', 'size (in)', 'kind', 'MERV', 'changed on'].map((what) => `Filter ${n} ${what}`)
    expect(headings).toEqual([...UNIT_HEADINGS, ...filter(1), ...filter(2)])
    expect(rows).toEqual([
      [
        ...['Larkspur Court', 'Larkspur Court 2', 'gas-furnace', 'central-ac', '3', '80000', '3', '1'],
        ...['2025-10-02', '2026-04-20', 'Key at the office'],
        ...['wall-grille', '16x25x1', 'pleated', '8', '2026-09-20'],
        ...['floor-grille', '15.5x24x1', 'fiberglass', '', ''],
      ],
      [
        ...['', 'Flat 2', 'gas-furnace', 'central-ac', '3', '80000', '0', '0', '', '', ''],
        ...Array.from({ length: 10 }, () => ''),
      ],
    ])
  })

  test('has room for one filter at least and four at most', () => {
    const filters = Array.from({ length: 6 }, (_, i) => ({ ...hall, id: `f${i}` }))
    expect(rowOf({ filters: [] })).toHaveLength(11 + 5)
    expect(rowOf({ filters: filters.slice(0, 3) })).toHaveLength(11 + 15)
    expect(rowOf({ filters })).toHaveLength(11 + 20)
    expect(sheetRows([])).toEqual([[...SHEET_COLUMNS.values()].slice(0, 16)])
  })

  test('says that nothing heats or cools, and leaves empty what nobody knows', () => {
    const idle = { id: 'main', name: 'Main', delivery: 'ducted' } as const
    expect(rowOf({ systems: [idle] }).slice(2, 6)).toEqual(['none', 'none', '', ''])
    expect(rowOf({ systems: [], filters: [] }).slice(2, 6)).toEqual(['', '', '', ''])
    // One guess each: the cells beside it stay, and so do those of another system or filter.
    const cells = (
      code: 'heat-source' | 'cool-source' | 'filter-place' | 'filter-size' | 'filter-medium',
      of: string,
    ) => {
      const row = rowOf({
        filters: [hall, { ...den, id: 'main' }],
        assumed: [
          { code: 'hard-water', subject: of },
          { code, subject: of },
        ],
      })
      return [...row.slice(2, 4), ...row.slice(11, 14), ...row.slice(16, 19)]
        .map((cell) => (cell === '' ? '-' : 'x'))
        .join('')
    }
    expect({
      heat: cells('heat-source', 'main'),
      cool: cells('cool-source', 'main'),
      place: cells('filter-place', 'hall'),
      size: cells('filter-size', 'main'),
      medium: cells('filter-medium', 'hall'),
      other: cells('heat-source', 'attic'),
    }).toEqual({
      heat: '-xxxxxxx',
      cool: 'x-xxxxxx',
      place: 'xx-xxxxx',
      size: 'xxxxxx-x',
      medium: 'xxxx-xxx',
      other: 'xxxxxxxx',
    })
  })

  test('knows which filter a column is of', () => {
    expect(filterNumber('size-2')).toBe(2)
    expect(filterNumber('changed-12')).toBe(12)
    expect(filterNumber('accessNote')).toBe(0)
  })

  test('takes a unit for the same however it is written, and not two of different names', () => {
    const key = unitKey('Larkspur Court', 'Flat 2 a')
    for (const [building, unit] of [
      ['larkspur court', 'FLAT 2 A'],
      [' Larkspur  \t Court ', 'Flat\u00A02   a\n'],
      // Full-width letters of a Japanese keyboard.
      ['Ｌａｒｋｓｐｕｒ Court', 'Flat ２ a'],
    ] as const)
      expect(unitKey(building, unit)).toBe(key)
    expect(unitKey('Larkspur Court', 'Flat 2a')).not.toBe(key)
    expect(unitKey('Larkspur', 'Court Flat 2 a')).not.toBe(key)
    // A sharp s is a letter of its own, not two.
    expect(unitKey('Straße 1', '1')).not.toBe(unitKey('Strasse 1', '1'))
  })
})
