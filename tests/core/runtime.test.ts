import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { climateYear } from '@/lib/core/climate'
import type { AnnualClimate, System } from '@/lib/core/household'
import { divideDay, loadYear, runSettings } from '@/lib/core/runtime'

const { figures } = tables
const FURNACE: System = {
  id: 'main',
  name: 'Main',
  delivery: 'ducted',
  heat: { source: 'gas-furnace' },
  cool: { source: 'central-ac' },
}

function hours(climate: Omit<AnnualClimate, 'kind'>, change: Partial<System> = {}) {
  const whole: AnnualClimate = { kind: 'annual', ...climate }
  const settings = runSettings({ ...FURNACE, ...change }, whole, figures)
  const { heat, cool } = loadYear(settings, climateYear(whole, figures), figures)
  const sum = (days: Float64Array) => days.reduce((a, b) => a + b, 0)
  return { heat: sum(heat), cool: sum(cool) }
}

describe('hours of load of a year', () => {
  // 10 CFR 430 App. N and ASHRAE 103 [S?]: 2080 national heating load hours, 0.77 adjustment, 0.70 oversize.
  test.each([
    ['national', 5200, 5, 942],
    ['cold', 7500, -10, 1087],
    ['warm', 2700, 23, 699],
  ])('%s heating, %i °F·day and %i °F: %i h', (_, hdd65, heatingDesignF, wanted) => {
    const { heat } = hours({ hdd65, cdd65: 700, heatingDesignF, coolingDesignF: 90 })
    expect(Math.abs(heat - wanted)).toBeLessThan(1)
  })

  test.each([
    ['hot', 4900, 108, 2188],
    ['mild', 331, 82, 374],
  ])('%s cooling, %i °F·day and %i °F: %i h [P]', (_, cdd65, coolingDesignF, wanted) => {
    const { cool } = hours({ hdd65: 1000, cdd65, heatingDesignF: 30, coolingDesignF })
    expect(Math.abs(cool - wanted)).toBeLessThan(1)
  })

  test('a heat pump is not oversized for heating, so it runs 1.7 times as long', () => {
    const climate = { hdd65: 5200, cdd65: 700, heatingDesignF: 5, coolingDesignF: 90 }
    expect(hours(climate, { heat: { source: 'heat-pump' } }).heat / hours(climate).heat).toBeCloseTo(1.7, 9)
    expect(hours(climate, { heat: { source: 'dual-fuel' } }).heat / hours(climate).heat).toBeCloseTo(1.7, 9)
  })

  test('a design temperature near the base counts as 10 °F away', () => {
    const at = (heatingDesignF: number) => hours({ hdd65: 300, cdd65: 4000, heatingDesignF, coolingDesignF: 95 }).heat
    expect(at(60)).toBe(at(55))
    expect(at(55)).toBeGreaterThan(at(54))
  })

  test('a system without a heating or cooling source has no such hours', () => {
    const climate = { hdd65: 5200, cdd65: 700, heatingDesignF: 5, coolingDesignF: 90 }
    expect(hours(climate, { heat: undefined }).heat).toBe(0)
    expect(hours(climate, { cool: undefined }).cool).toBe(0)
  })
})

describe('one day', () => {
  const climate: AnnualClimate = { kind: 'annual', hdd65: 5200, cdd65: 700, heatingDesignF: 5, coolingDesignF: 90 }
  const day = (heat: number, cool: number, change: Partial<System> = {}) =>
    divideDay(heat, cool, runSettings({ ...FURNACE, ...change }, climate, figures), figures)

  test('never has more than 24 h of anything', () => {
    const full = day(30, 12)
    expect(full.heat).toBe(24)
    expect(full.heatRun + full.coolRun).toBeCloseTo(24, 12)
    expect(full.heatRun / full.coolRun).toBeCloseTo((24 * 1.07) / 12, 12)
    expect(day(20, 10, { fan: { mode: 'on' } }).fanOnly).toBe(0)
  })

  test('the fan left on, or circulating, adds what is missing', () => {
    const on = day(4, 1, { fan: { mode: 'on' } })
    expect(on.heatRun + on.coolRun + on.fanOnly).toBe(24)
    const circulate = day(4, 1, { fan: { mode: 'circulate', minutesPerHour: 20 } })
    expect(circulate.heatRun + circulate.coolRun + circulate.fanOnly).toBeCloseTo(8, 12)
    expect(day(9, 1, { fan: { mode: 'circulate', minutesPerHour: 20 } }).fanOnly).toBe(0)
  })

  test('a boiler and a wall furnace heat without a blower', () => {
    expect(day(5, 0, { heat: { source: 'gas-boiler' } }).heatRun).toBe(0)
    expect(day(5, 0, { heat: { source: 'wall-furnace' } }).heatRun).toBe(0)
    expect(day(5, 3, { delivery: 'hydronic', fan: { mode: 'on' } })).toMatchObject({ coolRun: 0, fanOnly: 0 })
  })
})
