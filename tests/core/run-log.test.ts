import { describe, expect, test } from 'vitest'
import type { RowKind } from '@/lib/core/run-days'
import { DAY, daysOf, everySo, heatOf, rowsAt } from '../support/thermostat/days-of'
import type { SomeRow } from '../support/thermostat/some-rows'

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
