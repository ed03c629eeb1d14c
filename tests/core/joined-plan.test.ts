import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { joinPlans, plannedHome } from '@/lib/core/joined-plan'
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

test('written in pieces it is what JSON.stringify writes', () => {
  for (const homes of [[], fortyUnits().slice(0, 1), fortyUnits().slice(0, 3)]) {
    const made = { ...plan(homes, tables, '2026-11-25'), on: '2026-11-25' }
    expect([...planJson(made)].join('')).toBe(`${JSON.stringify(made, null, 2)}\n`)
  }
})
