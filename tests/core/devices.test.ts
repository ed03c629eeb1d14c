import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import type { Device, LogRecord, Task } from '@/lib/core/household'
import { plan } from '@/lib/core/plan'
import { bareHome, itemOf } from '../support/plan-of'

const ON = '2026-11-25'

function replace(device: Omit<Device, 'id'>, records: LogRecord[] = []) {
  return itemOf(bareHome({ devices: [{ id: 'd', ...device }], records }), 'alarm-replace', ON)
}

function done(task: Task, on: string): LogRecord {
  return { on, kind: 'service-done', task, subject: 'd' }
}

describe('an alarm is replaced', () => {
  test('ten years after it was made, if it tells smoke (NFPA 72) [S]', () => {
    expect(replace({ kind: 'smoke-alarm', made: '2017-02-14' })).toMatchObject({
      earliest: '2026-11-16',
      due: '2027-02-14',
      latest: '2027-02-14',
      basis: 'age',
      state: 'later',
    })
    // Made on a leap day, it is ten years old on the last of February.
    expect(replace({ kind: 'smoke-alarm', made: '2016-02-29' })?.due).toBe('2026-02-28')
  })

  test('at the end of life printed on it, if it tells carbon monoxide, else seven years after it was made', () => {
    expect(replace({ kind: 'co-alarm', made: '2019-01-01', endOfLife: '2028-05-01' })?.due).toBe('2028-05-01')
    expect(replace({ kind: 'co-alarm', made: '2019-01-01', endOfLife: '2024-05-01' })?.due).toBe('2024-05-01')
    expect(replace({ kind: 'co-alarm', made: '2020-03-01' })?.due).toBe('2027-03-01')
  })

  test('never after the day: the next day it is overdue', () => {
    const alarm = { kind: 'smoke-alarm', made: '2016-11-25' } as const
    expect(replace(alarm)?.state).toBe('due')
    expect(itemOf(bareHome({ devices: [{ id: 'd', ...alarm }] }), 'alarm-replace', '2026-11-26')?.state).toBe('overdue')
  })

  test('anew from the day it was replaced, until the new one’s own dates are entered', () => {
    const records = [done('alarm-replace', '2026-10-01')]
    expect(replace({ kind: 'smoke-alarm', made: '2016-09-01' }, records)?.due).toBe('2036-10-01')
    expect(replace({ kind: 'co-alarm', made: '2019-01-01', endOfLife: '2026-09-01' }, records)?.due).toBe('2033-10-01')
    expect(replace({ kind: 'co-alarm', made: '2026-10-02', endOfLife: '2036-10-01' }, records)?.due).toBe('2036-10-01')
  })

  test('by its own dates where it is newer than what was recorded, and by the recorded day where it has none', () => {
    const records = [done('alarm-replace', '2026-10-01')]
    expect(replace({ kind: 'smoke-alarm' }, records)?.due).toBe('2036-10-01')
    expect(replace({ kind: 'smoke-alarm', made: '2026-10-02' }, records)?.due).toBe('2036-10-02')
    // An end of life after that day is the new one's; one on that day or before was the old one's.
    expect(replace({ kind: 'co-alarm', made: '2019-01-01', endOfLife: '2030-01-01' }, records)?.due).toBe('2030-01-01')
    expect(replace({ kind: 'co-alarm', made: '2019-01-01', endOfLife: '2026-10-01' }, records)?.due).toBe('2033-10-01')
    expect(replace({ kind: 'co-alarm', made: '2026-10-10', endOfLife: '2026-09-30' }, records)?.due).toBe('2026-09-30')
    expect(replace({ kind: 'co-alarm', made: '2019-01-01' }, records)?.due).toBe('2033-10-01')
  })

  test('at a printed end of life alone, if that is all that is known of one that tells smoke', () => {
    expect(replace({ kind: 'smoke-alarm', endOfLife: '2028-01-01' })?.due).toBe('2028-01-01')
    expect(replace({ kind: 'smoke-alarm', made: '2020-01-01', endOfLife: '2028-01-01' })?.due).toBe('2028-01-01')
    expect(replace({ kind: 'smoke-alarm', made: '2016-01-01', endOfLife: '2028-01-01' })?.due).toBe('2026-01-01')
  })

  test('and says that it cannot know, where neither age nor end of life is given', () => {
    expect(replace({ kind: 'smoke-alarm' })).toBeUndefined()
    const home = bareHome({ devices: [{ id: 'd', kind: 'smoke-alarm' }] })
    const warnings = plan([home], tables, ON).households[0]?.warnings
    expect(warnings?.find((w) => w.subject === 'd')?.code).toBe('alarm-age-unknown')
  })

  test('and warns of no alarm whose age is known, nor of what has no age', () => {
    const dated: Device[] = [
      { id: 'd', kind: 'hrv' },
      { id: 'hall', kind: 'smoke-alarm', made: '2020-01-01' },
      { id: 'den', kind: 'co-alarm', endOfLife: '2028-01-01' },
    ]
    const codes = plan([bareHome({ devices: dated })], tables, ON).households[0]?.warnings.map(({ code }) => code)
    const without = plan([bareHome()], tables, ON).households[0]?.warnings.map(({ code }) => code)
    expect(codes).toEqual(without)
  })
})

describe('a look that goes by the calendar', () => {
  test.each([
    ['smoke-alarm', 'alarm-test', '2026-12-20', '2026-12-13', '2026-12-23'],
    ['hrv', 'ventilator-hoods', '2027-02-18', '2027-01-27', '2027-02-27'],
    ['erv', 'ventilator-core', '2027-05-19', '2027-04-04', '2027-06-06'],
    ['water-heater-gas', 'water-heater-look', '2027-11-20', '2027-08-21', '2027-12-26'],
  ] as const)('%s: %s', (kind, task, due, earliest, latest) => {
    const home = bareHome({ devices: [{ id: 'd', kind }], records: [done(task, '2026-11-20')] })
    expect(itemOf(home, task)).toEqual({
      due,
      earliest,
      latest,
      basis: 'calendar',
      doer: 'resident',
      state: 'later',
    })
  })

  test('never recorded is due on the day the home was first described, or on the day itself without one', () => {
    const devices: Device[] = [{ id: 'd', kind: 'hrv' }]
    expect(itemOf(bareHome({ devices }), 'ventilator-hoods')).toMatchObject({
      due: '2026-09-01',
      earliest: '2026-08-10',
      latest: '2026-09-10',
      basis: 'never-recorded',
      state: 'overdue',
    })
    expect(itemOf(bareHome({ devices, since: undefined }), 'ventilator-hoods')).toMatchObject({ due: ON, state: 'due' })
  })

  test('counts from the last of several records', () => {
    const records = [done('alarm-test', '2026-11-20'), done('alarm-test', '2026-10-01')]
    const home = bareHome({ devices: [{ id: 'd', kind: 'co-alarm' }], records })
    expect(itemOf(home, 'alarm-test')?.due).toBe('2026-12-20')
  })
})
