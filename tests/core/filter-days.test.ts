import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber, dayText } from '@/lib/core/day'
import { asFitted, forecastFilter, nextDue, systemLooks } from '@/lib/core/filter'
import type { FilterHistory } from '@/lib/core/history'
import type { Filter, Household, Light, System } from '@/lib/core/household'
import { Profiles } from '@/lib/core/profile'
import { type SystemDays, systemDays } from '@/lib/core/system-days'
import { bareHome, COLD, EVEN, HALL } from '../support/plan-of'

const { figures } = tables
const ON = dayNumber('2026-11-25')
const THETA = { q10: 0.5, q50: 1, q90: 2 }
const DEN: Filter = { ...HALL, id: 'den', nominal: { widthIn: 20, heightIn: 20, depthIn: 1 } }

function daysOf(filters: Filter[] = [HALL], home: Partial<Household> = {}, system = EVEN) {
  const whole = bareHome({ climate: COLD, systems: [system], filters, ...home })
  return systemDays(whole, system, ON, tables, new Profiles(figures))
}

/** The hall's filter as long as no limit ends it, and how many days fill it at θ = 1. */
function hall(change: Partial<Filter> = {}) {
  const days = daysOf([{ ...HALL, labelLimitDays: 900, ...change }])
  const f = days.path.filters[0] as (typeof days.path.filters)[number]
  const grams = days.gramsThrough(f)
  return { days, f, grams, daysToFill: (f.loading?.capacityGrams ?? 0) / (grams(ON + 1) - grams(ON)) }
}

describe('the next day a filter is due', () => {
  test('comes after as many days as its dust needs, in half of them where there is twice the dust', () => {
    const { days, f, daysToFill } = hall()
    expect(daysToFill).toBeGreaterThan(20)
    for (const q50 of [0.5, 1, 2])
      expect(nextDue(f, days, { ...THETA, q50 }, ON)).toBe(ON + Math.ceil(daysToFill / q50 - 1e-9))
  })

  test('is the limit where it would be full on that day or the day after, and the day before where it fills then', () => {
    const { daysToFill } = hall()
    const dueAfter = (fillsOnDay: number) => {
      const { days, f } = hall({ labelLimitDays: 60 })
      // Full in the middle of that day's dust.
      return nextDue(f, days, { ...THETA, q50: daysToFill / (fillsOnDay - 0.5) }, ON) - ON
    }
    expect([58, 59, 60, 61, 62].map(dueAfter)).toEqual([58, 59, 60, 60, 60])
  })

  test('of a filter without a loading model is its limit', () => {
    const { days, f } = hall({ medium: 'screen', labelLimitDays: undefined })
    expect(nextDue(f, days, THETA, ON)).toBe(ON + 30)
  })
})

describe('the look at a filter', () => {
  const lookOn = (home: Partial<Household>, system: System, changedOn: string) => {
    const days = daysOf(
      [{ ...HALL, labelLimitDays: 300, nominal: { widthIn: 30, heightIn: 30, depthIn: 5 } }],
      home,
      system,
    )
    const f = days.path.filters[0] as (typeof days.path.filters)[number]
    const history: FilterHistory = { changes: [{ on: dayNumber(changedOn) }], looks: [] }
    const grams = days.gramsThrough(f)
    // So little dust that only the use of the blower or the limit asks for a look.
    const theta = { q10: 0.001, q50: 0.001, q90: 0.001 }
    const found = forecastFilter({ f, days, grams, theta, history, since: ON }, figures)
    return { look: dayText(found.lookOn), due: dayText(found.due) }
  }
  const COOLS: System = { id: 'main', name: 'Main', delivery: 'ducted', cool: { source: 'central-ac', tons: 3 } }

  test('comes with the first month of four blower hours a day that was measured, on the day its mean gets there', () => {
    // Cooling alone: nothing runs in autumn but what was measured. 30 days of 6 h are 180 h; 120 h are needed.
    const from = '2026-10-10'
    const reading = {
      system: 'main',
      from,
      to: '2026-11-08',
      source: 'thermostat',
      coolHours: 0,
      fanHours: 180,
    } as const
    expect(lookOn({ readings: [reading] }, COOLS, '2026-09-20').look).toBe('2026-10-29')
    // The month after it still has the measured days in its mean: 5 h · 24 days on 14 November and before.
    const few = { ...reading, from: '2026-11-01', to: '2026-11-24', fanHours: 24 * 5 }
    expect(lookOn({ readings: [few] }, COOLS, '2026-10-30').look).toBe('2026-11-29')
  })

  test('without heavy use is asked for when it is due', () => {
    const idle: System = { id: 'main', name: 'Main', delivery: 'ducted' }
    const { look, due } = lookOn({}, idle, '2026-09-20')
    expect(look).toBe(due)
  })
})

