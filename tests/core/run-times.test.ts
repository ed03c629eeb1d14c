import { describe, expect, test } from 'vitest'
import type { DateOrder } from '@/lib/core/run-rows'
import type { SomeRow } from '../support/thermostat/some-rows'
import { HOME, instants, rowsOf, timesOf } from '../support/thermostat/times-of'

describe('of two numbers of a date', () => {
  test.each<[string, number[], DateOrder, boolean, number]>([
    ['13 can only be a day: month first', [20_260_913], 'month-first', false, 0],
    ['13 can only be a day: day first', [20_261_309], 'day-first', false, 0],
    ['the order with fewer dates that do not exist holds', [20_260_913, 20_261_309, 20_261_409], 'day-first', false, 1],
    [
      'a day of many rows is one date',
      Array(5).fill(20_260_913).concat([20_261_309, 20_261_409]),
      'day-first',
      false,
      5,
    ],
    ['a few days of a month are likelier than a day of many months', [20_260_102, 20_260_105], 'month-first', true, 0],
    ['the same with the day first', [20_260_201, 20_260_501], 'day-first', true, 0],
    ['the same from the latest back', [20_260_501, 20_260_401, 20_260_201], 'day-first', true, 0],
    ['they begin on the same day and end on another', [20_260_101, 20_260_201], 'day-first', true, 0],
    ['they end on the same day and begin on another', [20_260_201, 20_260_303], 'month-first', true, 0],
    ['two alike may stand either way', [20_260_303], 'month-first', false, 0],
    ['of a single date nothing tells', [20_260_201], 'month-first', true, 0],
    ['where the year stands first the month follows', [-20_260_201, -20_260_501], 'month-first', false, 0],
    ['and 13 is no month', [-20_260_201, -20_261_301], 'month-first', false, 1],
  ])('%s', (_, dates, order, isOrderGuessed, noDate) => {
    expect(timesOf(dates.map((date) => ({ date })))).toMatchObject({ order, isOrderGuessed, noDate })
  })

  test('what a person chose is no guess, and says nothing of a date with the year first', () => {
    const dates = [{ date: 20_260_201 }, { date: '2026-02-01' }]
    const times = timesOf(dates, { order: 'day-first' })
    expect(times).toMatchObject({ order: 'day-first', isOrderGuessed: false, noDate: 0 })
    expect(instants(times)).toEqual(['2026-01-02T06:00', '2026-02-01T06:00'])
    expect(instants(timesOf(dates, { order: 'month-first' }))).toEqual(['2026-02-01T06:00'])
  })
})

test('only days whose clock can be looked up exist: 5 January 1901 to 27 December 2099; others are counted and left out', () => {
  const exists = (date: string, zone: string) => timesOf([{ date, time: '23:00' }], { zone }).at.length
  for (const zone of [HOME, 'UTC']) {
    for (const date of ['1901-01-05', '2028-02-29', '2026-12-31', '2099-12-27'])
      expect([date, exists(date, zone)]).toEqual([date, 1])
    for (const date of [
      '1901-01-04',
      '2099-12-28',
      '2026-02-29',
      '2026-04-31',
      '2026-12-32',
      '2026-01-00',
      '2026-00-10',
    ])
      expect([date, exists(date, zone), timesOf([{ date }]).noDate]).toEqual([date, 0, 1])
  }
})

