import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { dayNumber } from '@/lib/core/day'
import type { Filter, Household, LogRecord, System } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'
import { systemYears } from '@/lib/core/year'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const FIRST = '2026-09-01'
const LAST = '2027-08-31'
const CHANGED: LogRecord = { on: '2026-09-12', kind: 'filter-changed', filter: 'hall' }

function yearOf(home: Household, system = 'main') {
  const found = systemYears(home, tables, ON).find((one) => one.system === system)
  if (!found) throw new Error(`no year of ${system}`)
  return found
}

function eventsOf(home: Household, filter = 'hall') {
  return yearOf(home).filters.find((one) => one.filter === filter)?.events ?? []
}

function withMedium(medium: Filter['medium'], records = [CHANGED]): Household {
  const bare = bareHome({ climate: COLD, records })
  return { ...bare, filters: bare.filters.map((f) => ({ ...f, medium, merv: undefined })) }
}

describe('the year of a system', () => {
  test('has 365 days from the first of the month two months before, each with its hours', () => {
    const home = bareHome({ climate: COLD, records: [CHANGED] })
    const year = yearOf(home)
    expect(year).toMatchObject({ system: 'main', name: 'Main system', from: FIRST })
    const days = systemDays(home, home.systems[0] as System, dayNumber(ON), tables, new Profiles(tables.figures))
    expect([year.heatHours.length, year.coolHours.length]).toEqual([365, 365])
    for (const i of [0, 150, 364]) {
      expect(year.heatHours[i]).toBe(days.hoursOn(dayNumber(FIRST) + i).heat)
      expect(year.coolHours[i]).toBe(days.hoursOn(dayNumber(FIRST) + i).cool)
    }
    expect(year.heatHours[150]).toBeGreaterThan(3)
    expect(year.coolHours[320]).toBeGreaterThan(3)
  })

  test('tells the changes and looks within it by day; a look at a change is part of the change', () => {
    const records: LogRecord[] = [
      { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light: 'half' },
      { ...CHANGED, light: 'dark' },
      { on: '2026-08-31', kind: 'filter-looked', filter: 'hall', light: 'half' },
      { on: FIRST, kind: 'filter-looked', filter: 'hall', light: 'half' },
      { on: '2026-06-01', kind: 'filter-changed', filter: 'hall' },
    ]
    const past = eventsOf(bareHome({ climate: COLD, records })).filter(({ kind }) => kind !== 'forecast')
    expect(past).toEqual([
      { on: FIRST, kind: 'looked', task: 'look-at-filter' },
      { on: '2026-09-12', kind: 'changed', task: 'change-filter' },
      { on: '2026-10-20', kind: 'looked', task: 'look-at-filter' },
    ])
  })

  test('forecasts each change of a bought filter, as many as are to be bought within it', () => {
    const home = bareHome({ climate: COLD, records: [CHANGED] })
    const forecast = eventsOf(home).filter(({ kind }) => kind === 'forecast')
    const due = plan([home], tables, ON).households[0]?.items.find((item) => item.task === 'change-filter')?.due
    expect(forecast[0]).toEqual({ on: due, kind: 'forecast', task: 'change-filter' })
    expect(forecast.length).toBeGreaterThan(3)
    expect(forecast.every(({ on }) => ON <= on && on <= LAST)).toBe(true)
    const days = forecast.map(({ on }) => on)
    expect(days).toEqual([...new Set(days)].sort())
  })

  test('forecasts a filter’s own changes only, where a system has two', () => {
    const home = bareHome({ climate: COLD, records: [CHANGED] })
    const [hall] = home.filters as [Filter]
    const den: Filter = { ...hall, id: 'den', nominal: { widthIn: 20, heightIn: 30, depthIn: 1 }, labelLimitDays: 60 }
    const records: LogRecord[] = [CHANGED, { ...CHANGED, filter: 'den' }]
    const both = { ...home, filters: [{ ...hall, labelLimitDays: 20 }, den], records }
    const changes = (filter: string) => eventsOf(both, filter).filter(({ kind }) => kind === 'forecast')
    const within = (filter: string, days: number) => changes(filter).map(({ on }) => dayNumber(on) + days)
    // Of what is long over the first change counts today, and each next one a limit later.
    const today = dayNumber(ON)
    expect(within('hall', 0).slice(0, 4)).toEqual([today, today + 20, today + 40, today + 60])
    expect(within('den', 0).slice(0, 3)).toEqual([today, today + 60, today + 120])
  })

  test.each(['washable', 'screen'] as const)('forecasts the next washing alone of a %s one', (medium) => {
    const forecast = eventsOf(withMedium(medium)).filter(({ kind }) => kind === 'forecast')
    const due = '2026-10-12'
    expect(forecast).toEqual([{ on: due, kind: 'forecast', task: 'wash-filter' }])
    expect(eventsOf(withMedium(medium)).find(({ kind }) => kind === 'changed')?.task).toBe('wash-filter')
  })

  test('names the task of each filter by itself: one is washed, another changed', () => {
    const bare = bareHome({ climate: COLD, records: [CHANGED, { ...CHANGED, filter: 'den' }] })
    const [hall] = bare.filters as [Filter]
    const den: Filter = { ...hall, id: 'den', medium: 'washable', merv: undefined }
    for (const filters of [
      [hall, den],
      [den, hall],
    ]) {
      const tasks = (filter: string) => new Set(eventsOf({ ...bare, filters }, filter).map(({ task }) => task))
      expect(tasks('hall')).toEqual(new Set(['change-filter']))
      expect(tasks('den')).toEqual(new Set(['wash-filter']))
    }
  })

  test('ends on its last day', () => {
    const bare = bareHome({ climate: COLD, records: [{ ...CHANGED, on: '2026-11-24' }] })
    const limited = (labelLimitDays: number) => ({
      ...bare,
      systems: [{ id: 'main', name: 'Main', delivery: 'ducted' as const }],
      filters: bare.filters.map((f) => ({ ...f, labelLimitDays })),
    })
    // 280 days after 24 November 2026 is 31 August 2027.
    expect(eventsOf(limited(280)).map(({ on }) => on)).toEqual(['2026-11-24', LAST])
    expect(eventsOf(limited(281)).map(({ on }) => on)).toEqual(['2026-11-24'])
  })

  test('shows the technician’s windows of its own that touch it', () => {
    const served: LogRecord[] = [
      { on: '2026-10-01', kind: 'service-done', task: 'heating-service', subject: 'main' },
      { on: '2026-05-01', kind: 'service-done', task: 'cooling-service', subject: 'main' },
    ]
    const bare = bareHome({ climate: COLD, records: [CHANGED, ...served] })
    const loft = { ...(bare.systems[0] as System), id: 'loft' }
    const home = { ...bare, systems: [...bare.systems, loft] }
    const items = plan([home], tables, ON).households[0]?.items ?? []
    const own = items.filter((item) => item.subject === 'main' && item.doer === 'technician')
    expect(own.map((item) => item.task).sort()).toEqual(['cooling-service', 'heating-service'])
    expect(yearOf(home).windows).toEqual(
      own
        .filter((item) => item.latest >= FIRST && item.earliest <= LAST)
        .map(({ task, subject, doer, earliest, due, latest }) => ({ task, subject, doer, earliest, due, latest })),
    )
    expect(yearOf(home).windows).toHaveLength(2)
    // Served so late that the next window opens after the drawing's end.
    const later = {
      ...home,
      records: [CHANGED, { ...served[0], on: '2026-11-20' } as LogRecord, served[1] as LogRecord],
    }
    const tropical = { ...later, climate: { ...COLD, hdd65: 0, cdd65: 6500, heatingDesignF: 64 } }
    for (const { windows } of systemYears(tropical, tables, ON))
      for (const window of windows) expect(window.latest >= FIRST && window.earliest <= LAST).toBe(true)
  })

  test('shows a window from the year whose last day it opens on, to the one whose first day is its last', () => {
    const served = (on: string): LogRecord[] => [
      { on, kind: 'service-done', task: 'heating-service', subject: 'main' },
      { on, kind: 'service-done', task: 'cooling-service', subject: 'main' },
    ]
    const shown = (home: Household, on: string) =>
      systemYears(home, tables, on)[0]?.windows.map(({ task, earliest, latest }) => [task, earliest, latest]) ?? []
    // Before a season that begins on 14 May: from 28 February, the last day of the year from 1 March 2026 on.
    const spring = bareHome({ climate: COLD, records: served('2026-04-20') })
    const cooling = ['cooling-service', '2027-02-28', '2027-04-30']
    expect(plan([spring], tables, '2026-05-25').households[0]?.items).toContainEqual(
      expect.objectContaining({ task: 'cooling-service', earliest: '2027-02-28', latest: '2027-04-30' }),
    )
    expect(shown(spring, '2026-05-25')).toContainEqual(cooling)
    expect(shown(spring, '2026-04-25')).not.toContainEqual(cooling)
    // Never served, and described in a cooling season: within 30 days, which end on 1 September or the day before.
    const late = (since: string) =>
      shown(bareHome({ climate: COLD, since, records: [] }), ON).map(([task, , to]) => [task, to])
    expect(late('2026-08-02')).toContainEqual(['cooling-service', FIRST])
    expect(late('2026-08-01').map(([task]) => task)).not.toContain('cooling-service')
  })
})
