import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays } from '@/lib/core/day'
import type { DustEvent, Filter, Household, LogRecord } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { bareHome, COLD } from '../support/plan-of'

const ON = '2026-11-25'
const CHANGED: LogRecord = { on: '2026-09-12', kind: 'filter-changed', filter: 'hall' }
/** Blows the same air every hour of every day, so that a filter's load grows evenly. */
const EVEN: Partial<Household> = {
  systems: [{ id: 'main', name: 'Main', delivery: 'ducted', fan: { mode: 'on' }, airflowCfm: { cool: 300 } }],
}

function filterOf(home: Household, id = 'hall') {
  const { items = [], workings = [] } = plan([home], tables, ON).households[0] ?? {}
  return { item: items.find((i) => i.subject === id), workings: workings.find((w) => w.filter === id) }
}

function withFilter(change: Partial<Filter>, home: Partial<Household> = {}): Household {
  const bare = bareHome({ climate: COLD, records: [CHANGED], ...home })
  return { ...bare, filters: bare.filters.map((f) => ({ ...f, ...change })) }
}

describe('a filter whose change nobody recorded', () => {
  test('is due on the day the home was first described: look at it first', () => {
    const { item, workings } = filterOf(bareHome({ records: [] }))
    const day = '2026-09-01'
    expect(item).toMatchObject({ due: day, lookOn: day, early: day, late: day, latest: '2026-09-08', state: 'overdue' })
    expect(item).toMatchObject({ basis: 'never-recorded', earliest: '2026-08-11' })
    expect(workings?.loadedFraction).toBeNull()
  })

  test('is due on the day of the plan in a file that does not say since when', () => {
    expect(filterOf(bareHome({ records: [], since: undefined })).item).toMatchObject({ due: ON, state: 'due' })
  })

  test('stays unknown after a look, and a look at it says nothing about θ', () => {
    const looked: LogRecord = { on: '2026-10-01', kind: 'filter-looked', filter: 'hall', light: 'dark' }
    const { item, workings } = filterOf(bareHome({ records: [looked] }))
    expect(item?.basis).toBe('never-recorded')
    expect(workings?.theta?.q50).toBeCloseTo(1, 12)
  })
})

describe('limits', () => {
  test('of the calendar end a filter that hardly loads, and the printed one replaces it', () => {
    const idle = { systems: [{ id: 'main', name: 'Main', delivery: 'ducted' as const }] }
    expect(filterOf(withFilter({}, idle)).item).toMatchObject({ due: '2026-12-11', basis: 'calendar' })
    const printed = filterOf(withFilter({ labelLimitDays: 120 }, idle)).item
    expect(printed).toMatchObject({ due: '2027-01-10', basis: 'label', early: '2027-01-10', late: '2027-01-10' })
  })

  test.each([
    ['pleated', 1.4, 90],
    ['pleated', 3.4, 90],
    ['media', 3.5, 180],
    ['media', 4.4, 180],
    ['media', 4.5, 365],
    ['fiberglass', 2, 30],
    ['washable', 1, 30],
    ['screen', 0.5, 30],
  ] as const)('%s, %f in deep: %i days', (medium, depthIn, days) => {
    const idle = { systems: [{ id: 'main', name: 'Main', delivery: 'ducted' as const }] }
    const nominal = { widthIn: 16, heightIn: 25, depthIn }
    expect(filterOf(withFilter({ medium, nominal }, idle)).item?.due).toBe(addDays(CHANGED.on, days))
  })

  test('a ventilator’s screen has 60 days and no loading model', () => {
    const { item, workings } = filterOf(withFilter({ medium: 'screen', place: 'ventilator' }))
    expect(item).toMatchObject({ due: addDays(CHANGED.on, 60), task: 'wash-filter', early: null, late: null })
    expect(workings).toMatchObject({ arrestance: null, capacityGrams: null, loadedFraction: null, theta: null })
    expect(workings).toMatchObject({ faceVelocityFpm: null, pressureDropCleanInWg: null })
  })
})

