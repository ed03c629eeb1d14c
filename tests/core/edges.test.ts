import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { FIRST_DAY, LAST_DAY } from '@/lib/core/day'
import { systemStory } from '@/lib/core/home-story'
import type { Household } from '@/lib/core/household'
import { plan, planHousehold } from '@/lib/core/plan'
import { planJson } from '@/lib/core/plan-json'
import { pooledHomes } from '@/lib/core/pooled-homes'
import { sheetOf } from '@/lib/core/sheet'
import { systemYears } from '@/lib/core/year'
import { parseHouseholdFile } from '@/lib/forms/household-file'
import { planSchema } from '@/lib/forms/plan-schema'
import { aHousehold } from '../support/a-household'
import { anyPlanDay, edgeHousehold } from '../support/edge-household'

const SLOW = { timeout: 60_000 }

/** A home as the reader of files gives it. Read on the last day of all: a clock that was ahead took days still to come. */
function accepted(home: Household): Household {
  const read = parseHouseholdFile(JSON.stringify({ plenum: 1, households: [home] }), LAST_DAY)
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.households[0] as Household
}

const SERVICES = ['heating-service', 'cooling-service', 'outdoor-unit-clear', 'condensate-look'] as const
const ALARMS = (made: string): Household['devices'] => [
  { id: 'smoke', kind: 'smoke-alarm', made },
  { id: 'co', kind: 'co-alarm', made },
  { id: 'end', kind: 'co-alarm', endOfLife: made },
  { id: 'erv', kind: 'erv' },
]

test.each([FIRST_DAY, LAST_DAY])('what was made, described, fitted, serviced or dusty on %s has its days', (day) => {
  const home = aHousehold({
    since: day,
    devices: ALARMS(day),
    records: SERVICES.map((task) => ({ on: day, kind: 'service-done', task, subject: 'main' })),
    filters: aHousehold().filters.map((filter) => ({ ...filter, labelLimitDays: 3650 })),
    dustEvents: [{ kind: 'smoke', from: day, to: day }],
    weather: [{ kind: 'cold', from: FIRST_DAY, to: LAST_DAY, highF: 10, lowF: -10 }],
    readings: [],
  })
  const old = accepted({ ...home, records: [...home.records, { on: day, kind: 'filter-changed', filter: 'hall' }] })
  const fresh = accepted({ ...home, records: [] })
  for (const on of ['1990-01-01', '2026-11-25', LAST_DAY]) {
    for (const one of [old, fresh]) planSchema.parse(JSON.parse([...planJson(plan([one], tables, on))].join('')))
  }
  const dueOf = (of: Household, id: string) =>
    planHousehold(of, tables, '2026-11-25').items.find((item) => item.subject === id && item.task !== 'alarm-test')?.due
  expect([dueOf(fresh, 'smoke'), dueOf(fresh, 'end'), dueOf(fresh, 'hall')]).toEqual([
    `${Number(day.slice(0, 4)) + 10}${day.slice(4)}`,
    day,
    day,
  ])
})

test(
  'whatever days a file names, at the edges too, a home has a plan, years, stories and a sheet on any day',
  SLOW,
  () => {
    fc.assert(
      fc.property(edgeHousehold, anyPlanDay, (home, on) => {
        const household = accepted(home)
        const made = plan([household], tables, on)
        planSchema.parse(JSON.parse([...planJson(made)].join('')))
        expect(systemYears(household, tables, on)).toHaveLength(household.systems.length)
        for (const { id } of household.systems) expect(systemStory(household, id, tables, on)?.system.id).toBe(id)
        expect(sheetOf(household, tables, on)).toBeDefined()
        expect(pooledHomes([household], tables, on)).toHaveLength(1)
      }),
      { seed: 20, numRuns: 60, endOnFailure: true },
    )
  },
)
