import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays, dayNumber } from '@/lib/core/day'
import type { Household, Reading, System } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const WINTER = { system: 'main', from: '2026-01-05', to: '2026-02-04', source: 'thermostat' } as const
const SUMMER = { system: 'main', from: '2026-07-01', to: '2026-07-31', source: 'thermostat' } as const

function days(readings: Reading[], change: Partial<Household> = {}) {
  const home = bareHome({ climate: COLD, readings, ...change })
  const system = home.systems[0] as System
  return systemDays(home, system, dayNumber(ON), tables, new Profiles(tables.figures))
}

/** Hours between two days, both included. */
function between(through: (day: number) => number, { from, to }: { from: string; to: string }): number {
  return through(dayNumber(to)) - through(dayNumber(from) - 1)
}

describe('measured hours', () => {
  const model = days([])
  const modelled = between(model.heatThrough, WINTER)

  test('replace the model inside their span, both ends included, in its proportions', () => {
    const measured = days([{ ...WINTER, heatHours: 100 }])
    expect(between(measured.heatThrough, WINTER)).toBeCloseTo(100, 9)
    const [first, last] = [dayNumber(WINTER.from), dayNumber(WINTER.to)]
    expect(measured.hoursOn(first).heat / measured.hoursOn(last).heat).toBeCloseTo(
      model.hoursOn(first).heat / model.hoursOn(last).heat,
      9,
    )
  })

  test('scale heating outside by r to the power M/(M + 60), and leave cooling alone', () => {
    const scale = Math.exp((modelled / (modelled + 60)) * Math.log(1.5))
    const measured = days([{ ...WINTER, heatHours: 1.5 * modelled }])
    for (const day of ['2026-03-01', '2027-01-10', '2026-01-04', '2026-02-05']) {
      const [m, u] = [measured.hoursOn(dayNumber(day)), model.hoursOn(dayNumber(day))]
      expect(m.heat / u.heat).toBeCloseTo(scale, 9)
      expect(m.cool).toBe(u.cool)
    }
  })

  test('scale by 4 at most and by a quarter at least', () => {
    const autumn = { ...WINTER, from: '2026-09-20', to: '2026-10-20' }
    const hours = between(model.heatThrough, autumn)
    const day = dayNumber('2026-12-01')
    const ratio = (share: number) => {
      return days([{ ...autumn, heatHours: share * hours }]).hoursOn(day).heat / model.hoursOn(day).heat
    }
    const weight = hours / (hours + 60)
    expect(ratio(3.9)).toBeCloseTo(3.9 ** weight, 9)
    expect(ratio(4.5)).toBeCloseTo(4 ** weight, 9)
    expect(ratio(0.26)).toBeCloseTo(0.26 ** weight, 9)
    expect(ratio(0)).toBeCloseTo(0.25 ** weight, 9)
  })

  test('older than 400 days no longer scale, but stay what they were', () => {
    const old = { ...WINTER, from: '2025-01-05', to: '2025-02-04', heatHours: 300 }
    const measured = days([old])
    expect(between(measured.heatThrough, old)).toBeCloseTo(300, 9)
    expect(measured.hoursOn(dayNumber('2026-10-01')).heat).toBe(model.hoursOn(dayNumber('2026-10-01')).heat)
  })

  test('scale while they lie among the last 400 days, the day of the plan being one', () => {
    const day = dayNumber('2026-12-25')
    const scaledBy = (ago: number) => {
      const on = addDays(ON, -ago)
      return days([{ ...WINTER, from: on, to: on, heatHours: 20 }]).hoursOn(day).heat / model.hoursOn(day).heat
    }
    expect(scaledBy(0)).toBeGreaterThan(1)
    expect(scaledBy(399)).toBeGreaterThan(1)
    expect(scaledBy(400)).toBe(1)
  })

  test('are spread evenly where the model has next to none, and scale nothing then', () => {
    const warm = { climate: { ...COLD, hdd65: 300, cdd65: 4000 } }
    const measured = days([{ ...SUMMER, heatHours: 31 }], warm)
    for (const day of ['2026-07-01', '2026-07-31']) expect(measured.hoursOn(dayNumber(day)).heat).toBeCloseTo(1, 9)
    expect(measured.hoursOn(dayNumber('2026-12-25')).heat).toBe(days([], warm).hoursOn(dayNumber('2026-12-25')).heat)
  })

  test('of the blower leave to the fan what heating and cooling do not need', () => {
    const more = days([{ ...WINTER, heatHours: 100, coolHours: 0, fanHours: 138 }])
    expect(more.hoursOn(dayNumber('2026-01-20')).fanOnly).toBeCloseTo((138 - 107) / 31, 9)
    expect(between(more.blowerThrough, WINTER)).toBeCloseTo(138, 9)
    const less = days([{ ...WINTER, heatHours: 100, coolHours: 0, fanHours: 50 }])
    expect(between(less.blowerThrough, WINTER)).toBeCloseTo(50, 9)
    expect(less.hoursOn(dayNumber('2026-01-20')).fanOnly).toBe(0)
    expect(between(less.heatThrough, WINTER)).toBeCloseTo(100, 9)
  })

  test('never make a day longer than 24 h', () => {
    const all = days([{ ...WINTER, heatHours: 744, coolHours: 744, fanHours: 744 }])
    for (let day = dayNumber(WINTER.from); day <= dayNumber(WINTER.to); day++) {
      const { heat, cool, heatRun, coolRun, fanOnly } = all.hoursOn(day)
      expect(Math.max(heat, cool, heatRun + coolRun + fanOnly)).toBeLessThanOrEqual(24 + 1e-9)
    }
  })

  test('scale the days between them too', () => {
    const later = { ...WINTER, from: '2026-02-20', to: '2026-03-10' }
    const hours = between(model.heatThrough, WINTER) + between(model.heatThrough, later)
    const measured = days([
      { ...WINTER, heatHours: 2 * between(model.heatThrough, WINTER) },
      { ...later, heatHours: 2 * between(model.heatThrough, later) },
    ])
    const day = dayNumber('2026-02-12')
    expect(measured.hoursOn(day).heat / model.hoursOn(day).heat).toBeCloseTo(2 ** (hours / (hours + 60)), 9)
    const [cooled, next] = [SUMMER, { ...SUMMER, from: '2026-08-10', to: '2026-08-20' }].map((span) => ({
      ...span,
      coolHours: 2 * between(model.coolThrough, span),
    })) as [Reading, Reading]
    const cool = between(model.coolThrough, SUMMER) + between(model.coolThrough, next)
    const between2 = dayNumber('2026-08-05')
    const summer = days([cooled, next])
    expect(summer.hoursOn(between2).cool / model.hoursOn(between2).cool).toBeCloseTo(2 ** (cool / (cool + 60)), 9)
    expect(between(summer.coolThrough, SUMMER)).toBeCloseTo(2 * between(model.coolThrough, SUMMER), 9)
  })

  test('of the blower count in their own span, and scale cooling down where they are fewer', () => {
    const winter = { ...WINTER, heatHours: 100, coolHours: 0, fanHours: 200 }
    const summer = { ...SUMMER, heatHours: 0, coolHours: 120, fanHours: 60 }
    const both = days([winter, summer])
    expect(between(both.blowerThrough, WINTER)).toBeCloseTo(200, 9)
    expect(between(both.blowerThrough, SUMMER)).toBeCloseTo(60, 9)
    const day = both.hoursOn(dayNumber('2026-07-15'))
    expect(day.coolRun / day.cool).toBeCloseTo(0.5, 9)
    expect(day.fanOnly).toBe(0)
    // Heat and cold on the same days need 107 + 120 h; 300 h leave 73 to the fan.
    const mixed = days([{ ...SUMMER, heatHours: 100, coolHours: 120, fanHours: 300 }])
    expect(mixed.hoursOn(dayNumber('2026-07-15')).fanOnly).toBeCloseTo((300 - 107 - 120) / 31, 9)
    expect(between(mixed.blowerThrough, SUMMER)).toBeCloseTo(300, 9)
  })

  test('that lie after the day of the plan scale nothing', () => {
    const ahead = { ...WINTER, from: addDays(ON, 1), to: addDays(ON, 1), heatHours: 20 }
    const day = dayNumber('2027-02-01')
    expect(days([ahead]).hoursOn(day).heat).toBe(model.hoursOn(day).heat)
  })

  test('of the blower never fill a day beyond its end, however unevenly heating is spread', () => {
    const autumn = { ...WINTER, from: '2026-09-20', to: '2026-10-20' }
    const all = days([{ ...autumn, heatHours: 31 * 12, coolHours: 0, fanHours: 31 * 24 }])
    const [first, last] = [all.hoursOn(dayNumber(autumn.from)), all.hoursOn(dayNumber(autumn.to))]
    // The last days heat so long that less than the mean share is left for the fan.
    expect(last.heatRun).toBeGreaterThan(2 * first.heatRun)
    expect(last.heatRun + last.fanOnly).toBeCloseTo(24, 9)
    expect(first.heatRun + first.fanOnly).toBeLessThan(24)
    const both = days([{ ...SUMMER, heatHours: 31 * 8, coolHours: 31 * 15, fanHours: 31 * 24 }])
    for (let day = dayNumber(SUMMER.from); day <= dayNumber(SUMMER.to); day++) {
      const { heatRun, coolRun, fanOnly } = both.hoursOn(day)
      expect(heatRun + coolRun + fanOnly).toBeLessThanOrEqual(24 + 1e-9)
    }
  })

  test('that say nothing of a system change nothing', () => {
    const boiler: System = { id: 'main', name: 'Main', delivery: 'hydronic', heat: { source: 'gas-boiler' } }
    expect(days([{ ...WINTER }]).measured).toBeNull()
    expect(days([{ ...WINTER, fanHours: 300 }], { systems: [boiler] }).measured).toBeNull()
  })
})