describe('a dust event', () => {
  test('counts on its first and its last day', () => {
    const loaded = (dustEvents: DustEvent[]) =>
      filterOf(withFilter({}, { ...EVEN, dustEvents })).workings?.loadedFraction ?? 0
    const aDay = loaded([]) / 74
    const smoke = (from: string, to: string) => [{ kind: 'smoke' as const, from, to }]
    expect(loaded(smoke('2026-10-01', '2026-10-10')) - loaded([])).toBeCloseTo(10 * aDay, 9)
    expect(loaded(smoke('2026-10-01', '2026-10-01')) - loaded([])).toBeCloseTo(aDay, 9)
    // The day of the change is the old filter's; the day of the plan is still this one's.
    expect(loaded(smoke('2026-09-01', CHANGED.on))).toBeCloseTo(loaded([]), 9)
    expect(loaded(smoke(ON, '2027-01-01')) - loaded([])).toBeCloseTo(aDay, 9)
    const both = [
      ...smoke('2026-10-01', '2026-10-01'),
      { kind: 'renovation' as const, from: '2026-10-01', to: '2026-10-01' },
    ]
    expect(loaded(both) - loaded([])).toBeCloseTo(5 * aDay, 9)
  })
})

describe('looking', () => {
  test('is wanted a month after the last look in heavy use, and not within two weeks of it', () => {
    expect(filterOf(withFilter({ labelLimitDays: 300 }, EVEN)).item?.lookOn).toBe(addDays(CHANGED.on, 30))
    const looked: LogRecord = { on: '2026-10-20', kind: 'filter-looked', filter: 'hall' }
    const after = filterOf(
      withFilter({ nominal: { widthIn: 30, heightIn: 30, depthIn: 5 } }, { ...EVEN, records: [CHANGED, looked] }),
    )
    expect(after.item?.lookOn).toBe('2026-11-19')
  })

  test('a dark filter brings the day forward, a clear one puts it off', () => {
    const due = (light?: 'clear' | 'half' | 'dark') => {
      const looked: LogRecord = { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light }
      return filterOf(withFilter({}, { ...EVEN, records: [CHANGED, looked] })).item?.due ?? ''
    }
    expect(due('dark') < due()).toBe(true)
    expect(due('clear') > due('half')).toBe(true)
  })

  test('what was fitted decides what a later look means', () => {
    const records = (medium: 'fiberglass' | 'pleated'): LogRecord[] => [
      { ...CHANGED, fitted: { medium } } as LogRecord,
      { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light: 'dark' },
    ]
    const theta = (medium: 'fiberglass' | 'pleated') =>
      filterOf(withFilter({}, { ...EVEN, records: records(medium) })).workings?.theta?.q50 ?? 0
    // Fiberglass catches less dust but holds far less, so that a dark one surprises less.
    expect(theta('fiberglass')).toBeLessThan(theta('pleated'))
  })

  test('of two changes on one day the order of entry does not decide', () => {
    const two: LogRecord[] = [
      { ...CHANGED, fitted: { medium: 'fiberglass' } } as LogRecord,
      { ...CHANGED, fitted: { medium: 'pleated', merv: 13 } } as LogRecord,
    ]
    const looked: LogRecord = { on: '2026-10-20', kind: 'filter-looked', filter: 'hall', light: 'dark' }
    const theta = (records: LogRecord[]) => filterOf(withFilter({}, { ...EVEN, records })).workings?.theta
    expect(theta([...two, looked])).toEqual(theta([looked, ...two.toReversed()]))
  })
})

test('a filter behind a grille filter gets only the dust that passes it', () => {
  const slot: Filter = {
    ...{ id: 'slot', system: 'main', place: 'furnace-slot', medium: 'media', merv: 13 },
    nominal: { widthIn: 16, heightIn: 25, depthIn: 4 },
  }
  const home = withFilter({}, { ...EVEN, records: [CHANGED, { ...CHANGED, filter: 'slot' } as LogRecord] })
  const both = { ...home, filters: [...home.filters, slot] }
  const grams = (id: string) => {
    const { workings } = filterOf(both, id)
    return (workings?.loadedFraction ?? 0) * (workings?.capacityGrams ?? 0)
  }
  expect(grams('slot') / grams('hall')).toBeCloseTo((0.15 * 0.97) / 0.85, 9)
})
