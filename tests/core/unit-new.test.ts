import { describe, expect, test } from 'vitest'
import type { Household } from '@/lib/core/household'
import { newUnit, newUnitInWords } from '@/lib/core/unit-merge'
import type { SheetFilter, SheetUnit } from '@/lib/core/unit-sheet'
import { CLIMATE, changedOn, row, serviced, size } from '../support/a-let-home'

const PLACE = { timeZone: 'America/Chicago', units: 'us', climate: CLIMATE, elevationFt: 600 } as const

describe('a new unit', () => {
  const made = (says: Partial<SheetUnit> = {}) => newUnit(row(says), { id: 'elm-1', on: '2026-11-25', place: PLACE })

  test('of which its row says nothing is the usual home, cautiously taken, and all of that is named', () => {
    const household: Household = {
      id: 'elm-1',
      name: 'Flat 1',
      building: 'Elm Row',
      tenure: 'let',
      since: '2026-11-25',
      timeZone: 'America/Chicago',
      units: 'us',
      climate: CLIMATE,
      elevationFt: 600,
      people: 2,
      pets: 0,
      smoking: false,
      carpet: false,
      hardWater: true,
      vulnerable: true,
      assumed: [
        { code: 'hard-water', subject: '' },
        { code: 'vulnerable', subject: '' },
        { code: 'heat-source', subject: 'main' },
        { code: 'cool-source', subject: 'main' },
      ],
      dustEvents: [],
      systems: [
        {
          id: 'main',
          name: 'Main system',
          delivery: 'ducted',
          heat: { source: 'gas-furnace' },
          cool: { source: 'central-ac' },
        },
      ],
      filters: [],
      devices: [],
      records: [],
      readings: [],
    }
    expect(made()).toEqual({ household, records: [], changes: [], clashes: [] })
    expect(newUnitInWords(household)).toBe('new, without filters')
  })

  const AIR: SheetFilter[] = [{ nominal: size(20, 20, 1) }, {}]
  const HEAD: SheetFilter[] = [{ place: 'ductless-head' }, {}]
  // What the row says, how the heat gets to the rooms, what heats and cools, and which of these are guesses.
  test.each<[string, Partial<SheetUnit>, ...(string | undefined)[]]>([
    ['a heat pump cools too', { heat: 'heat-pump' }, 'ducted', 'heat-pump', 'heat-pump', 'cool-source'],
    ['and one with a furnace beside it', { heat: 'dual-fuel' }, 'ducted', 'dual-fuel', 'heat-pump', 'cool-source'],
    ['a furnace has ducts', { heat: 'oil-furnace' }, 'ducted', 'oil-furnace', 'central-ac', 'cool-source'],
    ['a boiler has radiators', { heat: 'gas-boiler' }, 'hydronic', 'gas-boiler', undefined],
    ['or ducts, if air is cooled', { heat: 'gas-boiler', cool: 'central-ac' }, 'ducted', 'gas-boiler', 'central-ac'],
    ['not if it is not', { heat: 'oil-boiler', cool: 'none' }, 'hydronic', 'oil-boiler', undefined],
    [
      'or if air is filtered',
      { heat: 'oil-boiler', filters: AIR },
      'ducted',
      'oil-boiler',
      'central-ac',
      'cool-source',
      'filter-place',
      'filter-medium',
    ],
    ['a wall furnace heats its room', { heat: 'wall-furnace' }, 'room', 'wall-furnace', undefined],
    ['and a baseboard', { heat: 'electric-baseboard', cool: 'none' }, 'room', 'electric-baseboard', undefined],
    [
      'beside ducts for the cold',
      { heat: 'electric-baseboard', cool: 'heat-pump' },
      'ducted',
      'electric-baseboard',
      'heat-pump',
    ],
    ['nothing cools where that is said', { cool: 'none' }, 'ducted', 'gas-furnace', undefined, 'heat-source'],
    ['nothing heats where that is said', { heat: 'none' }, 'ducted', undefined, 'central-ac', 'cool-source'],
    ['heads are of a heat pump', { filters: HEAD }, 'ductless', 'heat-pump', 'heat-pump'],
    [
      'which cools, whatever heats',
      { heat: 'electric-baseboard', filters: HEAD },
      'ductless',
      'electric-baseboard',
      'heat-pump',
    ],
  ])('%s', (_, says, delivery, heat, cool, ...guesses) => {
    const { household } = made(says)
    expect(household.systems).toEqual([
      {
        ...{ id: 'main', name: 'Main system', delivery },
        ...(heat && { heat: { source: heat } }),
        ...(cool && { cool: { source: cool } }),
      },
    ])
    expect(household.assumed?.map(({ code }) => code)).toEqual(['hard-water', 'vulnerable', ...guesses])
  })

  test('takes its people, its plates and what was done from the row, and is told by its filters', () => {
    const filters: SheetFilter[] = [
      { place: 'wall-grille', nominal: size(20, 25, 1), medium: 'pleated', merv: 8, changed: '2026-09-01' },
      { place: 'wall-grille', nominal: size(14, 20, 1), medium: 'fiberglass' },
      { changed: '2026-10-01' },
    ]
    const { household, records, clashes } = made({
      ...{ heat: 'gas-furnace', cool: 'central-ac', tons: 2.5, inputBtuh: 60_000, people: 5, pets: 1, filters },
      ...{ heatingServiced: '2026-10-12', coolingServiced: '2026-04-20' },
    })
    expect(clashes).toEqual([])
    expect(household).toMatchObject({ people: 5, pets: 1, records: [] })
    expect(household.systems).toMatchObject([
      { heat: { source: 'gas-furnace', inputBtuh: 60_000 }, cool: { source: 'central-ac', tons: 2.5 } },
    ])
    // Of the third nothing is known but that it was changed: the most common filter stands for it.
    expect(household.filters).toEqual([
      { id: 'wall-grille', system: 'main', ...{ ...filters[0], changed: undefined } },
      { id: 'wall-grille-2', system: 'main', ...filters[1] },
      { id: 'furnace-slot', system: 'main', place: 'furnace-slot', nominal: size(16, 25, 1), medium: 'pleated' },
    ])
    expect(household.filters.map((one) => Object.keys(one).includes('merv'))).toEqual([true, false, false])
    expect(household.assumed?.slice(2)).toEqual([
      { code: 'filter-place', subject: 'furnace-slot' },
      { code: 'filter-size', subject: 'furnace-slot' },
      { code: 'filter-medium', subject: 'furnace-slot' },
    ])
    expect(records).toEqual([
      serviced('2026-10-12', 'heating-service'),
      serviced('2026-04-20', 'cooling-service'),
      changedOn('2026-09-01', 'wall-grille'),
      changedOn('2026-10-01', 'furnace-slot'),
    ])
    expect(newUnitInWords(household)).toBe('new, 20 × 25 × 1 and 14 × 20 × 1 and 16 × 25 × 1')
  })

  test('of ductless heads has screens, whose size changes nothing, and so has a ventilator', () => {
    const heads = made({ filters: [{ place: 'ductless-head' }, { changed: '2026-10-01' }] }).household
    const screen = { system: 'main', nominal: size(12, 9, 0.5), medium: 'screen' }
    expect(heads.filters).toEqual([
      { ...screen, id: 'ductless-head', place: 'ductless-head' },
      { ...screen, id: 'ductless-head-2', place: 'ductless-head' },
    ])
    const others = made({ filters: [{ place: 'ventilator' }, { place: 'ventilator' }, { place: 'ventilator' }] })
    expect(others.household.filters.map(({ id, medium }) => `${id} ${medium}`)).toEqual([
      'ventilator screen',
      'ventilator-2 screen',
      'ventilator-3 screen',
    ])
    // Nobody has to find out which screen it is.
    for (const { assumed = [] } of [heads, others.household])
      expect(assumed.filter(({ code }) => code.startsWith('filter'))).toEqual([])
  })

  test('says what does not go together', () => {
    const clashes = (says: Partial<SheetUnit>) => made(says).clashes
    expect(clashes({ cool: 'none', tons: 3 })).toEqual([
      'has tons of cooling but no cooling: empty one, or say what cools',
    ])
    expect(clashes({ heat: 'none', inputBtuh: 60_000 })).toEqual([
      'has a burner input but no heating: empty one, or say what heats',
    ])
    expect(clashes({ cool: 'central-ac', tons: 3, heat: 'gas-boiler', inputBtuh: 60_000 })).toEqual([])
    const third = { nominal: size(20, 20, 1) }
    expect(clashes({ filters: [third, {}, third] })).toEqual(['has filter 3 but no filter 2: write it as filter 2'])
    expect(clashes({ filters: [third, third, third, {}] })).toEqual([])
  })
})
