import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { daysBetween } from '@/lib/core/day'
import { effects } from '@/lib/core/effects'
import type { Household, LogRecord, Reading, System } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const CHANGED: LogRecord = { on: '2026-09-12', kind: 'filter-changed', filter: 'hall' }
const MAIN: System = {
  id: 'main',
  name: 'Main',
  delivery: 'ducted',
  heat: { source: 'gas-furnace' },
  cool: { source: 'central-ac', tons: 3 },
  // So much air that dust fills the filter weeks before its limit.
  airflowCfm: { heat: 2400, cool: 2400 },
}
const OTHER: System = { ...MAIN, id: 'loft', name: 'Loft' }
const FURTHER = {
  id: 'den',
  system: 'loft',
  place: 'wall-grille',
  nominal: { widthIn: 16, heightIn: 25, depthIn: 1 },
  medium: 'pleated',
  merv: 8,
} as const
const READING: Reading = { system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat', heatHours: 240 }

/** Two people, no pets, bare floors, nothing measured and nobody who looked: nothing of it can be otherwise. */
function plainHome(change: Partial<Household> = {}): Household {
  const bare = bareHome({
    climate: COLD,
    people: 2,
    pets: 0,
    carpet: false,
    systems: [MAIN, OTHER],
    records: [CHANGED],
  })
  return { ...bare, filters: [FURTHER, ...bare.filters], ...change }
}

function dueOf(home: Household): string {
  const item = planHousehold(home, tables, ON).items.find((one) => one.subject === 'hall')
  return item?.due ?? ''
}

/** The one effect of a home that differs from the plain one, checked against the plan of the home without the fact. */
function onlyEffect(change: Partial<Household>, without: Partial<Household> = {}) {
  const home = plainHome(change)
  const found = effects(home, 'hall', tables, ON)
  expect(found).toHaveLength(1)
  const [effect] = found
  expect(effect?.dueWithout).toBe(dueOf({ ...home, ...without }))
  expect(effect?.days).toBe(daysBetween(dueOf({ ...home, ...without }), dueOf(home)))
  return { fact: effect?.fact, instead: effect?.instead, mark: effect?.mark, days: effect?.days ?? 0 }
}

describe('what a fact does to the day a filter is due', () => {
  test('is nothing in the reference home', () => {
    expect(effects(plainHome(), 'hall', tables, ON)).toEqual([])
  })

  test('of people and pets is the plan with two people, and with no pets', () => {
    const people = onlyEffect({ people: 5 }, { people: 2 })
    expect(people).toMatchObject({ fact: '5 people', instead: 'two people', mark: 'C' })
    expect(people.days).toBeLessThan(0)
    expect(onlyEffect({ people: 1 }, { people: 2 })).toMatchObject({ fact: '1 person' })
    expect(onlyEffect({ people: 1 }, { people: 2 }).days).toBeGreaterThan(0)
    const pets = onlyEffect({ pets: 2 }, { pets: 0 })
    expect(pets).toMatchObject({ fact: '2 pets', instead: 'no pets', mark: 'P' })
    expect(pets.days).toBeLessThan(0)
    const own = onlyEffect({ petFactor: 3 }, { petFactor: undefined })
    expect(own).toMatchObject({ fact: '0 pets', instead: 'no pets' })
    expect(own.days).toBeLessThan(0)
  })

  test('of smoking and carpet is the plan without them', () => {
    const smoking = onlyEffect({ smoking: true }, { smoking: false })
    expect(smoking).toMatchObject({ fact: 'smoking indoors', instead: 'nobody smoking indoors', mark: 'P' })
    expect(smoking.days).toBeLessThan(0)
    const carpet = onlyEffect({ carpet: true }, { carpet: false })
    expect(carpet).toMatchObject({ fact: 'mostly carpet', instead: 'mostly bare floors', mark: 'C' })
    expect(carpet.days).toBeLessThan(0)
  })

  test('of dust in the air is told by kind, each with all its days', () => {
    const smoke = { kind: 'smoke', from: '2026-10-01', to: '2026-10-20' } as const
    const again = { kind: 'smoke', from: '2026-11-01', to: '2026-11-10' } as const
    const work = { kind: 'renovation', from: '2026-10-25', to: '2026-11-05' } as const
    const home = plainHome({ dustEvents: [smoke, work, again] })
    expect(effects(home, 'hall', tables, ON)).toEqual([
      {
        ...{ fact: 'the wildfire smoke', instead: 'days without it', mark: tables.dustEvents.smoke.mark },
        ...{ dueWithout: dueOf({ ...home, dustEvents: [work] }), days: expect.any(Number) },
      },
      {
        ...{ fact: 'the building work', instead: 'days without it', mark: tables.dustEvents.renovation.mark },
        ...{ dueWithout: dueOf({ ...home, dustEvents: [smoke, again] }), days: expect.any(Number) },
      },
    ])
    expect(onlyEffect({ dustEvents: [{ ...smoke, kind: 'dust' }] }, { dustEvents: [] }).fact).toBe(
      'the dust or pollen season',
    )
  })

  test('of the fan is told of this system’s, unless it is on auto', () => {
    const fan = (mode: System['fan'], loft: System['fan'] = { mode: 'on' }) => ({
      systems: [
        { ...OTHER, fan: loft },
        { ...MAIN, fan: mode },
      ],
    })
    const on = onlyEffect(fan({ mode: 'on' }), fan({ mode: 'auto' }))
    expect(on).toMatchObject({ fact: 'the fan left on', instead: 'the fan on auto', mark: 'C' })
    expect(on.days).toBeLessThan(0)
    const some = onlyEffect(fan({ mode: 'circulate', minutesPerHour: 20 }), fan({ mode: 'auto' }))
    expect(some.fact).toBe('the fan for 20 minutes of every hour')
    expect(effects(plainHome(fan({ mode: 'auto' })), 'hall', tables, ON)).toEqual([])
  })

  test('of what was measured is told of this system’s readings alone', () => {
    const others = { ...READING, system: 'loft' }
    const measured = onlyEffect({ readings: [others, READING] }, { readings: [others] })
    expect(measured).toMatchObject({ fact: 'the measured hours', instead: 'the hours the climate suggests', mark: 'C' })
    expect(measured.days).not.toBe(0)
    expect(effects(plainHome({ readings: [others] }), 'hall', tables, ON)).toEqual([])
  })

  test('of looks is the plan of a home that never looked, its other records kept', () => {
    const service: LogRecord = { on: '2026-09-01', kind: 'service-done', task: 'heating-service', subject: 'main' }
    const looked: LogRecord = { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light: 'dark' }
    const blind: LogRecord = { on: '2026-10-20', kind: 'filter-looked', filter: 'hall' }
    const seen = onlyEffect({ records: [CHANGED, service, looked] }, { records: [CHANGED, service, blind] })
    expect(seen).toMatchObject({ fact: 'what was seen at the filters', instead: 'never having looked' })
    expect(seen.mark).toBe(tables.figures.thetaSigma.mark)
    expect(seen.days).toBeLessThan(0)
    expect(effects(plainHome({ records: [CHANGED, service, blind] }), 'hall', tables, ON)).toEqual([])
  })

  test('of the limit printed on a filter is told of that filter’s', () => {
    const printed = (hall?: number, den?: number) => {
      const [further, own] = plainHome().filters as [Household['filters'][number], Household['filters'][number]]
      return {
        filters: [
          { ...further, labelLimitDays: den },
          { ...own, labelLimitDays: hall },
        ],
      }
    }
    const limit = onlyEffect(printed(20, 30), printed(undefined, 30))
    expect(limit).toMatchObject({
      fact: 'the limit printed on the filter',
      instead: 'the usual limit of its kind',
      mark: 'P',
    })
    expect(limit.days).toBeLessThan(0)
    expect(effects(plainHome(printed(undefined, 30)), 'hall', tables, ON)).toEqual([])
  })

  test('is asked of a filter that there is, changed or washed', () => {
    expect(() => effects(plainHome(), 'attic', tables, ON)).toThrow('no filter attic in household larkspur-2')
    const filters = plainHome().filters.map((f) => ({ ...f, medium: 'washable' as const, merv: undefined }))
    expect(effects(plainHome({ filters, people: 4 }), 'hall', tables, ON)).toHaveLength(1)
  })
})
