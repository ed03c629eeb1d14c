import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { effects } from '@/lib/core/effects'
import type { Household } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import type { Profiles } from '@/lib/core/profile'
import { sharedPlanner, sharedProfiles } from '@/lib/core/shared-planner'
import { sheetOf } from '@/lib/core/sheet'
import { aHousehold } from '../support/a-household'
import { PUMP } from '../support/plan-of'

const ON = '2026-11-25'

describe('the sheet of one home', () => {
  const [hall] = aHousehold().filters
  const home = aHousehold({
    systems: [...aHousehold().systems, { ...PUMP, id: 'attic' }],
    filters: hall ? [hall, { ...hall, id: 'den', system: 'attic' }] : [],
  })

  test('holds its plan, and for each filter what each fact does to its day', () => {
    const sheet = sheetOf(home, tables, ON)
    expect(sheet).toMatchObject({ household: home, on: ON })
    expect(sheet.plan).toEqual(planHousehold(home, tables, ON))
    expect(sheet.effects.map(({ filter }) => filter)).toEqual(['hall', 'den'])
    // The furnace runs in the hall's year, the renovation dusts both.
    for (const { filter, effects: told } of sheet.effects) {
      expect(told.length).toBeGreaterThan(0)
      expect(told).toEqual(effects(home, filter, tables, ON))
    }
  })

  test('has a year for each system, and what a look would teach where the last change is known', () => {
    const sheet = sheetOf(home, tables, ON)
    expect(sheet.years.map(({ system }) => system)).toEqual(['main', 'attic'])
    expect(sheet.looks.map(([filter]) => filter)).toEqual(['hall'])
    const answers = sheet.looks[0]?.[1].answers ?? []
    expect(answers.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 9)
  })

  test('travels as it is', () => {
    const sheet = sheetOf(home, tables, ON)
    expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet)
  })
})

describe('homes planned from shared sums', () => {
  test('have the plans that each would have alone', () => {
    const plan = sharedPlanner(tables)
    const homes: Household[] = [
      aHousehold(),
      aHousehold({ id: 'b', systems: [PUMP] }),
      aHousehold({ id: 'c', pets: 3 }),
    ]
    for (const home of homes) expect(plan(home, ON)).toEqual(planHousehold(home, tables, ON))
  })

  test('share one store of sums, and every five hundredth begins a new one', () => {
    const ask = sharedProfiles(tables)
    const given = Array.from({ length: 1001 }, () => ask())
    const begun = given.flatMap((profiles, i) => (profiles === given[i - 1] ? [] : [i + 1]))
    expect(begun).toEqual([1, 500, 1000])
  })

  test('ask for their sums once a home', () => {
    const ask = sharedProfiles(tables)
    const given: Profiles[] = []
    const plan = sharedPlanner(tables, () => {
      given.push(ask())
      return given.at(-1) as Profiles
    })
    for (const id of ['a', 'b', 'c']) plan(aHousehold({ id }), ON)
    expect(given).toHaveLength(3)
    expect(new Set([...given, ask()]).size).toBe(1)
  })
})
