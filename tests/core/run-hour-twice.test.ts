import { describe, expect, test } from 'vitest'
import type { RunTimes } from '@/lib/core/run-times'
import type { SomeRow } from '../support/thermostat/some-rows'
import { instants, rowsOf, timesOf } from '../support/thermostat/times-of'

describe('rows of the hour that comes twice', () => {
  const night = (time: string, heat?: number, more: Partial<SomeRow> = {}) => ({
    ...{ date: '2026-11-01', time, ...more },
    ...(heat !== undefined && { heat }),
  })
  const eve = (time: string, heat = 0) => night(time, heat, { date: '2026-10-31' })
  const [FIRST, SECOND] = ['2026-11-01T06:30', '2026-11-01T07:30']

  test.each<[string, SomeRow[], [string, number][]]>([
    ['one row is of the first hour', [night('01:30', 60)], [[FIRST, 1]]],
    [
      'two that differ are one of each',
      [night('01:30', 60), night('01:30', 90)],
      [
        [FIRST, 1],
        [SECOND, 1],
      ],
    ],
    [
      'so are two alike where no row stood before them',
      [night('01:30', 60), night('01:30', 60)],
      [
        [FIRST, 1],
        [SECOND, 1],
      ],
    ],
    [
      'and three alike, by turns',
      [60, 60, 60].map((heat) => night('01:30', heat)),
      [
        [FIRST, 2],
        [SECOND, 1],
      ],
    ],
    [
      'three kinds go by turns',
      [60, 70, 80].map((heat) => night('01:30', heat)),
      [
        [FIRST, 2],
        [SECOND, 1],
      ],
    ],
    [
      'rows of one kind stay together',
      [60, 90, 60].map((heat) => night('01:30', heat)),
      [
        [FIRST, 2],
        [SECOND, 1],
      ],
    ],
    [
      'another sum of columns is another kind',
      [night('01:30', 60, { added: { heat: 60 } }), night('01:30', 60, { added: { heat: 90 } })],
      [
        [FIRST, 1],
        [SECOND, 1],
      ],
    ],
    [
      'two alike are one of each where one stands two hours before',
      [eve('23:30'), night('01:30', 60), night('01:30', 60)],
      [
        ['2026-11-01T04:30', 1],
        [FIRST, 1],
        [SECOND, 1],
      ],
    ],
    [
      'in a file that says everything twice they are of the first hour',
      [eve('23:30'), eve('23:30'), night('01:30', 60), night('01:30', 60)],
      [
        ['2026-11-01T04:30', 2],
        [FIRST, 2],
      ],
    ],
    [
      'but two that differ are one of each',
      [eve('23:30'), eve('23:30'), night('01:30', 60), night('01:30', 90)],
      [
        ['2026-11-01T04:30', 2],
        [FIRST, 1],
        [SECOND, 1],
      ],
    ],
    [
      'and four alike are two of each',
      [eve('23:30'), eve('23:30'), ...[60, 60, 60, 60].map((heat) => night('01:30', heat))],
      [
        ['2026-11-01T04:30', 2],
        [FIRST, 2],
        [SECOND, 2],
      ],
    ],
    [
      'what stands two hours after says nothing of it',
      [night('01:30', 60), night('01:30', 60), night('03:30', 0), night('03:30', 0)],
      [
        [FIRST, 1],
        [SECOND, 1],
        ['2026-11-01T09:30', 2],
      ],
    ],
    [
      'each time of the hour for itself',
      [night('01:00', 60), night('01:30', 60), night('01:00', 90), night('01:30', 60)],
      [
        ['2026-11-01T06:00', 1],
        [FIRST, 1],
        ['2026-11-01T07:00', 1],
        [SECOND, 1],
      ],
    ],
  ])('%s', (_, list, wanted) => {
    const times = timesOf(list)
    const found = (of: RunTimes) => rowsOf(of).map((rows, i) => [instants(of)[i], rows.length])
    expect(found(times)).toEqual(wanted)
    expect(found(timesOf(list.toReversed()))).toEqual(wanted)
  })

  test('say the same of each hour from whichever end the file is written', () => {
    const list = [80, 60, 70].map((heat) => night('01:30', heat))
    const heats = (rows: SomeRow[]) => rowsOf(timesOf(rows)).map((those) => those.map((row) => rows[row]?.heat).sort())
    for (const rows of [list, list.toReversed(), [60, 70, 80].map((heat) => night('01:30', heat))])
      expect(heats(rows)).toEqual([[60, 80], [70]])
    // Those of a kind stay together.
    for (const kinds of [
      [60, 60, 90],
      [60, 90, 60],
      [90, 60, 60],
    ])
      expect(heats(kinds.map((heat) => night('01:30', heat)))).toEqual([[60, 60], [90]])
  })

  test('go by their own offset where they have one', () => {
    const both = [night('01:30', 60, { offset: -360 }), night('01:30', 60, { offset: -300 })]
    expect([instants(timesOf(both)), rowsOf(timesOf(both))]).toEqual([
      [FIRST, SECOND],
      [[1], [0]],
    ])
  })
})
