import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays, daysBetween } from '@/lib/core/day'
import { dateInWords } from '@/lib/core/day-words'
import type { Device, Filter, Household, LogRecord, System, Task } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { bareHome, COLD, TROPICAL } from '../support/plan-of'

const { figures } = tables
const ON = '2026-11-25'
const CHANGED: LogRecord = { on: '2026-09-12', kind: 'filter-changed', filter: 'hall' }
const EVEN: System = { id: 'main', name: 'Main', delivery: 'ducted', fan: { mode: 'on' }, airflowCfm: { cool: 300 } }
const IDLE: System = { id: 'main', name: 'Main', delivery: 'ducted' }

function planned(filter: Partial<Filter>, change: Partial<Household> = {}) {
  const bare = bareHome({ climate: COLD, systems: [EVEN], records: [CHANGED], ...change })
  const home = { ...bare, filters: bare.filters.map((f) => ({ ...f, ...filter })) }
  return plan([home], tables, ON).households[0]
}

function filterItem(filter: Partial<Filter>, change: Partial<Household> = {}) {
  const item = planned(filter, change)?.items.find(({ subject }) => subject === 'hall')
  if (!item) throw new Error('no item')
  return item
}

describe('why a filter is due then', () => {
  test('nobody knows, where no change is recorded', () => {
    const { reasons, doer } = filterItem({}, { records: [] })
    expect(reasons).toEqual([
      { say: expect.stringMatching(/^No change is recorded yet, so look at it first/), mark: 'C' },
    ])
    expect(doer).toBe('resident')
  })

  test('is the limit that is printed on it, or that of its kind with its mark and source', () => {
    const printed = filterItem({ labelLimitDays: 45 }, { systems: [IDLE] })
    expect(printed.reasons).toEqual([
      { say: 'Last changed on 12 September 2026. The limit printed on the filter is 45 days.', mark: 'P' },
    ])
    const usual = filterItem({}, { systems: [IDLE] })
    expect(usual.reasons[0]?.say).toMatch(/^Last changed on 12 September 2026\. A pleated filter should not stay/)
    expect(usual.reasons[0]?.mark).toBe('G')
    const washed = filterItem({ medium: 'washable', merv: undefined }, { systems: [IDLE] })
    expect(washed.reasons[0]?.say).toMatch(/^Last washed on 12 September 2026\. /)
  })

  test('of a screen is its calendar alone, whatever was measured', () => {
    const reading = {
      system: 'main',
      from: '2026-10-01',
      to: '2026-10-02',
      source: 'thermostat',
      fanHours: 20,
    } as const
    const { reasons, basis } = filterItem({ medium: 'screen', merv: undefined }, { readings: [reading] })
    expect(basis).toBe('calendar')
    expect(reasons).toHaveLength(1)
    expect(reasons[0]?.say).toMatch(/^Last washed on 12 September 2026\. /)
  })

  test('is what the blower will have run, or had run, and the grams that a filter of its size holds', () => {
    // A fan that is left on runs 24 hours on each day after the change; 13 g/ft² on 16 × 25 in are 36 g.
    const ahead = filterItem({})
    expect(ahead.basis).toBe('loading')
    const hours = 24 * daysBetween(CHANGED.on, ahead.due)
    expect(ahead.due > ON).toBe(true)
    expect(ahead.reasons).toEqual([
      {
        say: expect.stringMatching(
          new RegExp(
            `^Last changed on 12 September 2026\\. By .* the blower will have run about ${hours} hours, and the filter will have caught the 36 g`,
          ),
        ),
        mark: 'C',
      },
    ])
    const past = filterItem({}, { records: [{ ...CHANGED, on: '2026-08-01' }] })
    expect(past.due < ON).toBe(true)
    const ran = 24 * daysBetween('2026-08-01', past.due)
    expect(past.reasons[0]?.say).toMatch(
      new RegExp(`the blower had run about ${ran} hours, and the filter had caught the 36 g`),
    )
  })

  test('is told as past on the day itself', () => {
    const due = filterItem({}).due
    const home = bareHome({ climate: COLD, systems: [EVEN], records: [CHANGED] })
    const item = plan([home], tables, due).households[0]?.items.find(({ subject }) => subject === 'hall')
    expect(item).toMatchObject({ due, state: 'due' })
    expect(item?.reasons[0]?.say).toContain('the blower had run about')
  })

  test('names measured hours, and what the looks told', () => {
    const reading = {
      system: 'main',
      from: '2026-10-01',
      to: '2026-10-02',
      source: 'thermostat',
      fanHours: 20,
    } as const
    const measured = filterItem({}, { readings: [reading] })
    expect(measured.reasons[1]).toEqual({ say: expect.stringMatching(/^Measured hours count/), mark: 'C' })
    const looked: LogRecord = { on: '2026-10-10', kind: 'filter-looked', filter: 'hall', light: 'dark' }
    const told = filterItem({}, { records: [CHANGED, looked] })
    expect(told.reasons).toHaveLength(2)
    expect(told.reasons[1]).toEqual({
      say: expect.stringMatching(/^Judging by the looks at its filters, this home has about 1\.\d times the dust/),
      mark: figures.thetaSigma.mark,
    })
  })

  test('says where it starts from others, and what its own looks told only where they told something', () => {
    const started: System = { ...EVEN, dustStart: { median: 1.5, spread: 0.3, systems: 4 } }
    const alone = filterItem({}, { systems: [started] })
    expect(alone.reasons).toHaveLength(2)
    expect(alone.reasons[1]).toEqual({
      say: expect.stringMatching(/^Before any look .* 4 other systems of the same owner: about 1\.5 times the dust/),
      mark: figures.poolShares.mark,
    })
    const looked: LogRecord = { on: '2026-10-25', kind: 'filter-looked', filter: 'hall', light: 'clear' }
    expect(filterItem({}, { systems: [started], records: [CHANGED, looked] }).reasons).toHaveLength(3)
  })
})

