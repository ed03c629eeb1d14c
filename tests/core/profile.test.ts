import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { CYCLE_ORIGIN, cycleThrough } from '@/lib/core/cycle'
import { CYCLE_DAYS, dayNumber } from '@/lib/core/day'
import type { Climate, System } from '@/lib/core/household'
import { cleaningFactor, isHeavyUse, type Profile, Profiles, type Scales } from '@/lib/core/profile'
import { runSettings } from '@/lib/core/runtime'
import { COLD, PUMP } from '../support/plan-of'

const { figures } = tables
const UNSCALED = { heat: 1, cool: 1 }
const EVEN: Climate = { kind: 'annual', hdd65: 2000, cdd65: 200, heatingDesignF: 20, coolingDesignF: 85 }
const MONTHS = [900, 800, 600, 300, 100, 0, 0, 0, 50, 300, 600, 850]
const MONTHLY: Climate = {
  ...{ kind: 'monthly', hdd65: MONTHS, cdd65: MONTHS.map((dd) => Math.max(0, 300 - dd)) },
  ...{ heatingDesignF: 10, coolingDesignF: 90 },
}

function profileOf(change: Partial<System> = {}, climate: Climate = COLD, profiles = new Profiles(figures)): Profile {
  return profiles.get(climate, runSettings({ ...PUMP, ...change }, climate, figures), UNSCALED)
}

describe('systems that run alike', () => {
  test('share one profile, and no other system has it', () => {
    const profiles = new Profiles(figures)
    const get = (change: Partial<System>, climate: Climate = COLD, scales: Scales = UNSCALED) =>
      profiles.get(climate, runSettings({ ...PUMP, ...change }, climate, figures), scales)
    const { heat: _heat, ...cools } = PUMP
    const { cool: _cool, ...heats } = PUMP
    const setBack = { heatSetpointF: 62, coolSetpointF: 80 }
    const all = [
      () => get({}),
      () => get({ fan: { mode: 'on' } }),
      () => get({ fan: { mode: 'circulate', minutesPerHour: 20 } }),
      () => get({ fan: { mode: 'circulate', minutesPerHour: 40 } }),
      () => get({ delivery: 'hydronic' }),
      () => get({ heat: { source: 'gas-furnace' } }),
      () => get({ heat: { source: 'gas-boiler' } }),
      () => profiles.get(COLD, runSettings(cools, COLD, figures), UNSCALED),
      () => profiles.get(COLD, runSettings(heats, COLD, figures), UNSCALED),
      () => get({ thermostat: setBack }),
      () => get({ thermostat: { ...setBack, heatSetpointF: 63 } }),
      () => get({ thermostat: { ...setBack, coolSetpointF: 81 } }),
      () => get({}, COLD, { heat: 1.2, cool: 1 }),
      () => get({}, COLD, { heat: 1, cool: 1.2 }),
      () => get({}, EVEN),
      () => get({}, { ...EVEN, hdd65: 2001 }),
      () => get({}, { ...EVEN, cdd65: 201 }),
      () => get({}, { ...EVEN, heatingDesignF: 21 }),
      () => get({}, { ...EVEN, coolingDesignF: 86 }),
      // The same months in another list are the same climate.
      () => get({}, structuredClone(MONTHLY)),
      () => get({}, { ...MONTHLY, hdd65: MONTHS.map((dd) => dd + 1) }),
      () => get({}, { ...MONTHLY, cdd65: MONTHS.map((dd) => dd / 2) }),
    ]
    const first = all.map((make) => make())
    expect(new Set(first).size).toBe(all.length)
    all.forEach((make, i) => {
      expect(make()).toBe(first[i])
    })
    expect(first[2]?.fanOnly).not.toEqual(first[3]?.fanOnly)
  })

  test('whose fan alone differs have one load between them', () => {
    const profiles = new Profiles(figures)
    expect(profileOf({ fan: { mode: 'on' } }, COLD, profiles).load).toBe(profileOf({}, COLD, profiles).load)
  })
})

test('what is not scaled is the load itself, and the air of one arrestance is worked out once', () => {
  const profile = profileOf()
  expect(profile.cycles.heat).toBe(profile.loadCycles.heat)
  expect(profile.cycles.cool).toBe(profile.loadCycles.cool)
  expect(profile.air(0.3)).toBe(profile.air(0.3))
  expect(profile.toHeavyUse()).toBe(profile.toHeavyUse())
  expect(profile.air(0.4)).not.toEqual(profile.air(0.3))
})

