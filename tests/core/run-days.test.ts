import { describe, expect, test } from 'vitest'
import { type RowKind, runDays, type Together } from '@/lib/core/run-days'
import type { Run } from '@/lib/core/run-rows'
import { runTimes } from '@/lib/core/run-times'
import { type SomeRow, someRows } from '../support/thermostat/some-rows'

const HOME = 'America/Chicago'
const HOUR = 3600
const DAY = 24 * HOUR

interface Ways {
  fan?: 'auto' | 'all' | 'alone'
  runs?: Run[]
  several?: Run[]
  together?: Partial<Record<Run, Together>>
}

function daysOf(kind: RowKind, list: readonly SomeRow[], { fan = 'auto', together, ...columns }: Ways = {}) {
  const rows = someRows(list, columns)
  return runDays(rows, runTimes(rows, { zone: HOME, homeZone: HOME }), {
    ...{ kind, fan, together: { heat: 'longest', cool: 'longest', fan: 'longest', ...together } },
  })
}

/** Seconds of heating, of all days, and how many seconds are known of them. */
function heatOf(kind: RowKind, list: readonly SomeRow[], ways: Ways = {}): [ran: number[], known: number[]] {
  const days = daysOf(kind, list, ways)
  return [[...days.ran.heat], [...days.known.heat]]
}

/** Rows that begin so many seconds after midnight of Monday 5 October 2026. */
function rowsAt(seconds: readonly number[], of: (i: number) => Omit<SomeRow, 'date'>): SomeRow[] {
  const two = (value: number) => `${value}`.padStart(2, '0')
  return seconds.map((second, i) => {
    const date = new Date(Date.UTC(2026, 9, 5 + Math.floor(second / DAY))).toISOString().slice(0, 10)
    const time = [(second % DAY) / HOUR, (second % HOUR) / 60, second % 60].map(Math.floor).map(two).join(':')
    return { date, time, ...of(i) }
  })
}

function everySo(step: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => i * step)
}

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

describe('shares of a row’s time', () => {
  test('are taken of it, the whole at most; what is unknown stays so', () => {
    const heat = [0.5, 1, 1.2, Number.NaN, 100]
    const list = rowsAt(everySo(60, 5), (i) => ({ heat: heat[i] as number }))
    expect(heatOf('share', list)).toEqual([
      [30 + 60 + 60 + 60, 0],
      [240, 0],
    ])
    expect(daysOf('share', list).tooLong).toEqual([])
  })

  test('hold until the next row where it is late by half at most; seconds are those of the usual time', () => {
    const late = (by: number) => rowsAt([0, 600, 1200, 1800 + by, 2400 + by], () => ({ heat: 1 }))
    expect(heatOf('share', late(240))[1]).toEqual([3240, 0])
    expect(heatOf('share', late(300))[1]).toEqual([3300, 0])
    expect(heatOf('share', late(301))[1]).toEqual([3000, 0])
    expect(heatOf('seconds', late(240))[1]).toEqual([3000, 0])
    // A row that comes early ends the one before it.
    expect(heatOf('share', late(-60))[1]).toEqual([2940, 0])
    expect(heatOf('seconds', late(-60))[1]).toEqual([2940, 0])
  })
})

describe('a log of changes', () => {
  const at = [0, 7, 31, 50, 200].map((minute) => minute * 60)

  test('is one whose rows keep to no time: less than six in ten within a fifth of the usual one', () => {
    const isLog = (gaps: number[], kind: RowKind = 'share') => {
      let sum = 0
      return daysOf(
        kind,
        rowsAt([0, ...gaps.map((gap) => (sum += gap))], () => ({ heat: 1 })),
      ).isChangeLog
    }
    expect(isLog([600, 600, 480, 90, 5000])).toBe(false)
    expect(isLog([600, 600, 479, 90, 5000])).toBe(true)
    expect(isLog([600, 600, 720, 90, 5000])).toBe(false)
    expect(isLog([600, 600, 721, 90, 5000])).toBe(true)
    expect(isLog([600, 600, 90, 100, 110])).toBe(true)
    // Only of what is on or off: a thermostat that counts seconds writes at its times.
    expect(isLog([600, 600, 90, 100, 110], 'seconds')).toBe(false)
    // Two rows are no pattern.
    expect(isLog([3 * DAY])).toBe(false)
    expect(isLog([3 * DAY, 3 * DAY])).toBe(true)
  })

  test('says what holds until the next row, and nothing after its last', () => {
    const heat = [1, 0, 1, 0, 1]
    expect(
      heatOf(
        'share',
        rowsAt(at, (i) => ({ heat: heat[i] as number })),
      ),
    ).toEqual([
      [(7 + 19) * 60, 0],
      [200 * 60, 0],
    ])
  })

  test.each<[string, Omit<SomeRow, 'date'>, number, number]>([
    ['heating for a day is believed', { heat: 1, cool: 0, fan: 0 }, DAY, DAY],
    ['longer it is unknown', { heat: 1, cool: 0, fan: 0 }, DAY + 1, 0],
    ['so is cooling', { heat: 0, cool: 1, fan: 0 }, DAY + 1, 0],
    ['and the blower', { heat: 0, cool: 0, fan: 1 }, DAY + 1, 0],
    ['nothing for a week is believed', { heat: 0, cool: 0, fan: 0 }, 7 * DAY, 7 * DAY],
    ['longer it is unknown', { heat: 0, cool: 0, fan: 0 }, 7 * DAY + 1, 0],
    ['what is not told does not run', { heat: 0 }, 2 * DAY, 2 * DAY],
  ])('%s', (_, ran, lasts, known) => {
    const days = daysOf(
      'share',
      rowsAt([...at, 12_000 + lasts], (i) => (i === 4 ? ran : { heat: 0, cool: 0, fan: 0 })),
    )
    expect(days.isChangeLog).toBe(true)
    expect(days.known.heat.reduce((sum, one) => sum + one, 0)).toBe(12_000 + known)
  })

  test('counts for the blower only as long as something is known', () => {
    const ran = [
      { heat: 1, fan: 1 },
      { heat: 0, fan: 0 },
    ]
    // On for longer than a day, and the last row of all: both without the blower, and both unknown.
    const rows = rowsAt([...at, 12_000 + 2 * DAY], (i) => ran[i] ?? { heat: 1, fan: i < 4 ? 1 : 0 })
    const more = rows.slice(0, 1).concat(rows.slice(4))
    expect(daysOf('share', rows).isChangeLog).toBe(true)
    expect(daysOf('share', more)).toMatchObject({ isChangeLog: true, fan: { withHeat: true } })
  })
})