describe('a filter that is small for its blower', () => {
  const say = (nominal: Filter['nominal'], cfm: number, units: Household['units'] = 'us') =>
    planned({ nominal }, { units, systems: [{ ...EVEN, airflowCfm: { cool: cfm } }] })?.warnings.find(
      ({ code }) => code === 'filter-small-for-airflow',
    )?.say

  test('is told how fast the air is, the limit of its place, and the smallest larger one that would do', () => {
    expect(say({ widthIn: 16, heightIn: 20, depthIn: 1 }, 1200)).toBe(
      'This filter is small for this blower: air passes it at 540 feet a minute, and 300 feet a minute is the most that suits its place. A 24 × 24 × 1 would bring it under that: ask a technician before the opening is changed.',
    )
    expect(say({ widthIn: 16, heightIn: 20, depthIn: 1 }, 1200, 'metric')).toBe(
      'This filter is small for this blower: air passes it at 2.7 metres a second, and 1.5 metres a second is the most that suits its place. A 24 × 24 × 1 would bring it under that: ask a technician before the opening is changed.',
    )
    // 20 × 25 in at 1041 cfm is 299.8 ft/min, and 1042 cfm 300.1.
    expect(say({ widthIn: 20, heightIn: 25, depthIn: 1 }, 1041)).toBeUndefined()
    expect(say({ widthIn: 20, heightIn: 25, depthIn: 1 }, 1042)).toContain(
      ': air passes it a little faster than 300 feet a minute, the most that suits its place. A ',
    )
    // 300 ft/min is 1.524 m/s; what is shown as 1.5 as well is a little more.
    expect(say({ widthIn: 20, heightIn: 25, depthIn: 1 }, 1055, 'metric')).toContain(
      ': air passes it a little faster than 1.5 metres a second, the most that suits its place. A ',
    )
    expect(say({ widthIn: 20, heightIn: 25, depthIn: 1 }, 1070, 'metric')).toContain('at 1.6 metres a second, and 1.5')
  })

  test('gets the smallest that is no smaller either way, of its own depth', () => {
    // 14 × 30 in at 895 cfm needs 430 in²: a 12 × 36 has 432, but does not go around it; 16 × 30 does.
    expect(say({ widthIn: 14, heightIn: 30, depthIn: 1 }, 895)).toContain('A 16 × 30 × 1 would')
    // 16 × 25 in at 1000 cfm needs 480 in²: the same width is large enough.
    expect(say({ widthIn: 16, heightIn: 25, depthIn: 1 }, 1000)).toContain('A 16 × 30 × 1 would')
    expect(say({ widthIn: 16, heightIn: 20, depthIn: 4 }, 1000)).toMatch(/A \d+ × \d+ × 4 would/)
  })

  test('is none where its place has no limit', () => {
    const screen = planned(
      { place: 'ductless-head', medium: 'screen', merv: undefined },
      { systems: [{ ...EVEN, delivery: 'ductless', airflowCfm: { cool: 4000 } }] },
    )
    expect(screen?.warnings.map(({ code }) => code)).not.toContain('filter-small-for-airflow')
  })

  test('gets another shape where none is larger both ways, or a second grille where nothing does', () => {
    const shape = say({ widthIn: 8, heightIn: 40, depthIn: 1 }, 700)
    const [, width, height] = (shape?.match(/A (\S+) × (\S+) × 1 would/) ?? []).map(Number)
    expect((width ?? 0) * (height ?? 0)).toBeGreaterThanOrEqual((700 * 144) / 300)
    expect(say({ widthIn: 16, heightIn: 20, depthIn: 1 }, 5000)).toContain(
      'No common size alone would bring it under that; a second grille that draws air in would',
    )
  })
})

