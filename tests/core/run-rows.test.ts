import { expect, test } from 'vitest'
import { RunRows } from '@/lib/core/run-rows'
import { someRows } from '../support/thermostat/some-rows'

test('rows far beyond the first room stand as they were entered', () => {
  const count = 20_000
  const rows = new RunRows(['heat', 'fan'], ['fan'])
  for (let i = 0; i < count; i++) {
    rows.add(i + 2, { date: -20_260_101 - i, second: i * 3, offset: (i % 1400) - 700 })
    rows.set('heat', i, Number.NaN)
    rows.set('fan', i / 2, i * 2)
  }
  expect(rows.count).toBe(count)
  const at = (i: number) => [rows.line[i], rows.date[i], rows.second[i], rows.offset[i], rows.longest.heat?.[i]]
  for (const i of [0, 1, 4095, 4096, 4097, 8191, 8192, 16_384, count - 1]) {
    expect(at(i)).toEqual([i + 2, -20_260_101 - i, i * 3, (i % 1400) - 700, i])
    expect([rows.longest.fan?.[i], rows.added.fan?.[i]]).toEqual([i / 2, i * 2])
  }
  // Twice the room each time: one row more does not take a room of its own.
  expect(rows.line).toHaveLength(32_768)
})

test('a run that no column tells of is not kept, and a sum only where a run has several columns', () => {
  const rows = someRows([{ date: '2026-10-05', heat: 60, cool: 30, added: { heat: 90 } }], { runs: ['heat'] })
  rows.set('cool', 30, 30)
  expect([Object.keys(rows.longest), Object.keys(rows.added), rows.longest.heat?.[0]]).toEqual([['heat'], [], 60])
})

test('where an empty cell means none, only what is not told becomes none, and only of that run', () => {
  const list = [
    { date: '2026-10-05', heat: 60 },
    { date: '2026-10-06', cool: 30, added: { heat: 5 } },
  ]
  const rows = someRows(list, { several: ['heat'] })
  rows.emptyIsNone('heat')
  expect([rows.longest.heat?.slice(0, 2), rows.added.heat?.slice(0, 2)].map((of) => [...(of ?? [])])).toEqual([
    [60, 0],
    [0, 5],
  ])
  expect([...(rows.longest.cool?.slice(0, 2) ?? [])]).toEqual([Number.NaN, 30])
  rows.emptyIsNone('cool')
  expect([...(rows.longest.cool?.slice(0, 2) ?? [])]).toEqual([0, 30])
})
