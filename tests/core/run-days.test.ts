import { describe, expect, test } from 'vitest'
import type { RowKind } from '@/lib/core/run-days'
import { DAY, daysOf, everySo, HOUR, heatOf, rowsAt } from '../support/thermostat/days-of'

describe('seconds of each row’s time', () => {
  test('add up by day, of each run for itself', () => {
    const days = daysOf(
      'seconds',
      rowsAt(everySo(300, 576), (i) => ({ heat: i < 288 ? 100 : 50, cool: 10, fan: 120 })),
    )
    expect(days.from).toBe(Date.UTC(2026, 9, 5) / 86_400_000)
    expect([days.step, days.isChangeLog, days.negative, days.tooLong]).toEqual([300, false, [], []])
    // A day more than there are rows of, for one that reaches over midnight.
    expect([...days.length]).toEqual([DAY, DAY, DAY])
    expect([days.ran.heat, days.ran.cool, days.ran.fan].map((of) => [...of])).toEqual([
      [28_800, 14_400, 0],
      [2880, 2880, 0],
      [34_560, 34_560, 0],
    ])
    for (const known of Object.values(days.known)) expect([...known]).toEqual([DAY, DAY, 0])
  })

  test('of a row over midnight belong to both days by their share of its time', () => {
    const heat = [1800, 1200, 600]
    const at = [22.5, 23.5, 24.5].map((hour) => hour * HOUR)
    expect(
      heatOf(
        'seconds',
        rowsAt(at, (i) => ({ heat: heat[i] as number })),
      ),
    ).toEqual([
      [2400, 1200, 0],
      [5400, 5400, 0],
    ])
    // The last row lasts as long as the others: half of it is tomorrow’s.
    expect(
      heatOf(
        'seconds',
        rowsAt(at.slice(0, 2), (i) => ({ heat: heat[i] as number })),
      ),
    ).toEqual([
      [2400, 600, 0],
      [5400, 1800, 0],
    ])
    const untilMidnight = rowsAt([22 * HOUR, 23 * HOUR], () => ({ heat: 0 }))
    expect(heatOf('seconds', untilMidnight)[1]).toEqual([2 * HOUR, 0])
  })

  test('that no row tells of are unknown, and so are those of a cell that cannot be read', () => {
    const at = [0, 1, 2, 5, 6].map((hour) => hour * HOUR)
    expect(
      heatOf(
        'seconds',
        rowsAt(at, (i) => (i === 1 ? {} : { heat: 600 })),
      ),
    ).toEqual([
      [2400, 0],
      [4 * HOUR, 0],
    ])
    const onlyCooling = daysOf(
      'seconds',
      rowsAt(at, () => ({ cool: 600 })),
      { runs: ['cool'] },
    )
    expect([onlyCooling.known.heat[0], onlyCooling.known.fan[0], onlyCooling.known.cool[0]]).toEqual([0, 0, 5 * HOUR])
  })

  test('are no more than a row’s time, and one that says so by more than a moment is named', () => {
    for (const run of ['heat', 'cool', 'fan'] as const) {
      const days = daysOf(
        'seconds',
        rowsAt(everySo(300, 4), (i) => ({ [run]: [300, 316, 317, 9000][i] as number })),
      )
      expect(days.tooLong).toEqual([2, 3])
      expect(days.ran[run][0]).toBe(1200)
    }
  })

  test('below none are named by their row and left out whole', () => {
    for (const run of ['heat', 'cool', 'fan'] as const) {
      const list = rowsAt(everySo(300, 4), (i) => ({ heat: 60, cool: 60, fan: 60, [run]: i === 1 ? -1 : 60 }))
      for (const [rows, row] of [
        [list, 1],
        [list.toReversed(), 2],
      ] as const) {
        const days = daysOf('seconds', rows)
        expect([days.negative, days.known.heat[0], days.ran.heat[0]]).toEqual([[row], 900, 180])
      }
    }
    const none = daysOf(
      'seconds',
      rowsAt(everySo(300, 2), () => ({ heat: 0, cool: 0, fan: 0 })),
    )
    expect(none.negative).toEqual([])
  })

  test('stand on days of 23 and of 25 hours as on any other', () => {
    const days = (date: string) => {
      const hours = Array.from({ length: 24 }, (_, i) => ({ date, time: `${i}:00`, heat: 60 }))
      const found = daysOf('seconds', hours)
      return [found.length[0], found.known.heat[0]]
    }
    // The row of an hour that comes twice is there once; that of the hour left out is the one after it again.
    expect(days('2026-11-01')).toEqual([25 * HOUR, 24 * HOUR])
    expect(days('2026-03-08')).toEqual([23 * HOUR, 23 * HOUR])
  })
})

describe('the usual time between rows', () => {
  test.each<[string, RowKind, number[], number]>([
    ['is the commonest', 'seconds', [600, 600, 600, 300], 600],
    ['wherever it stands', 'seconds', [300, 600, 900, 600], 600],
    ['is the shorter of two as common', 'seconds', [300, 300, 600, 600], 300],
    ['the longer coming first', 'seconds', [600, 600, 300, 300], 300],
    ['counts all of it, not what stands in a row', 'seconds', [600, 300, 600, 300, 900, 900, 600], 600],
    ['counts the last too', 'seconds', [300, 600, 600], 600],
    ['is an hour where there is one row', 'seconds', [], HOUR],
    ['is a day at most', 'seconds', [3 * DAY, 3 * DAY], DAY],
    ['of a list of days is a day', 'day', [], DAY],
    ['whatever days it leaves out', 'day', [3 * DAY, 3 * DAY], DAY],
  ])('%s', (_, kind, gaps, step) => {
    let at = 0
    const seconds = [0, ...gaps.map((gap) => (at += gap))]
    expect(
      daysOf(
        kind,
        rowsAt(seconds, () => ({ heat: 0 })),
      ),
    ).toMatchObject({ step, isChangeLog: false })
  })
})

describe('seconds of a whole day', () => {
  const days = (list: [date: string, heat: number][]) =>
    daysOf(
      'day',
      list.map(([date, heat]) => ({ date, heat })),
    )

  test('fill the day, be it of 23 or 25 hours, and leave other days unknown', () => {
    const found = days([
      ['2026-10-30', HOUR],
      ['2026-11-01', 25 * HOUR],
      ['2026-11-02', DAY],
    ])
    expect([...found.ran.heat]).toEqual([HOUR, 0, 25 * HOUR, DAY, 0])
    expect([...found.known.heat]).toEqual([DAY, 0, 25 * HOUR, DAY, 0])
    expect([found.step, found.isChangeLog, found.tooLong]).toEqual([DAY, false, []])
  })

  test('are too many beyond the day’s own length and a twentieth', () => {
    expect(days([['2026-10-30', 90_721]]).tooLong).toEqual([])
    expect(days([['2026-10-30', 90_722]]).tooLong).toEqual([0])
    expect(days([['2026-11-01', 94_501]]).tooLong).toEqual([])
    expect(days([['2026-11-01', 94_502]]).tooLong).toEqual([0])
    expect(days([['2026-10-30', 90_000]]).ran.heat[0]).toBe(DAY)
  })
})

test('a file without a single date has no days', () => {
  const days = daysOf('seconds', [{ date: '2026-13-13', heat: 60 }])
  expect([days.from, [...days.length], [...days.known.heat], days.step]).toEqual([0, [DAY], [0], HOUR])
})