describe('the dust that reaches a filter', () => {
  const COOLS: System = { id: 'main', name: 'Main', delivery: 'ducted', cool: { source: 'central-ac', tons: 3 } }
  const [first, last] = [dayNumber('2026-10-25'), dayNumber('2026-11-23')]
  const reading = { system: 'main', source: 'thermostat', coolHours: 0 } as const
  const daily = (days: SystemDays) => {
    const grams = days.gramsThrough(days.path.filters[0] as (typeof days.path.filters)[number])
    return (day: number) => grams(day) - grams(day - 1)
  }

  test('on measured days is that of their hours, from the first to the last, and of no other', () => {
    // Next to nothing is cooled in a cold autumn: the blower ran on the thirty days, six hours on each.
    const span = { ...reading, from: dayText(first), to: dayText(last), fanHours: 180 }
    const [caught, usual] = [daily(daysOf([HALL], { readings: [span] }, COOLS)), daily(daysOf([HALL], {}, COOLS))]
    const each = caught(first)
    expect(each).toBeGreaterThan(20 * usual(first))
    for (let day = first; day <= last; day++) expect(caught(day)).toBeCloseTo(each, 9)
    for (const day of [first - 1, last + 1, last + 40]) expect(caught(day)).toBeCloseTo(usual(day), 9)
  })

  test('is more on the days of a dusty time, its first and its last included', () => {
    const dusty = { kind: 'renovation', from: dayText(first), to: dayText(last) } as const
    const [caught, usual] = [daily(daysOf([HALL], { dustEvents: [dusty] })), daily(daysOf())]
    const more = caught(first) / usual(first)
    expect(more).toBeGreaterThan(1)
    for (const day of [first + 1, last]) expect(caught(day) / usual(day)).toBeCloseTo(more, 6)
    for (const day of [first - 1, last + 1]) expect(caught(day)).toBeCloseTo(usual(day), 9)
  })
})

describe('the looks that tell of a system’s dust', () => {
  const CHANGED = ON - 900
  const seen = (looks: { on: number; light?: Light }[], changes: FilterHistory['changes'] = [{ on: CHANGED }]) =>
    systemLooks(daysOf(), () => ({ changes, looks }), ON, tables)

  test('are those of the last 730 days, the first and the day of the plan being two of them', () => {
    const on = [ON - 731, ON - 730, ON, ON + 1]
    expect(seen(on.map((day) => ({ on: day, light: 'half' as const }))).map((look) => look.on)).toEqual([ON - 730, ON])
  })

  test('are none without the light, without a change before them, and of a filter without a loading model', () => {
    expect(seen([])).toEqual([])
    expect(seen([{ on: ON - 5 }])).toEqual([])
    expect(seen([{ on: ON - 5, light: 'dark' }], [{ on: ON - 5 }])).toEqual([])
    const screens = daysOf([{ ...HALL, medium: 'screen' }])
    const looks = [{ on: ON - 5, light: 'dark' as const }]
    expect(systemLooks(screens, () => ({ changes: [{ on: ON - 50 }], looks }), ON, tables)).toEqual([])
  })

  test('tell the share of the filter that the dust since the change would fill', () => {
    const { daysToFill } = hall()
    const changes = [{ on: ON - 40 }, { on: ON - 20 }]
    const looks = [{ on: ON - 10, light: 'clear' as const }]
    expect(seen(looks, changes)).toEqual([
      { filter: 'hall', on: ON - 10, light: 'clear', expected: expect.closeTo(10 / daysToFill, 9) },
    ])
  })
})

describe('what a change fitted', () => {
  test('is reckoned in that filter only, with the rating that was fitted', () => {
    const days = daysOf([DEN, HALL])
    const [den, hallNow] = days.path.filters as [(typeof days.path.filters)[number], (typeof days.path.filters)[number]]
    const { f } = asFitted(hallNow, days, { medium: 'pleated', merv: 13 }, tables)
    expect(f.filter).toMatchObject({ id: 'hall', merv: 13, nominal: HALL.nominal })
    expect(f.loading?.arrestance).toBe(0.97)
    // The other filter stays what it is, and takes its part of the air: 800 of 1200 square inches.
    const beside = daysOf([{ ...DEN, nominal: { ...DEN.nominal, heightIn: 40 } }, HALL])
    const [, hallBeside] = beside.path.filters as [typeof den, typeof den]
    expect(asFitted(hallBeside, beside, { medium: 'pleated', merv: 13 }, tables).f.share).toBeCloseTo(400 / 1200, 12)
    // A rating that was not said is MERV 8, whatever is in place now.
    const better = daysOf([DEN, { ...HALL, merv: 13 }])
    const [, fine] = better.path.filters as [typeof den, typeof den]
    expect(asFitted(fine, better, { medium: 'pleated' }, tables).f.loading?.arrestance).toBe(0.85)
  })

  test('where nothing was said, is what is in place', () => {
    const days = daysOf()
    const f = days.path.filters[0] as (typeof days.path.filters)[number]
    expect(asFitted(f, days, undefined, tables).f).toBe(f)
  })
})