describe('an instant', () => {
  test('is read by the offset of its stamp, else by UTC, else by the clock of the home', () => {
    const noon = { date: '2026-07-15', time: '12:00' }
    const stamped = [{ ...noon, offset: 330 }, { ...noon, offset: -480 }, noon]
    expect(instants(timesOf(stamped))).toEqual(['2026-07-15T06:30', '2026-07-15T17:00', '2026-07-15T20:00'])
    expect(instants(timesOf(stamped, { zone: 'UTC' }))).toEqual([
      '2026-07-15T06:30',
      '2026-07-15T12:00',
      '2026-07-15T20:00',
    ])
    const times = timesOf([{ date: '2026-07-15', time: '04:59' }], { zone: 'UTC' })
    // Days are those of the home: five hours behind, there it is still the day before.
    expect(times.clock.dayOf(times.at[0] as number)).toBe(Date.UTC(2026, 6, 14) / 86_400_000)
  })

  test('keeps the clock of its own season, whichever end of the file it stands at', () => {
    const list = ['1967-07-15', '1968-01-15', '2026-01-15', '2026-07-15'].map((date) => ({ date }))
    const wanted = ['1967-07-15T05:00', '1968-01-15T06:00', '2026-01-15T06:00', '2026-07-15T05:00']
    for (const rows of [list, list.toReversed()]) {
      expect(instants(timesOf(rows))).toEqual(wanted)
      expect(instants(timesOf(rows.filter(({ date }) => date < '1970')))).toEqual(wanted.slice(0, 2))
      expect(instants(timesOf(rows.filter(({ date }) => date > '1970')))).toEqual(wanted.slice(2))
    }
  })

  test('in the hour that clocks leave out is so long after the change, and is counted', () => {
    const spring = ['01:59', '02:00', '02:30', '03:00'].map((time) => ({ date: '2026-03-08', time }))
    const times = timesOf(spring)
    expect([instants(times), times.leftOut]).toEqual([['2026-03-08T07:59', '2026-03-08T08:00', '2026-03-08T08:30'], 2])
    // At three the clock stands at the change itself: the same instant as two, which it never showed.
    expect(rowsOf(times)).toEqual([[0], [1, 3], [2]])
    expect(timesOf(spring, { zone: 'UTC' }).leftOut).toBe(0)
  })
})

describe('rows of one time', () => {
  const at = (time: string, heat: number, sum = heat) => ({ date: '2026-10-05', time, heat, added: { heat: sum } })

  test('are one instant; each row more repeats it, and it contradicts itself once at most', () => {
    const count = (list: SomeRow[]) => {
      const { repeated, contradicting } = timesOf(list)
      return [repeated, contradicting]
    }
    expect(count([at('10:00', 1), at('10:05', 2)])).toEqual([0, 0])
    expect(count([at('10:00', 1), at('10:05', 2), at('10:00', 1)])).toEqual([1, 0])
    expect(count([at('10:00', 1), at('10:00', 1), at('10:00', 2)])).toEqual([2, 1])
    expect(count([at('10:00', 1), at('10:00', 2), at('10:00', 3)])).toEqual([2, 1])
    expect(count([at('10:00', 1), at('10:00', 2), at('10:05', 1), at('10:05', 2)])).toEqual([2, 2])
    expect(count([at('10:00', 1), at('10:05', 1), at('10:05', 2)])).toEqual([1, 1])
    expect(count([at('10:00', 1, 1), at('10:00', 1, 2)])).toEqual([1, 1])
    expect(count([at('10:00', 1, 2), at('10:00', 2, 2)])).toEqual([1, 1])
    // What is unknown twice is the same twice.
    expect(count([at('10:00', Number.NaN), at('10:00', Number.NaN)])).toEqual([1, 0])
    expect(count([at('10:00', Number.NaN), at('10:00', 0)])).toEqual([1, 1])
    const one = { date: '2026-10-05', cool: 5 }
    expect(count([one, { ...one, fan: 5 }])).toEqual([1, 1])
  })

  test('stand in the order of the file, those of other times in the order of time', () => {
    const times = timesOf([at('10:10', 1), at('10:00', 2), at('10:05', 3), at('10:00', 4)])
    expect([instants(times), rowsOf(times)]).toEqual([
      ['2026-10-05T15:00', '2026-10-05T15:05', '2026-10-05T15:10'],
      [[1, 3], [2], [0]],
    ])
    expect([...times.start]).toEqual([0, 2, 3, 4])
  })
})

test('a file goes forward unless its last time stands first', () => {
  const list = ['2026-10-05', '2026-10-06', '2026-10-07'].map((date) => ({ date }))
  expect(timesOf(list).isForward).toBe(true)
  expect(timesOf(list.slice(0, 1)).isForward).toBe(true)
  expect(timesOf(list.toReversed()).isForward).toBe(false)
  expect(timesOf([list[2], list[0], list[1]] as SomeRow[]).isForward).toBe(false)
  expect(timesOf([list[1], list[0], list[2]] as SomeRow[]).isForward).toBe(true)
})

test('a file without a single date has no times', () => {
  const none = { repeated: 0, contradicting: 0, isForward: true, leftOut: 0 }
  for (const list of [[], [{ date: '2026-13-13' }]]) {
    const times = timesOf(list)
    expect(times).toMatchObject({ ...none, noDate: list.length })
    expect([times.at.length, [...times.start]]).toEqual([0, [0]])
  }
})