describe('rows of one time that differ', () => {
  const heatAt = (kind: RowKind, figures: number[], more: SomeRow[] = []) =>
    daysOf(kind, [...figures.map((heat) => ({ date: '2026-10-05', time: '00:00', heat })), ...more]).ran.heat[0]

  test('count by the larger figure, whatever is unknown beside it', () => {
    for (const figures of [
      [60, 90],
      [90, 60],
      [90, 60, 30],
      [Number.NaN, 90],
      [90, Number.NaN],
      [90, 90],
    ])
      expect(heatAt('seconds', figures)).toBe(90)
    const unknown = [Number.NaN, Number.NaN].map((heat) => ({ date: '2026-10-05', heat }))
    expect(heatOf('seconds', unknown)[1]).toEqual([0, 0])
  })

  test('in a log of changes count by the last that was written', () => {
    const later = rowsAt([420, 1860, 3000, 12_000], () => ({ heat: 0 }))
    expect(heatAt('share', [1, 0], later)).toBe(0)
    expect(heatAt('share', [0, 1], later)).toBe(420)
    // In a file from the latest back that is the one which stands first.
    const rows = (figures: number[]) => [
      ...later.toReversed(),
      ...figures.map((heat) => ({ date: '2026-10-05', time: '00:00', heat })),
    ]
    expect([daysOf('share', rows([1, 0])).ran.heat[0], daysOf('share', rows([0, 1])).ran.heat[0]]).toEqual([420, 0])
  })
})

test('columns of one run count by the longest, or by their sum where they take turns and there are several', () => {
  const list = rowsAt(everySo(300, 2), () => ({ heat: 100, cool: 40, added: { heat: 150 } }))
  const ran = (ways: Ways) => {
    const days = daysOf('seconds', list, ways)
    return [days.ran.heat[0], days.ran.cool[0]]
  }
  expect(ran({ several: ['heat'] })).toEqual([200, 80])
  expect(ran({ several: ['heat'], together: { heat: 'added' } })).toEqual([300, 80])
  expect(ran({ together: { heat: 'added', cool: 'added' } })).toEqual([200, 80])
})

describe.each([
  ['heat', 'cool', 'withHeat', 'withCool'],
  ['cool', 'heat', 'withCool', 'withHeat'],
] as const)('the blower’s figures, by what stands beside %sing', (run, other, its, others) => {
  const means = (rows: [ran: number, fan: number, beside?: number][], fan?: Ways['fan']) =>
    daysOf(
      'seconds',
      rowsAt(everySo(HOUR, rows.length), (i) => {
        const [ran, blower, beside = 0] = rows[i] as [number, number, number?]
        return { [run]: ran, fan: blower, [other]: beside }
      }),
      fan ? { fan } : {},
    ).fan[its]

  test.each<[string, [number, number, number?][], boolean]>([
    ['hold them where they cover half of it', [[1800, 900]], true],
    ['hold them not where they cover less', [[1800, 899]], false],
    [
      'hold them not where they are none',
      [
        [1800, 0],
        [0, 3600],
      ],
      false,
    ],
    [
      'are judged by all rows together',
      [
        [1800, 1800],
        [1800, 0],
      ],
      true,
    ],
    [
      'never count for more than ran',
      [
        [600, 3600],
        [3000, 0],
      ],
      false,
    ],
    [
      'are judged by rows in which it ran alone',
      [
        [1800, 1800],
        [3600, 0, 1800],
      ],
      true,
    ],
    [
      'and these only',
      [
        [1800, 0],
        [3600, 3600, 1800],
      ],
      false,
    ],
    [
      'are judged by rows that know of the blower',
      [
        [1800, 1800],
        [3600, Number.NaN],
      ],
      true,
    ],
    [
      'and of the run',
      [
        [1800, 1800],
        [Number.NaN, 0],
      ],
      true,
    ],
    ['whatever is known of the other', [[1800, 0, Number.NaN]], false],
    ['are taken to hold them where it never ran', [[0, 600]], true],
  ])('%s', (_, rows, holds) => {
    expect(means(rows)).toBe(holds)
    expect([means(rows, 'all'), means(rows, 'alone')]).toEqual([true, false])
  })

  test('say nothing of the other', () => {
    const rows = rowsAt(everySo(HOUR, 2), (i) => ({
      [i === 0 ? run : other]: 1800,
      [i === 0 ? other : run]: 0,
      fan: i * 1800,
    }))
    expect(daysOf('seconds', rows).fan).toEqual({ [its]: false, [others]: true })
  })
})

test('a file without a single date has no days', () => {
  const days = daysOf('seconds', [{ date: '2026-13-13', heat: 60 }])
  expect([days.from, [...days.length], [...days.known.heat], days.step]).toEqual([0, [DAY], [0], HOUR])
})
