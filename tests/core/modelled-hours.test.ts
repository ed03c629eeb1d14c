import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { modelledHours, usualMeanF } from '@/lib/core/modelled-hours'
import { bareHome, COLD } from '../support/plan-of'

const AT = { tables, on: '2026-11-25' }

describe('the hours that the model has', () => {
  const hours = (from: string, to: string, change: Parameters<typeof bareHome>[0] = {}, system = 'main') =>
    modelledHours(bareHome({ climate: COLD, ...change }), system, { from, to }, AT)

  test('of a year are those of its degree-days, heating and cooling alike', () => {
    // 6200 °F·day over 65 − 2 °F and 1.7; 850 over 88 − 65 °F and 1.25 (model, section 2).
    const { heat, cool } = hours('2026-01-01', '2026-12-31')
    expect(heat).toBeCloseTo((24 * 0.77 * 6200) / (63 * 1.7), 0)
    expect(cool).toBeCloseTo((24 * 850) / (23 * 1.25), 0)
  })

  test('count both ends, and add up over neighbouring spans', () => {
    const [one, next, both] = [
      hours('2026-01-05', '2026-01-05'),
      hours('2026-01-06', '2026-01-07'),
      hours('2026-01-05', '2026-01-07'),
    ]
    expect(one.heat).toBeGreaterThan(5)
    expect(one.heat + next.heat).toBeCloseTo(both.heat, 9)
    const [june, day] = [hours('2026-07-01', '2026-07-02'), hours('2026-07-01', '2026-07-01')]
    expect(june.cool / day.cool).toBeCloseTo(2, 1)
  })

  test('are the plain estimate, whatever was measured or the weather was', () => {
    const reading = {
      system: 'main',
      from: '2026-01-01',
      to: '2026-01-31',
      source: 'thermostat',
      heatHours: 700,
    } as const
    const spell = { kind: 'cold', from: '2026-01-01', to: '2026-01-31', highF: -10, lowF: -30 } as const
    expect(hours('2026-01-01', '2026-01-31', { readings: [reading], weather: [spell] })).toEqual(
      hours('2026-01-01', '2026-01-31'),
    )
  })

  test('of a system that there is not are none', () => {
    expect(hours('2026-01-01', '2026-01-31', {}, 'gone')).toEqual({ heat: 0, cool: 0 })
  })
})

describe('the usual mean temperature', () => {
  const mean = (from: string, to: string) => usualMeanF(COLD, { from, to }, tables)

  test('of a year is 65 °F less the degree-days’ difference over 365', () => {
    expect(mean('2026-01-01', '2026-12-31')).toBeCloseTo(65 - (6200 - 850) / 365, 9)
    expect(mean('2026-01-01', '2031-12-31')).toBeCloseTo(65 - (6200 - 850) / 365, 0)
  })

  test('of a day is that day’s, coldest on 21 January and warmest half a year later', () => {
    expect(mean('2026-01-21', '2026-01-21')).toBeLessThan(mean('2026-01-10', '2026-01-10'))
    expect(mean('2026-01-21', '2026-01-21')).toBeLessThan(mean('2026-02-01', '2026-02-01'))
    expect(mean('2026-07-22', '2026-07-22')).toBeGreaterThan(mean('2026-06-22', '2026-06-22'))
    const [two, first, second] = [
      mean('2026-05-01', '2026-05-02'),
      mean('2026-05-01', '2026-05-01'),
      mean('2026-05-02', '2026-05-02'),
    ]
    expect(two).toBeCloseTo((first + second) / 2, 9)
  })

  test('of many years stops at the first: 366 days from their beginning', () => {
    expect(mean('2026-05-01', '2040-01-01')).toBe(mean('2026-05-01', '2027-05-01'))
  })
})
