import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber, dayText } from '@/lib/core/day'
import type { Climate, LogRecord, System, Task } from '@/lib/core/household'
import { Profiles } from '@/lib/core/profile'
import { runSettings } from '@/lib/core/runtime'
import { seasonOf } from '@/lib/core/season'
import { bareHome, COLD, itemOf, POLAR, PUMP, TROPICAL } from '../support/plan-of'

const { figures } = tables
const FURNACE: System = {
  id: 'main',
  name: 'Main',
  delivery: 'ducted',
  heat: { source: 'gas-furnace' },
  cool: { source: 'central-ac', tons: 3 },
}

function season(climate: Climate, kind: 'heating' | 'cooling', year: number) {
  const profile = new Profiles(figures).get(climate, runSettings(FURNACE, climate, figures), { heat: 1, cool: 1 })
  const found = seasonOf(profile, kind, year, figures)
  return found && { start: dayText(found.start), days: found.end - found.start }
}

function done(task: Task, on: string): LogRecord {
  return { on, kind: 'service-done', task, subject: 'main' }
}

describe('seasons', () => {
  test('of a cold climate: heating from autumn into spring, cooling in summer', () => {
    expect(season(COLD, 'heating', 2026)?.start).toMatch(/^2026-(09|10)/)
    expect(season(COLD, 'heating', 2026)?.days).toBeGreaterThan(180)
    expect(season(COLD, 'cooling', 2026)?.start).toMatch(/^2026-0[56]/)
  })

  test('all year long they start on their first day, and end after a year', () => {
    expect(season(POLAR, 'heating', 2026)).toEqual({ start: '2026-07-01', days: 365 })
    expect(season(TROPICAL, 'cooling', 2026)).toEqual({ start: '2026-02-01', days: 365 })
  })

  test('there is none without a fortnight of an hour a day', () => {
    expect(season(TROPICAL, 'heating', 2026)).toBeNull()
    expect(season(POLAR, 'cooling', 2026)).toBeNull()
  })
})

describe('a yearly service', () => {
  test('has its window from 75 to 14 days before the season, and is due on the window’s last day', () => {
    const start = dayNumber(season(COLD, 'heating', 2027)?.start ?? '')
    const home = bareHome({ climate: COLD, records: [done('heating-service', '2026-08-20')] })
    const [earliest, due] = [dayText(start - 75), dayText(start - 14)]
    expect(itemOf(home, 'heating-service')).toMatchObject({ earliest, due, latest: due, basis: 'season' })
  })

  test('skips the window that ends less than 180 days after the last one', () => {
    const start = dayNumber(season(COLD, 'heating', 2027)?.start ?? '')
    const end = start - 14
    const dueAfter = (last: number) => {
      const records = [done('heating-service', dayText(last))]
      return itemOf(bareHome({ climate: COLD, records }), 'heating-service', dayText(last))?.due
    }
    expect(dueAfter(end - 180)).toBe(dayText(end))
    expect(dueAfter(end - 179)?.slice(0, 4)).toBe('2028')
  })

  test('is due at once, with 30 days, where none is recorded and its season runs', () => {
    const home = bareHome({ climate: COLD, since: '2026-11-20' })
    const at = { earliest: '2026-11-20', due: '2026-11-20', latest: '2026-12-20', basis: 'never-recorded' }
    expect(itemOf(home, 'heating-service')).toMatchObject({ ...at, doer: 'technician', state: 'due' })
    expect(itemOf(home, 'cooling-service')).toMatchObject({ basis: 'season' })
    expect(itemOf(home, 'cooling-service')?.due).toMatch(/^2027-(04|05)/)
  })

  test('falls in its customary months where there is no season', () => {
    const warm = { climate: TROPICAL, since: '2026-05-01' }
    const autumn = { earliest: '2026-09-01', due: '2026-10-31', latest: '2026-10-31', basis: 'season' }
    expect(itemOf(bareHome(warm), 'heating-service')).toMatchObject(autumn)
    const spring = { earliest: '2027-03-01', due: '2027-04-30', latest: '2027-04-30', basis: 'season' }
    expect(itemOf(bareHome({ climate: POLAR, since: '2026-05-01' }), 'cooling-service')).toMatchObject(spring)
  })

  test('is due on the day the equipment has run half again a usual year’s hours, with 30 days from it', () => {
    // Two years apart would be two mean years of hours, of which measured ones ran 24 h a day.
    const records = [done('heating-service', '2026-02-01')]
    const reading = { system: 'main', from: '2026-02-02', to: '2026-04-22', source: 'thermostat' as const }
    const ran = bareHome({ climate: COLD, records, readings: [{ ...reading, heatHours: 80 * 24 }] })
    const item = itemOf(ran, 'heating-service')
    expect(item?.basis).toBe('runtime')
    expect(item?.due).toBe(item?.earliest)
    expect(dayNumber(item?.latest ?? '') - dayNumber(item?.due ?? '')).toBe(30)
    expect(itemOf(bareHome({ climate: COLD, records }), 'heating-service')?.basis).toBe('season')
  })

  test('is asked of heating and cooling alike for a heat pump, once for a boiler, never for a window unit', () => {
    const pump = bareHome({ systems: [PUMP] })
    expect([itemOf(pump, 'heating-service'), itemOf(pump, 'cooling-service')]).not.toContain(undefined)
    const boiler = bareHome({
      filters: [],
      systems: [{ id: 'main', name: 'Main', delivery: 'hydronic', heat: { source: 'oil-boiler' } }],
    })
    expect(itemOf(boiler, 'boiler-service')?.doer).toBe('technician')
    expect(itemOf(boiler, 'heating-service')).toBeUndefined()
    expect(itemOf(boiler, 'outdoor-unit-clear')).toBeUndefined()
    const room: System = { id: 'main', name: 'Window unit', delivery: 'room', cool: { source: 'central-ac' } }
    for (const task of ['cooling-service', 'heating-service', 'outdoor-unit-clear'] as const) {
      expect(itemOf(bareHome({ systems: [room] }), task)).toBeUndefined()
    }
  })
})
