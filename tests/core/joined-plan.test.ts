import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Household } from '@/lib/core/household'
import { joinPlans, type PlannedHome, plannedHome } from '@/lib/core/joined-plan'
import { plan } from '@/lib/core/plan'
import { planJson } from '@/lib/core/plan-json'
import { Profiles } from '@/lib/core/profile'
import { anyCase } from '../support/any-household'
import { fortyUnits } from '../support/many-units'

const profiles = new Profiles(tables.figures)

test('homes planned one by one and joined are the plan of them all', () => {
  fc.assert(
    fc.property(fc.array(anyCase, { minLength: 1, maxLength: 4 }), (cases) => {
      const on = cases[0]?.on ?? ''
      const homes = cases.map(({ home }, i) => ({
        ...home,
        ...{ id: `home-${i}`, name: `Home ${i}`, since: home.since, tenure: 'let' as const, building: `B ${i % 2}` },
        records: home.records.filter((record) => record.on <= on),
      }))
      const parts = homes.map((home) => plannedHome(home, tables, on, profiles))
      expect(joinPlans(parts, tables.figures, 'none')).toEqual(plan(homes, tables, on))
    }),
    { numRuns: 40 },
  )
  const units = fortyUnits()
  const parts = units.map((home) => plannedHome(home, tables, '2026-11-25', profiles))
  const joined = joinPlans(parts, tables.figures, 'none')
  expect(joined).toEqual(plan(units, tables, '2026-11-25'))
  // A second joining of the same parts counts nothing twice.
  expect(joinPlans(parts, tables.figures, 'none')).toEqual(joined)
})

test('three homes joined: one order by size, one visit where they share a building, and the day of the first', () => {
  const [one, two, three] = fortyUnits() as [Household, Household, Household]
  const building = one.building as string
  const { building: _, ...alone } = three
  const homes = [{ ...two, building }, one, { ...alone, tenure: 'own' as const }]
  const parts = homes.map((home) => plannedHome(home, tables, '2026-11-25', profiles))
  expect(parts.map(({ home }) => home)).toStrictEqual([
    { id: two.id, name: two.name, building, tenure: 'let' },
    { id: one.id, name: one.name, building, tenure: 'let' },
    { id: three.id, name: three.name, tenure: 'own' },
  ])
  const joined = joinPlans(parts, tables.figures, '2020-01-01')
  expect(joined).toEqual(plan(homes, tables, '2026-11-25'))
  expect(joined.on).toBe('2026-11-25')
  // One of them has a size of its own beside the common one, the others share theirs.
  expect(joined.supplies.map(({ size }) => size)).toEqual(['15.5x24.5x1', '16x25x1', '20x20x1'])
  const count = (size: string) => (each: PlannedHome) => each.supplies.find((kind) => kind.size === size)?.count ?? 0
  for (const { size, count: all } of joined.supplies)
    expect(all).toBe(parts.map(count(size)).reduce((sum, each) => sum + each, 0))
  const shared = joined.rounds.filter(({ items }) => new Set(items.map(({ household }) => household)).size > 1)
  expect(new Set(shared.flatMap(({ items }) => items.map(({ household }) => household)))).toEqual(
    new Set([one.id, two.id]),
  )
  // Joined again, the same parts count nothing twice.
  expect(joinPlans(parts, tables.figures, '2020-01-01')).toEqual(joined)
})

test('no homes are a plan of the day that is asked for, with nothing in it', () => {
  expect(joinPlans([], tables.figures, '2026-11-25')).toEqual({
    on: '2026-11-25',
    households: [],
    supplies: [],
    rounds: [],
  })
})

test('written in pieces it is what JSON.stringify writes', () => {
  for (const homes of [[], fortyUnits().slice(0, 1), fortyUnits().slice(0, 3)]) {
    const made = { ...plan(homes, tables, '2026-11-25'), on: '2026-11-25' }
    expect([...planJson(made)].join('')).toBe(`${JSON.stringify(made, null, 2)}\n`)
  }
})