describe('a gas bill', () => {
  const bill = { ...WINTER, source: 'bill', therms: 118, baseTherms: 14 } as const
  test('gives heating hours: 104 therms through 80 000 Btu/h are 130 h [G] (EIA)', () => {
    expect(between(days([bill]).heatThrough, WINTER)).toBeCloseTo(130, 9)
  })
  test('gives more of them where altitude takes a fifth of the burner’s rating', () => {
    expect(between(days([bill], { elevationFt: 5000 }).heatThrough, WINTER)).toBeCloseTo(162.5, 9)
  })
  test('tells of heating alone, and belongs to a burner whose rating is known', () => {
    expect(days([bill]).measured?.scales.cool).toBe(1)
    const unrated: System = { id: 'main', name: 'Main', delivery: 'ducted', heat: { source: 'gas-furnace' } }
    expect(() => days([bill], { systems: [unrated] })).toThrow('input rating')
  })
  test('below the base use gives none', () => {
    expect(between(days([{ ...bill, therms: 9 }]).heatThrough, WINTER)).toBeCloseTo(0, 9)
  })
})

test('the mean year of the workings is the scaled one', () => {
  const home = bareHome({ climate: COLD, readings: [{ ...WINTER, heatHours: 400 }] })
  const plain = plan([{ ...home, readings: [] }], tables, ON).households[0]?.workings[0]
  const scaled = plan([home], tables, ON).households[0]?.workings[0]
  const next = addDays(ON, 40)
  const ratio = days(home.readings).hoursOn(dayNumber(next)).heat / days([]).hoursOn(dayNumber(next)).heat
  expect((scaled?.heatHours ?? 0) / (plain?.heatHours ?? 1)).toBeCloseTo(ratio, 9)
  expect(ratio).toBeGreaterThan(1.5)
})
