import fc from 'fast-check'
import { expect, test } from 'vitest'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { addDays, dayNumber } from '@/lib/core/day'
import { looksWorth, systemStory } from '@/lib/core/home-story'
import type { Filter, Household } from '@/lib/core/household'
import type { MonthHours } from '@/lib/core/month-hours'
import { planHousehold } from '@/lib/core/plan'
import { worthInWords } from '@/lib/core/worth-words'
import { aHousehold } from '../support/a-household'
import { anyCase } from '../support/any-household'

function storyOf(home: Household, on = '2026-11-25') {
  const story = systemStory(home, home.systems[0]?.id ?? '', tables, on)
  if (!story) throw new Error('no system')
  return story
}

const sum = (months: MonthHours[], of: (month: MonthHours) => number) => months.reduce((total, m) => total + of(m), 0)

test('the last stay and the last belief are what the plan says, for any home', () => {
  let compared = 0
  fc.assert(
    fc.property(anyCase, ({ home, on }) => {
      const plan = planHousehold(home, tables, on)
      for (const { id } of home.systems) {
        const story = systemStory(home, id, tables, on)
        for (const { filter, stays } of story?.filters ?? []) {
          const workings = plan.workings.find((each) => each.filter === filter)
          const theta = story?.steps?.at(-1)?.theta
          if (workings?.theta) expect((theta?.q50 ?? 0) / workings.theta.q50).toBeCloseTo(1, 9)
          const current = stays.find(({ to }) => to === null)
          for (const [i, stay] of stays.entries()) {
            expect(stay.to ?? dayNumber(on)).toBeGreaterThanOrEqual(stay.from)
            const next = stays[i + 1]
            if (next) expect(stay.to).toBe(next.from)
            for (const [k, point] of stay.points.entries()) {
              expect(point.high).toBeGreaterThanOrEqual(point.middle)
              expect(point.middle).toBeGreaterThanOrEqual(point.low)
              expect(point.middle).toBeGreaterThanOrEqual((stay.points[k - 1]?.middle ?? 0) - 1e-9)
            }
          }
          if (current && workings?.loadedFraction) compared++
        }
      }
    }),
    { numRuns: 60 },
  )
  expect(compared).toBeGreaterThan(10)
})

test('without a look the early and late days of a look’s worth are those of the plan', () => {
  const home = aHousehold({
    since: '2026-09-01',
    dustEvents: [],
    readings: [],
    records: [{ on: '2026-11-05', kind: 'filter-changed', filter: 'hall' }],
  })
  const item = planHousehold(home, tables, '2026-11-25').items.find(({ task }) => task === 'change-filter')
  const now = looksWorth(home, tables, '2026-11-25').get('hall')?.now
  expect(now).toMatchObject({
    early: dayNumber(item?.early ?? ''),
    due: dayNumber(item?.due ?? ''),
    late: dayNumber(item?.late ?? ''),
  })
})

test('a look on a day to come is judged by what the filter will hold then', () => {
  const home = aHousehold({
    since: '2026-09-01',
    dustEvents: [],
    readings: [],
    records: [{ on: '2026-11-22', kind: 'filter-changed', filter: 'hall' }],
  })
  const { items } = planHousehold(home, tables, '2026-11-25')
  const today = looksWorth(home, tables, '2026-11-25').get('hall')
  const then = looksWorth(home, tables, '2026-11-25', items).get('hall')
  const gain = (worth: typeof today) => (worth ? worth.rangeDays - worth.rangeAfterDays : 0)
  expect(gain(then)).toBeGreaterThan(gain(today))
  expect(worthInWords(then ?? null, 'then')).toMatch(/^(Worth it|Not needed): a look then would narrow the \d+ days/)
})

test('each filter’s look is judged on its own look day, and one that has no look day to come on the day of the plan', () => {
  const hall = aHousehold().filters[0] as Filter
  const home = aHousehold({
    since: '2026-09-01',
    dustEvents: [],
    readings: [],
    filters: [hall, { ...hall, id: 'den' }],
    records: ['hall', 'den'].map((filter) => ({ on: '2026-11-10', kind: 'filter-changed', filter })),
  })
  const on = '2026-11-25'
  const today = looksWorth(home, tables, on)
  const items = [
    { subject: 'hall' },
    { subject: 'den', lookOn: '2026-12-20' },
    { subject: 'hall', lookOn: '2026-12-05' },
    { subject: 'hall', lookOn: '2026-12-31' },
  ]
  const then = looksWorth(home, tables, on, items)
  const at = (day: string, id: string) => looksWorth(home, tables, on, [{ subject: id, lookOn: day }]).get(id)
  expect(then.get('hall')).toEqual(at('2026-12-05', 'hall'))
  expect(then.get('den')).toEqual(at('2026-12-20', 'den'))
  expect(then.get('hall')).not.toEqual(today.get('hall'))
  expect(then.get('den')).not.toEqual(at('2026-12-05', 'den'))
  expect(looksWorth(home, tables, on, [{ subject: 'hall', lookOn: '2026-11-12' }]).get('hall')).toEqual(
    today.get('hall'),
  )
})

