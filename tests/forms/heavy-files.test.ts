import { expect, test, vi } from 'vitest'
import { parseRoom } from '@/lib/forms/guide-brief-form'
import { FILE_LIMIT_BYTES, parseHouseholdFile } from '@/lib/forms/household-file'
import { parseRoundsQuery } from '@/lib/forms/rounds-query'
import { readUnitRow } from '@/lib/forms/unit-row'
import { readUnitsTable } from '@/lib/forms/units-table'
import { aHousehold } from '../support/a-household'
import { cpuTime } from '../support/cpu-time'

vi.setConfig({ testTimeout: 120_000 })

// Files as large as they may be, made to take as long as they can: one process answers everybody, and who keeps it busy
// for a minute keeps everybody out for a minute. The worst of these takes a few seconds of work.
const MOST_MS = 15_000
const ON = '2026-11-25'
const reading = { system: 'main', from: '2026-10-01', to: '2026-10-31', source: 'thermostat', heatHours: 1 }

/** A household file with a list filled up to the limit. */
function fileOf(list: string, one: unknown): string {
  const empty = JSON.stringify({ plenum: 1, households: [{ ...aHousehold(), [list]: ['#'] }] })
  const entry = JSON.stringify(one)
  const count = Math.floor((FILE_LIMIT_BYTES - empty.length) / (entry.length + 1)) - 1
  return empty.replace('"#"', Array(count).fill(entry).join(','))
}

function timed<T>(run: () => T): T {
  const start = cpuTime()
  const got = run()
  expect(cpuTime() - start).toBeLessThan(MOST_MS)
  return got
}

test.each([
  ['readings', reading, 'no day may be measured twice'],
  ['readings', { ...reading, source: 'guess', from: 'soon' }, 'must be one of thermostat'],
  ['records', { on: '2026-02-30', kind: 'filter-changed', filter: 'none' }, 'more faults than can be listed'],
  ['filters', { id: 'a' }, 'holds more than 200000 entries'],
  ['filters', { id: 'a', a: 0, b: 0, c: 0, d: 0, e: 0, f: 0 }, 'more faults than can be listed'],
  ['filters', aHousehold().filters[0], 'is also the id of another'],
  ['devices', 0, 'holds more than 200000 entries'],
])('a household file full of %s like %j is refused in words, and in time', (list, one, say) => {
  const read = timed(() => parseHouseholdFile(fileOf(list, one), ON))
  expect(read.ok ? [] : [...new Set(read.faults.map((fault) => fault.say))].slice(0, 20)).toContainEqual(
    expect.stringContaining(say),
  )
})

test('brackets in brackets without end are refused without going into them', () => {
  for (const [open, close] of [
    ['[', ']'],
    ['{"a":', '}'],
  ] as const)
    for (const text of [open.repeat(1_500_000), `${open.repeat(500_000)}1${close.repeat(500_000)}`])
      expect(timed(() => parseHouseholdFile(text, ON)).ok).toBe(false)
})

test('a key that every object has is a key like any other, and changes no other object', () => {
  for (const key of ['__proto__', 'constructor', 'prototype', 'toString']) {
    const text = `{"plenum":1,"${key}":{"polluted":1},"households":[{"${key}":{"polluted":1}}]}`
    const read = parseHouseholdFile(text, ON)
    expect(read.ok ? [] : read.faults.map(({ path }) => path)).toContain(key)
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  }
})

test('a sheet of as many rows as fit into it is refused before all of them are read', () => {
  const read = timed(() => readUnitsTable(`Building,Unit\n${'a,b\n'.repeat(990_000)}`))
  expect(read.ok ? [] : read.faults.map(({ say }) => say)).toEqual([expect.stringContaining('more than 20000 rows')])
})

test('a cell, a temperature and closed days of a million blanks are refused in time', () => {
  const long = `1${' '.repeat(1_000_000)}1`
  const matching = ['building', 'unit', 'size-1', 'changed-1', 'accessNote', 'heat'] as const
  const options = { today: ON, order: 'unknown' } as const
  expect(timed(() => readUnitRow(['B', 'U', long, long, long, long], [...matching], options)).unit).toBeNull()
  expect(timed(() => parseRoom(long)).ok).toBe(false)
  expect(timed(() => parseRoundsQuery({ closed: long })).faults).toHaveLength(1)
})
