import { describe, expect, test } from 'vitest'
import { daysOf, everySo, HOUR, rowsAt, type Ways } from '../support/thermostat/days-of'

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
