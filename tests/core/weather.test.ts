import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays, dayNumber } from '@/lib/core/day'
import type { Household, System, WeatherSpell } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const HOT: WeatherSpell = { kind: 'hot', from: '2026-07-03', to: '2026-07-12', highF: 101, lowF: 79 }

function days(change: Partial<Household> = {}) {
  const home = bareHome({ climate: COLD, ...change })
  return systemDays(home, home.systems[0] as System, dayNumber(ON), tables, new Profiles(tables.figures))
}

describe('a heat wave', () => {
  test('cools as long as its mean temperature asks, on its days only', () => {
    const [plain, hot] = [days(), days({ weather: [HOT] })]
    // The mean is 90 °F, the base 65 °F, the design temperature 88 °F: 24·25/((88 − 65)·1.25) is 20.9 h.
    expect(hot.hoursOn(dayNumber('2026-07-03')).cool).toBeCloseTo((24 * 25) / (23 * 1.25), 9)
    for (const day of ['2026-07-02', '2026-07-13', '2025-07-05', '2027-07-05'])
      expect(hot.hoursOn(dayNumber(day))).toEqual(plain.hoursOn(dayNumber(day)))
  })

  test('counts nothing where it was measured, and changes no other time: the scale is that of what was measured', () => {
    const measured = {
      system: 'main',
      from: '2026-07-01',
      to: '2026-07-31',
      source: 'thermostat',
      coolHours: 100,
    } as const
    const [without, both] = [days({ readings: [measured] }), days({ readings: [measured], weather: [HOT] })]
    for (const day of ['2026-07-05', '2026-08-05', '2027-07-05'])
      expect(both.hoursOn(dayNumber(day))).toEqual(without.hoursOn(dayNumber(day)))
    expect(both.measured?.scales).toEqual(without.measured?.scales)
  })
})

describe('a cold spell', () => {
  const ICE: WeatherSpell = { kind: 'cold', from: '2027-01-10', to: '2027-01-12', highF: 5, lowF: -15 }

  test('heats as long as its mean temperature asks, from its first day to its last', () => {
    const [plain, cold] = [days(), days({ weather: [ICE] })]
    // The mean is −5 °F, the base 65 °F, the design temperature 2 °F: 24·0.77·70/((65 − 2)·1.7) is 12.1 h.
    for (const day of ['2027-01-10', '2027-01-11', '2027-01-12'])
      expect(cold.hoursOn(dayNumber(day)).heat).toBeCloseTo((24 * 0.77 * 70) / (63 * 1.7), 9)
    for (const day of ['2027-01-09', '2027-01-13'])
      expect(cold.hoursOn(dayNumber(day))).toEqual(plain.hoursOn(dayNumber(day)))
  })

  test('where two meet, the colder counts, in whichever order they were told', () => {
    const milder = { ...ICE, from: '2027-01-12', to: '2027-01-14', highF: 10, lowF: 0 }
    const mean = (heat: number) => (24 * 0.77 * heat) / (63 * 1.7)
    for (const weather of [
      [ICE, milder],
      [milder, ICE],
    ]) {
      const cold = days({ weather })
      expect(cold.hoursOn(dayNumber('2027-01-12')).heat).toBeCloseTo(mean(70), 9)
      expect(cold.hoursOn(dayNumber('2027-01-13')).heat).toBeCloseTo(mean(60), 9)
    }
  })

  test('no spell makes a day longer than a day', () => {
    const worst = days({ weather: [{ ...ICE, highF: -80, lowF: -80 }] })
    // 145 degree-days are 25.0 h.
    expect(worst.hoursOn(dayNumber('2027-01-11')).heat).toBe(24)
    const hottest = days({ weather: [{ ...HOT, highF: 100, lowF: 100 }] })
    // 35 degree-days are 29.2 h.
    expect(hottest.hoursOn(dayNumber('2026-07-05')).cool).toBe(24)
  })

  test('a hot spell tells nothing of heating, a cold one nothing of cooling', () => {
    const odd: WeatherSpell[] = [
      { ...ICE, kind: 'hot' },
      { ...HOT, kind: 'cold' },
    ]
    const [plain, told] = [days(), days({ weather: odd })]
    for (const day of ['2027-01-11', '2026-07-05'])
      expect(told.hoursOn(dayNumber(day))).toEqual(plain.hoursOn(dayNumber(day)))
  })

  test('a home without heating does not heat in it, one without cooling does not cool in a heat wave', () => {
    const hours = (system: System) => {
      const home = bareHome({ climate: COLD, systems: [system], weather: [ICE, HOT] })
      const found = systemDays(home, system, dayNumber(ON), tables, new Profiles(tables.figures))
      return { heat: found.hoursOn(dayNumber('2027-01-11')).heat, cool: found.hoursOn(dayNumber('2026-07-05')).cool }
    }
    const [main] = bareHome().systems as [System]
    const { heat: _heat, ...onlyCools } = main
    const { cool: _cool, ...onlyHeats } = main
    expect(hours(onlyCools)).toEqual({ heat: 0, cool: expect.closeTo(20.87, 2) })
    expect(hours(onlyHeats)).toEqual({ heat: expect.closeTo(12.08, 2), cool: 0 })
  })
})

const spell = fc
  .tuple(
    fc.constantFrom('hot' as const, 'cold' as const),
    fc.integer({ min: -200, max: 100 }),
    fc.integer({ min: 0, max: 40 }),
    fc.integer({ min: -40, max: 110 }),
    fc.integer({ min: 0, max: 30 }),
  )
  .map(([kind, at, more, lowF, swing]): WeatherSpell => {
    const from = addDays(ON, at)
    return { kind, from, to: addDays(from, more), lowF, highF: lowF + swing }
  })

test('no spell, whatever its temperature, lets a filter be due later', () => {
  fc.assert(
    fc.property(fc.array(spell, { minLength: 1, maxLength: 3 }), (weather) => {
      const home = bareHome({
        climate: COLD,
        records: [{ on: '2026-09-20', kind: 'filter-changed', filter: 'hall' }],
      })
      const dueOf = (one: Household) => {
        const item = planHousehold(one, tables, ON).items.find(({ task }) => task === 'change-filter')
        return [item?.due, item?.early, item?.late].map((day) => dayNumber(day ?? ON))
      }
      const [before, after] = [dueOf(home), dueOf({ ...home, weather })]
      for (const [i, day] of after.entries()) expect(day).toBeLessThanOrEqual(before[i] ?? 0)
    }),
    { numRuns: 60 },
  )
})
