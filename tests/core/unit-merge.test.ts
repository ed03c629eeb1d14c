import { describe, expect, test } from 'vitest'
import type { Household, LogRecord } from '@/lib/core/household'
import { mergeUnit } from '@/lib/core/unit-merge'
import type { SheetUnit } from '@/lib/core/unit-sheet'
import {
  attic,
  type Case,
  changedOn,
  doubtful,
  expectCase,
  home,
  main,
  row,
  serviced,
  size,
  system,
  two,
} from '../support/a-let-home'

describe('a row about a home that stands', () => {
  test.each<[string, Case]>([
    ['changes nothing where it is empty', { says: {} }],
    [
      'changes nothing where it says what stands',
      {
        says: {
          ...{ heat: 'gas-furnace', cool: 'central-ac', tons: 3, inputBtuh: 80_000, people: 3, pets: 1 },
          filters: two({ place: 'wall-grille', nominal: size(16, 25, 1), medium: 'pleated', merv: 8 }),
          heatingServiced: '2026-10-01',
        },
      },
    ],
    [
      'counts who lives there, none too',
      {
        says: { people: 4, pets: 0 },
        becomes: { people: 4, pets: 0 },
        changes: ['people 4 instead of 3', 'pets 0 instead of 1'],
      },
    ],
    [
      'brings another burner, of which the old plate says nothing',
      {
        says: { heat: 'propane-furnace' },
        becomes: system({ heat: { source: 'propane-furnace' } }),
        changes: ['heating propane-furnace instead of gas-furnace'],
      },
    ],
    [
      'brings other cooling, of which the old plate says nothing',
      {
        says: { cool: 'heat-pump' },
        becomes: system({ cool: { source: 'heat-pump' } }),
        changes: ['cooling heat-pump instead of central-ac'],
      },
    ],
    [
      'says that nothing heats or cools',
      {
        says: { heat: 'none', cool: 'none' },
        becomes: { systems: [{ id: 'main', name: 'Main system', delivery: 'ducted' }, attic] },
        changes: ['heating none instead of gas-furnace', 'cooling none instead of central-ac'],
      },
    ],
    [
      'reads the plates again',
      {
        says: { tons: 2, inputBtuh: 60_000 },
        becomes: system({
          heat: { ...main.heat, inputBtuh: 60_000 } as never,
          cool: { source: 'central-ac', tons: 2 },
        }),
        changes: ['tons of cooling 2 instead of 3', 'burner input 60000 instead of 80000'],
      },
    ],
    [
      'brings what there was none of',
      {
        of: { systems: [{ id: 'main', name: 'Main system', delivery: 'ducted' }, attic] },
        says: { heat: 'gas-furnace', inputBtuh: 60_000, cool: 'central-ac', tons: 2 },
        becomes: system({
          heat: { source: 'gas-furnace', inputBtuh: 60_000 },
          cool: { source: 'central-ac', tons: 2 },
        }),
        changes: [
          'heating gas-furnace instead of none',
          'cooling central-ac instead of none',
          'tons of cooling 2',
          'burner input 60000',
        ],
      },
    ],
    [
      'takes away the doubt from what it says, also where the guess was right',
      {
        of: {
          assumed: [...doubtful, { code: 'filter-place', subject: 'den' }, { code: 'filter-size', subject: 'hall' }],
        },
        says: { heat: 'gas-furnace', cool: 'heat-pump', filters: two({}, { place: 'ceiling-grille' }) },
        becomes: { ...system({ cool: { source: 'heat-pump' } }), assumed: [{ code: 'filter-size', subject: 'hall' }] },
        // What was only guessed is nothing that could be replaced.
        changes: ['heating gas-furnace', 'cooling heat-pump', 'filter 2 place ceiling-grille'],
      },
    ],
    [
      'leaves no doubt where all of it is said',
      {
        of: { assumed: doubtful },
        says: { heat: 'gas-furnace', cool: 'central-ac' },
        becomes: { assumed: undefined },
        changes: ['heating gas-furnace', 'cooling central-ac'],
      },
    ],
    [
      'records what the log has of another day, filter or task',
      {
        says: {
          ...{ heatingServiced: '2026-10-02', coolingServiced: '2026-10-01' },
          filters: two({ changed: '2026-09-21' }, { changed: '2026-09-20' }),
        },
        records: [
          serviced('2026-10-02', 'heating-service'),
          serviced('2026-10-01', 'cooling-service'),
          changedOn('2026-09-21', 'hall'),
          changedOn('2026-09-20', 'den'),
        ],
        changes: [
          'heating service 2026-10-02',
          'cooling service 2026-10-01',
          'filter changed 2026-09-21',
          'filter changed 2026-09-20',
        ],
      },
    ],
    [
      'records a service of this system where another’s is in the log',
      {
        of: { records: [{ ...serviced('2026-10-01', 'heating-service'), subject: 'attic' } as LogRecord] },
        says: { heatingServiced: '2026-10-01' },
        records: [serviced('2026-10-01', 'heating-service')],
        changes: ['heating service 2026-10-01'],
      },
    ],
    [
      'does not serve a boiler twice that was a furnace in the log',
      {
        says: { heat: 'gas-boiler', heatingServiced: '2026-10-01' },
        becomes: system({ heat: { source: 'gas-boiler' } }),
        changes: ['heating gas-boiler instead of gas-furnace'],
      },
    ],
    [
      'has a boiler served as one',
      {
        of: system({ heat: { source: 'oil-boiler' } }),
        says: { heatingServiced: '2026-11-01' },
        records: [serviced('2026-11-01', 'boiler-service')],
        changes: ['boiler service 2026-11-01'],
      },
    ],
    [
      'clashes with a plate of what is not there',
      {
        of: system({ heat: undefined, cool: undefined }),
        says: { tons: 3, inputBtuh: 60_000 },
        clashes: [
          'has tons of cooling but no cooling: empty one, or say what cools',
          'has a burner input but no heating: empty one, or say what heats',
        ],
      },
    ],
  ])('%s', (_, one) => expectCase(one))

  test('leaves no list of doubts where there is none', () => {
    const sure = { ...home, assumed: doubtful }
    expect(mergeUnit(sure, row({ heat: 'gas-furnace', cool: 'central-ac' })).household).not.toHaveProperty('assumed')
    const { assumed: _, ...never } = home
    expect(mergeUnit(never, row({ heat: 'heat-pump' }))).toMatchObject({
      changes: ['heating heat-pump instead of gas-furnace'],
    })
    expect(mergeUnit(never, row({ people: 1 })).household).not.toHaveProperty('assumed')
  })

  describe('of which no system is known', () => {
    const { assumed: _, ...sure } = home
    const bare: Household = { ...sure, systems: [], filters: [], records: [] }

    test('makes none as long as it says nothing that needs one', () => {
      expect(mergeUnit(bare, row({ people: 1 }))).toEqual({
        ...{ household: { ...bare, people: 1 }, records: [], changes: ['people 1 instead of 3'], clashes: [] },
      })
    })

    test.each<[Partial<SheetUnit>, string[], string[]]>([
      [{ heat: 'gas-furnace' }, ['heating gas-furnace instead of none'], ['cool-source']],
      [{ cool: 'central-ac' }, ['cooling central-ac instead of none'], ['heat-source']],
      [{ tons: 3 }, ['tons of cooling 3'], ['heat-source', 'cool-source']],
      [{ inputBtuh: 60_000 }, ['burner input 60000'], ['heat-source', 'cool-source']],
      [{ heatingServiced: '2026-10-01' }, ['heating service 2026-10-01'], ['heat-source', 'cool-source']],
      [{ coolingServiced: '2026-05-01' }, ['cooling service 2026-05-01'], ['heat-source', 'cool-source']],
      [
        { filters: two({ place: 'wall-grille', nominal: size(20, 20, 1), medium: 'pleated' }) },
        ['filter 1 20x20x1'],
        ['heat-source', 'cool-source'],
      ],
    ])('makes one of %j, and names what it takes for granted', (says, changes, guesses) => {
      const merged = mergeUnit(bare, row(says))
      expect(merged).toMatchObject({ changes, clashes: [] })
      expect(merged.household.assumed).toEqual(guesses.map((code) => ({ code, subject: 'main' })))
      expect(merged.household.systems).toMatchObject([{ id: 'main', name: 'Main system', delivery: 'ducted' }])
    })
  })
})
