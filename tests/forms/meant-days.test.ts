import { expect, test } from 'vitest'
import type { Fault } from '@/lib/core/fault'
import { readBills } from '@/lib/forms/bill-form'
import { parseClearance } from '@/lib/forms/clearance-form'
import { Answers, type DescribeTables, type Typed } from '@/lib/forms/describe/answers'
import { applyPart } from '@/lib/forms/describe/apply'
import { readDevices } from '@/lib/forms/describe/devices'
import { readWhen } from '@/lib/forms/describe/when'
import { readHappened } from '@/lib/forms/happened-form'
import { readHours } from '@/lib/forms/hours-form'
import { readMeter } from '@/lib/forms/meter-form'
import { parseRecordForm } from '@/lib/forms/record-form'
import { parseTicked } from '@/lib/forms/ticked-form'
import { aHousehold } from '../support/a-household'

// Days that a person typed and cannot have meant. What a file may name is wider: tests/core/edges.

const ON = '2026-11-25'
const { systems } = aHousehold()

function sent(fields: Record<string, string>): FormData {
  const form = new FormData()
  for (const [name, value] of Object.entries(fields)) form.set(name, value)
  return form
}

const faultsOf = (read: { ok: true } | { ok: false; faults: Fault[] }) => (read.ok ? [] : read.faults)
const pathsOf = (read: Parameters<typeof faultsOf>[0]) => faultsOf(read).map(({ path }) => path)

test('what is recorded lies between 1950 and today', () => {
  const record = (on: string) =>
    parseRecordForm(sent({ task: 'heating-service', subject: 'main', on, by: 'technician' }), ON)
  expect(['1950-01-01', '2026-11-25'].map((on) => record(on).ok)).toEqual([true, true])
  expect(faultsOf(record('1901-01-01'))).toEqual([
    { path: 'on', say: 'Look at the year: days before 1950-01-01 are not kept here.' },
  ])
  expect(faultsOf(record('1949-12-31'))).toHaveLength(1)
  expect(faultsOf(record('2026-11-26'))[0]?.say).toContain('today is 2026-11-25')

  const ticked = (on: string) => parseTicked(sent({ did: 'home/alarm-test/co1', on, once: 'once-and-for-all' }))
  expect([ticked('1949-12-31'), ticked('1950-01-01')].map(pathsOf)).toEqual([['on'], []])
  const cleared = (on: string) =>
    parseClearance(sent({ what: 'cleared', on, who: 'The fire crew', professional: 'yes' }), {
      today: ON,
      lastFault: null,
    })
  expect([cleared('1949-12-31'), cleared('1950-01-01')].map(pathsOf)).toEqual([['on'], []])
})

test('an alarm was made between 1950 and today, and ends within twenty years; all its faults are said at once', () => {
  const alarm = (made: string, end: string): Typed => ({
    'alarm-0': ['smoke-alarm'],
    'alarm-0-made': [made],
    'alarm-0-end': [end],
  })
  expect(readDevices(alarm('2026-11-25', '2046-11-25'), ON)).toEqual({
    ok: true,
    value: [{ id: 'smoke-alarm', kind: 'smoke-alarm', made: '2026-11-25', endOfLife: '2046-11-25' }],
  })
  expect(faultsOf(readDevices(alarm('2091-03-01', '2099-03-01'), ON))).toEqual([
    { path: 'alarm-0-made', say: 'Look at the year: it cannot have been made after today (2026-11-25).' },
    { path: 'alarm-0-end', say: expect.stringContaining('more than 20 years from now') },
  ])
  expect(pathsOf(readDevices(alarm('1901-03-01', '1911-03-01'), ON))).toEqual(['alarm-0-made', 'alarm-0-end'])
  // Changed in a home that stands, it is asked the same.
  const part = { group: 'devices', subject: '', remove: false } as const
  const tables: DescribeTables = { stations: [], zones: [], commonSizes: [] }
  expect(pathsOf(applyPart(aHousehold(), part, alarm('2091-03-01', ''), { tables, on: ON }))).toEqual(['alarm-0-made'])
})

test('what was measured, and what happened, began in 1950 or later', () => {
  const span = { from: ['1949-12-31'], to: ['1950-01-31'] }
  const [from, to] = [span.from, span.to]
  const row = { system: ['main'], 'from-0': from, 'to-0': to }
  expect(pathsOf(readHours({ ...row, 'heatHours-0': ['3'] }, systems, ON))).toEqual(['from-0'])
  expect(pathsOf(readBills({ ...row, unit: ['therm'], 'amount-0': ['9'] }, aHousehold(), ON))).toEqual(['from-0'])
  const stands = { 'day-0': from, 'stand-0': ['1'], 'day-1': to, 'stand-1': ['2'] }
  expect(pathsOf(readMeter({ system: ['main'], quantity: ['heatHours'], ...stands }, systems, ON))).toContain('day-0')
  expect(pathsOf(readHappened({ what: ['smoke'], ...span }, 'us'))).toEqual(['from'])
})

test('about how long ago something was done reaches back to 1950 as well', () => {
  const when = (ago: string, unit: string) => {
    const answers = new Answers({ changed: ['ago'], 'changed-ago': [ago], 'changed-unit': [unit] })
    return readWhen(answers, 'changed', ON) ?? answers.faults.map(({ path }) => path)
  }
  expect([when('76', 'years'), when('400', 'months'), when('400', 'weeks'), when('400', 'days')]).toEqual([
    ...['1950-11-25', '1993-07-25', '2019-03-27', '2025-10-21'],
  ])
  expect([when('77', 'years'), when('400', 'years')]).toEqual([['changed-ago'], ['changed-ago']])
})