test('how the dust was learned is told as soon as one filter of a system has a model, and of screens alone never', () => {
  const hall = aHousehold().filters[0] as Filter
  const screen: Filter = { ...hall, id: 'head', place: 'ductless-head', medium: 'screen' }
  expect(storyOf(aHousehold({ filters: [screen, hall], records: [] })).steps).toHaveLength(1)
  expect(storyOf(aHousehold({ filters: [screen], records: [] })).steps).toBeNull()
})

test('a year of months is a year of the model, and a measured month is what was read', () => {
  const home = aHousehold({
    readings: [
      { system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat', heatHours: 61.5, coolHours: 2 },
      { system: 'main', from: '2026-11-01', to: '2026-11-10', source: 'hour-meter', heatHours: 30 },
    ],
  })
  const { months } = storyOf(home)
  expect(months).toHaveLength(12)
  expect(months[0]?.month).toBe('2025-12-01')
  const october = months.find(({ month }) => month === '2026-10-01')
  expect(october?.heat.measured).toBeCloseTo(61.5, 9)
  expect(october?.cool.measured).toBeCloseTo(2, 9)
  expect(october?.heat).toMatchObject({ measuredDays: 31, reckoned: 0 })
  const november = months.at(-1)
  expect(november).toMatchObject({ days: 25, heat: { measuredDays: 10 }, cool: { measuredDays: 0, measured: 0 } })
  expect(november?.heat.measured).toBeCloseTo(30, 9)
  expect(november?.heat.modelledOnMeasured).toBeLessThan(november?.heat.modelled ?? 0)
  // Reckoned hours elsewhere lie between the model and what was measured against it.
  const december = months[0] as MonthHours
  const ratio = december.heat.reckoned / december.heat.modelled
  expect(ratio).not.toBeCloseTo(1, 2)
  const bare = storyOf({ ...home, readings: [] })
  const year = sum(storyOf({ ...home, readings: [] }, '2026-12-31').months, (m) => m.heat.reckoned)
  const plan = planHousehold({ ...home, readings: [] }, tables, '2026-12-31').workings[0]
  expect(year).toBeCloseTo(plan?.heatHours ?? 0, 6)
  expect(bare.months.every(({ heat }) => heat.measuredDays === 0)).toBe(true)
})

test('something measured before the last year opens a second one', () => {
  const reading = { system: 'main', from: '2025-06-01', to: '2025-06-30', source: 'thermostat', coolHours: 40 } as const
  const { months } = storyOf(aHousehold({ readings: [reading] }))
  expect(months).toHaveLength(24)
  expect(sum(months, (m) => m.cool.measured)).toBeCloseTo(40, 9)
})

test('a dark look narrows the curve towards dust, step by step, with the light that was seen', () => {
  const records: Household['records'] = [
    { on: '2026-06-01', kind: 'filter-changed', filter: 'hall' },
    { on: '2026-07-01', kind: 'filter-looked', filter: 'hall', light: 'half' },
    { on: '2026-07-20', kind: 'filter-changed', filter: 'hall', light: 'dark' },
    { on: '2026-07-21', kind: 'filter-looked', filter: 'hall', light: 'clear' },
  ]
  const { steps, filters } = storyOf(aHousehold({ records, readings: [], dustEvents: [] }))
  expect(steps?.map(({ look }) => look?.light ?? null)).toEqual([null, 'half', 'dark', 'clear'].slice(0, steps?.length))
  const width = (i: number) => Math.log((steps?.[i]?.theta.q90 ?? 0) / (steps?.[i]?.theta.q10 ?? 1))
  expect(width(2)).toBeLessThan(width(0))
  expect(filters[0]?.stays.map(({ lightAtRemoval }) => lightAtRemoval)).toEqual(['dark', undefined])
  expect(filters[0]?.stays[0]?.looks.map(({ light }) => light)).toEqual(['half', 'dark'])
})

test('where nothing is known, nothing is told and nothing would be learned', () => {
  const never = storyOf(aHousehold({ records: [], readings: [] }))
  expect(never.filters[0]).toMatchObject({ stays: [], worth: null })
  expect(worthInWords(null)).toContain('teach nothing yet')
  const fresh = aHousehold({ records: [{ on: '2026-11-25', kind: 'filter-changed', filter: 'hall' }], readings: [] })
  expect(looksWorth(fresh, tables, '2026-11-25').get('hall')).toBeUndefined()
  for (const home of sampleFile(SAMPLE_DAY).households)
    for (const { id } of home.systems) expect(systemStory(home, id, tables, addDays(SAMPLE_DAY, 40))).not.toBeNull()
  expect(systemStory(aHousehold(), 'no such', tables, '2026-11-25')).toBeNull()
})
