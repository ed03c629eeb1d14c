import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber, dayText } from '@/lib/core/day'
import { dateInWords } from '@/lib/core/day-words'
import type { Climate, Household, LogRecord, Reading, System, Task } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { runSettings } from '@/lib/core/runtime'
import { seasonOf, seasonOn } from '@/lib/core/season'
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

test('a season holds its first day and the day before its end, and none around them', () => {
  const profile = new Profiles(figures).get(COLD, runSettings(FURNACE, COLD, figures), { heat: 1, cool: 1 })
  for (const kind of ['heating', 'cooling'] as const) {
    const { start, end } = seasonOf(profile, kind, 2026, figures) ?? { start: 0, end: 0 }
    const inside = [start - 1, start, end - 1, end].map((day) => seasonOn(profile, kind, day, figures) !== null)
    expect(inside).toEqual([false, true, true, false])
  }
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

  test('that was done in the season waits for the next one', () => {
    const home = bareHome({ climate: COLD, since: '2026-11-20', records: [done('heating-service', '2026-11-01')] })
    expect(itemOf(home, 'heating-service')).toMatchObject({ basis: 'season' })
    expect(itemOf(home, 'heating-service')?.due.slice(0, 4)).toBe('2027')
  })

  test.each([
    ['heating', 'heatHours', '2026-02-01'],
    ['cooling', 'coolHours', '2026-05-01'],
  ] as const)('of %s comes on the day its own measured hours pass one and a half usual years', (kind, hours, last) => {
    const usual = new Profiles(figures).get(COLD, runSettings(FURNACE, COLD, figures), { heat: 1, cool: 1 }).totals
    const share = 1.5 * (kind === 'heating' ? usual.heatLoad : usual.coolLoad)
    const wholeDays = Array.from({ length: 80 }, (_, i) => {
      const day = dayText(dayNumber(last) + 1 + i)
      return { system: 'main', from: day, to: day, source: 'thermostat' as const, [hours]: 24 }
    })
    const home = bareHome({ climate: COLD, records: [done(`${kind}-service`, last)], readings: wholeDays })
    const due = dayText(dayNumber(last) + Math.floor(share / 24) + 1)
    expect(itemOf(home, `${kind}-service`)).toMatchObject({ due, earliest: due, basis: 'runtime' })
    const other = kind === 'heating' ? 'cooling-service' : 'heating-service'
    expect(itemOf(home, other)?.basis).not.toBe('runtime')
  })

  test('is not brought forward by a few hours of what hardly ever runs', () => {
    const from = '2026-02-02'
    const home = bareHome({
      climate: TROPICAL,
      records: [done('heating-service', '2026-02-01')],
      readings: [{ system: 'main', from, to: '2026-03-03', source: 'thermostat', heatHours: 10 }],
    })
    expect(itemOf(home, 'heating-service')?.basis).toBe('season')
  })

  test('says why it comes when it does, with the mark of the figure behind it', () => {
    const first = (change: Partial<Household>) => whyOn('2026-11-25', change)
    expect(first({ climate: COLD, since: '2026-11-25' })).toEqual({
      say: 'No service is recorded, and the heating season is running.',
      mark: figures.lateServiceDays.mark,
    })
    expect(first({ climate: TROPICAL, since: '2026-05-01' })).toEqual({
      say: 'This climate has no marked heating season, so the service falls in its customary months.',
      mark: 'P',
    })
    const served = { climate: COLD, records: [done('heating-service', '2026-02-01')] }
    expect(first(served)).toEqual({
      say: expect.stringMatching(
        /^The heating season was expected from .*; the service should have been done two weeks before/,
      ),
      mark: figures.serviceClosesBeforeDays.mark,
    })
    const reading = { system: 'main', from: '2026-02-02', to: '2026-04-22', source: 'thermostat' as const }
    expect(first({ ...served, readings: [{ ...reading, heatHours: 80 * 24 }] })).toEqual({
      say: expect.stringContaining('run half again as many heating hours since its last service'),
      mark: figures.runtimeShareOfYear.mark,
    })
  })

  test('never recorded is told of the season that ran on the first day, also once another runs', () => {
    const home = { climate: COLD, since: '2026-03-10' }
    expect(whyOn('2026-03-10', home)?.say).toBe('No service is recorded, and the heating season is running.')
    for (const on of ['2026-03-11', '2026-07-15', '2027-07-15'])
      expect(whyOn(on, home)?.say).toBe(
        'No service is recorded, and on 10 March 2026, when this home was first described, the heating season was running.',
      )
  })

  test('is told as past once its window has closed, and its season once that should have begun', () => {
    const start = dayNumber(season(COLD, 'heating', 2026)?.start ?? '')
    const home = { climate: COLD, records: [done('heating-service', '2026-02-01')] }
    const told = (is: string, be: string) =>
      `The heating season ${is} expected from ${dateInWords(dayText(start))}; the service should ${be} done two weeks before it.`
    const days = [start - 100, start - 14, start - 13, start, start + 1, start + 60]
    expect(days.map((day) => whyOn(dayText(day), home)?.say)).toEqual([
      ...[told('is', 'be'), told('is', 'be'), told('is', 'have been'), told('is', 'have been')],
      ...[told('was', 'have been'), told('was', 'have been')],
    ])
  })

  test('by its hours tells what it will have run, and from the day itself what it had run', () => {
    const reading = { system: 'main', from: '2026-02-02', to: '2026-04-22', source: 'thermostat', heatHours: 80 * 24 }
    const home = { climate: COLD, records: [done('heating-service', '2026-02-01')], readings: [reading as Reading] }
    const due = dayNumber(itemOf(bareHome(home), 'heating-service')?.due ?? '')
    const told = (run: string) =>
      `By then it ${run} half again as many heating hours since its last service as in a usual year.`
    expect([due - 1, due, due + 200].map((day) => whyOn(dayText(day), home)?.say)).toEqual([
      told('will have run'),
      told('had run'),
      told('had run'),
    ])
  })
})

/** The first reason of the heating service as it is read on a day. */
function whyOn(on: string, change: Partial<Household>) {
  const items = plan([bareHome(change)], tables, on).households[0]?.items ?? []
  return items.find((item) => item.task === 'heating-service')?.reasons[0]
}