describe('why a task of a device or a season is due then', () => {
  const reasonsOf = (task: Task, change: Partial<Household>) =>
    plan([bareHome({ climate: COLD, ...change })], tables, ON).households[0]?.items.find((item) => item.task === task)
      ?.reasons
  const done = (task: Task, on: string, subject = 'd'): LogRecord => ({ on, kind: 'service-done', task, subject })
  const why = (task: Task) => ({ say: tables.tasks[task].reason, mark: tables.tasks[task].mark })

  test('by the calendar: so many days after the last time, or nothing recorded', () => {
    const devices: Device[] = [{ id: 'd', kind: 'smoke-alarm', made: '2020-05-01' }]
    expect(reasonsOf('alarm-test', { devices })).toEqual([
      { say: 'Nothing is recorded about it yet.', mark: 'C' },
      expect.objectContaining(why('alarm-test')),
    ])
    expect(reasonsOf('alarm-test', { devices, records: [done('alarm-test', '2026-11-20')] })).toEqual([
      { say: '30 days after it was last done.', mark: tables.tasks['alarm-test'].mark },
      expect.objectContaining(why('alarm-test')),
    ])
  })

  test('by age: the years of its kind, or what is printed on it', () => {
    const first = (device: Omit<Device, 'id'>) => reasonsOf('alarm-replace', { devices: [{ id: 'd', ...device }] })?.[0]
    expect(first({ kind: 'smoke-alarm', made: '2017-01-01' })?.say).toMatch(/^10 years after it was made\. /)
    expect(first({ kind: 'smoke-alarm', made: '2017-01-01' })?.mark).toBe(figures.smokeAlarmYears.mark)
    expect(first({ kind: 'co-alarm', made: '2020-01-01' })?.say).toMatch(/^7 years after it was made\. /)
    const printed = { say: 'The end of life printed on it.', mark: 'P' }
    expect(first({ kind: 'co-alarm', made: '2020-01-01', endOfLife: '2028-01-01' })).toEqual(printed)
    expect(first({ kind: 'smoke-alarm', made: '2017-01-01', endOfLife: '2026-12-01' })).toEqual(printed)
    // Of a smoke alarm the earlier of both counts.
    expect(first({ kind: 'smoke-alarm', made: '2017-01-01', endOfLife: '2029-01-01' })?.say).toMatch(/^10 years/)
  })

  test('says of an alarm without any date where to read it', () => {
    const home = bareHome({ devices: [{ id: 'd', kind: 'smoke-alarm' }] })
    const warning = plan([home], tables, ON).households[0]?.warnings.find(({ subject }) => subject === 'd')
    expect(warning).toEqual({
      code: 'alarm-age-unknown',
      subject: 'd',
      say: expect.stringMatching(/^The smoke alarm’s age is not known\. Read the date on its back/),
    })
  })

  test('by the season: its start, its days or its hours', () => {
    const devices: Device[] = [{ id: 'd', kind: 'condensate-drain' }]
    const first = (task: Task, change: Partial<Household>) => reasonsOf(task, change)?.[0]
    expect(first('condensate-look', { devices, since: '2026-07-10' })).toEqual({
      say: 'Nothing is recorded about it yet.',
      mark: 'P',
    })
    const mild = { ...COLD, cdd65: 500, coolingDesignF: 84 }
    expect(
      first('condensate-look', { devices, climate: mild, records: [done('condensate-look', '2026-06-25')] })?.say,
    ).toBe('90 days after the last look, or the start of the cooling season.')
    const hot = { ...COLD, hdd65: 0, cdd65: 6500, heatingDesignF: 64, coolingDesignF: 90 }
    expect(
      first('condensate-look', { devices, climate: hot, records: [done('condensate-look', '2026-06-25')] })?.say,
    ).toBe('By then the cooling had run 500 hours since the last look, or the start of its season.')
    const pad: Device[] = [{ id: 'd', kind: 'humidifier' }]
    expect(first('humidifier-pad', { devices: pad, records: [done('humidifier-pad', '2026-01-10')] })?.say).toMatch(
      /^The heating season was expected from .* 2026\.$/,
    )
    const hard = { devices: pad, hardWater: true, records: [done('humidifier-pad', '2026-10-20')] }
    expect(first('humidifier-pad', hard)?.say).toBe('With hard water a pad lasts about 600 heating hours.')
    const unit = (on: string) => first('outdoor-unit-clear', { records: [done('outdoor-unit-clear', on, 'main')] })?.say
    expect(unit('2026-07-10')).toBe('Every 30 days while it runs.')
    expect(unit('2026-11-01')).toMatch(/^The cooling season is expected from .* 2027\.$/)
    expect(addDays('2026-07-10', 30)).toBe('2026-08-09')
  })

  test('by the season, as past once its day is past', () => {
    const on = (day: string, task: Task, change: Partial<Household>) => {
      const items = plan([bareHome({ climate: COLD, ...change })], tables, day).households[0]?.items ?? []
      return items.find((item) => item.task === task)
    }
    const tropical = { climate: TROPICAL, devices: [{ id: 'd', kind: 'condensate-drain' } satisfies Device] }
    const drained = { ...tropical, records: [done('condensate-look', '2026-06-25')] }
    const due = on('2026-06-26', 'condensate-look', drained)?.due ?? ''
    const hours = [addDays(due, -1), due, addDays(due, 1)].map(
      (day) => on(day, 'condensate-look', drained)?.reasons[0]?.say,
    )
    const run = (words: string) =>
      `By then the cooling ${words} 500 hours since the last look, or the start of its season.`
    expect(hours).toEqual([run('will have run'), run('had run'), run('had run')])

    const cleared = { records: [done('outdoor-unit-clear', '2025-11-01', 'main')] }
    const start = on('2026-02-01', 'outdoor-unit-clear', cleared)?.due ?? ''
    const season = [addDays(start, -1), start, addDays(start, 1), addDays(start, 150)].map(
      (day) => on(day, 'outdoor-unit-clear', cleared)?.reasons[0]?.say,
    )
    const said = (is: string) => `The cooling season ${is} expected from ${dateInWords(start)}.`
    expect(season).toEqual([said('is'), said('is'), said('was'), said('was')])
  })
})