describe('a profile', () => {
  const fanOn = profileOf({ fan: { mode: 'circulate', minutesPerHour: 15 } })

  test('says of a day what its sums say of it, and of the year what its days come to', () => {
    const { hoursOn, through, totals } = fanOn
    const year = { heat: 0, cool: 0, blower: 0 }
    for (let day = dayNumber('2026-01-01'); day <= dayNumber('2026-12-31'); day++) {
      const { heat, cool, heatRun, coolRun, fanOnly } = hoursOn(day)
      const blower = heatRun + coolRun + fanOnly
      expect(through.heat(day) - through.heat(day - 1)).toBeCloseTo(heat, 6)
      expect(through.cool(day) - through.cool(day - 1)).toBeCloseTo(cool, 6)
      expect(through.blower(day) - through.blower(day - 1)).toBeCloseTo(blower, 6)
      year.heat += heat
      year.cool += cool
      year.blower += blower
      // Fifteen minutes an hour are six hours a day, unless it runs longer for heating and cooling.
      expect(blower).toBeCloseTo(Math.max(6, heatRun + coolRun), 9)
    }
    for (const key of ['heat', 'cool', 'blower'] as const) expect(totals[key]).toBeCloseTo(year[key], 6)
    expect([totals.heatLoad, totals.coolLoad]).toEqual([totals.heat, totals.cool])
  })

  test('scaled by what was measured has so much more of it, and the load that it had', () => {
    const profiles = new Profiles(figures)
    const settings = runSettings(PUMP, EVEN, figures)
    const usual = profiles.get(EVEN, settings, UNSCALED).totals
    const scaled = profiles.get(EVEN, settings, { heat: 1.1, cool: 0.5 })
    expect(scaled.totals.heat).toBeCloseTo(usual.heat * 1.1, 6)
    expect(scaled.totals.cool).toBeCloseTo(usual.cool * 0.5, 6)
    expect([scaled.totals.heatLoad, scaled.totals.coolLoad]).toEqual([usual.heatLoad, usual.coolLoad])
    const [from, to] = [dayNumber('2025-12-31'), dayNumber('2026-12-31')]
    expect(scaled.through.heat(to) - scaled.through.heat(from)).toBeCloseTo(usual.heat * 1.1, 6)
    expect(scaled.through.cool(to) - scaled.through.cool(from)).toBeCloseTo(usual.cool * 0.5, 6)
  })

  test('weighs each hour of air by how clean that day’s blowing keeps it', () => {
    // 2.85 / (2 + 5 · ½ · 12 / 24) = 2.85 / 3.25; without a filter that catches, 2.85 / 2.
    expect(cleaningFactor(0.5, 12, figures)).toBeCloseTo(0.876923, 6)
    expect([cleaningFactor(0, 12, figures), cleaningFactor(0.5, 0, figures)]).toEqual([1.425, 1.425])
    const day = dayNumber('2026-01-15')
    const { heatRun, coolRun, fanOnly } = fanOn.hoursOn(day)
    const factor = cleaningFactor(0.5, heatRun + coolRun + fanOnly, figures)
    const air = fanOn.air(0.5)
    const of = (kind: 'heat' | 'cool' | 'fan', on = day) =>
      cycleThrough(air[kind], on) - cycleThrough(air[kind], on - 1)
    expect([of('heat'), of('cool')]).toEqual([expect.closeTo(heatRun * factor, 6), expect.closeTo(coolRun * factor, 6)])
    const may = dayNumber('2026-05-15')
    const { fanOnly: still, ...runs } = fanOn.hoursOn(may)
    expect(still).toBeGreaterThan(0)
    const mild = cleaningFactor(0.5, still + runs.heatRun + runs.coolRun, figures)
    expect(of('fan', may)).toBeCloseTo(still * mild, 6)
    expect(cycleThrough(fanOn.air(0).heat, day) - cycleThrough(fanOn.air(0).heat, day - 1)).toBeCloseTo(
      heatRun * 1.425,
      6,
    )
  })
})

describe('heavy use', () => {
  test('is four hours a day over the thirty days before, that day included', () => {
    const even = (hours: number) => isHeavyUse((day) => hours * day, 20_000, figures)
    expect([even(4), even(3.999)]).toEqual([true, false])
    const begun = (day: number) => isHeavyUse((on) => 24 * Math.max(0, on - 100), day, figures)
    // At 24 hours a day five days make 120 hours.
    expect([begun(104), begun(105)]).toEqual([false, true])
  })

  test('is so many days ahead as counting finds, on each day of four years', () => {
    for (const profile of [profileOf({ heat: { source: 'gas-furnace' } }), profileOf({}, MONTHLY)]) {
      const heavy = (place: number) =>
        isHeavyUse(profile.through.blower, CYCLE_ORIGIN + 3 * CYCLE_DAYS + place, figures)
      const counted = Array.from({ length: CYCLE_DAYS }, (_, place) => {
        let days = 0
        while (!heavy(place + days)) days++
        return days
      })
      expect([...profile.toHeavyUse()]).toEqual(counted)
      expect([counted.includes(0), counted.includes(10)]).toEqual([true, true])
    }
  })

  test('is never where nothing runs for long', () => {
    const mild: Climate = { kind: 'annual', hdd65: 300, cdd65: 50, heatingDesignF: 30, coolingDesignF: 85 }
    expect(new Set(profileOf({}, mild).toHeavyUse())).toEqual(new Set([Number.POSITIVE_INFINITY]))
  })
})
