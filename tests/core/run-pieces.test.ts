import { describe, expect, test } from 'vitest'
import { dayNumber } from '@/lib/core/day'
import type { RunDays } from '@/lib/core/run-days'
import { type FanRule, knownDays, monthlyPieces, monthsOf } from '@/lib/core/run-pieces'
import { RUNS, type Run } from '@/lib/core/run-rows'

const FROM = dayNumber('2026-10-05')
const DAY = 86_400
const FURNACE: FanRule = { heatBlower: 1.07, coolBlows: true }

type Told = Partial<Record<Run, number>>

/** Days one after another: hours that ran, of so many seconds that are known, of a day so long. */
function daysOf(list: { ran: Told; known?: number; length?: number }[], fan: Partial<RunDays['fan']> = {}): RunDays {
  const of = (value: (one: (typeof list)[number]) => number) => Float64Array.from(list, value)
  const perRun = (value: (one: (typeof list)[number], run: Run) => number) =>
    Object.fromEntries(RUNS.map((run) => [run, of((one) => value(one, run))])) as Record<Run, Float64Array>
  return {
    ...{ from: FROM, step: 300, isChangeLog: false, negative: [], tooLong: [] },
    length: of(({ length = DAY }) => length),
    ran: perRun(({ ran }, run) => (ran[run] ?? 0) * 3600),
    known: perRun(({ ran, known = DAY }, run) => (ran[run] === undefined ? 0 : known)),
    fan: { withHeat: true, withCool: true, ...fan },
  }
}

function hoursOf(days: RunDays, rule = FURNACE, last = FROM + 30): (Told | null)[] {
  const known = knownDays(days, rule, last)
  return Array.from(days.length, (_, i) => known.get(FROM + i) ?? null)
}

describe('a day', () => {
  test('counts from nine tenths of it on, and what is missing is taken to be like the rest', () => {
    const at = (known: number, length?: number) =>
      hoursOf(daysOf([{ ran: { heat: 9 }, known, ...(length && { length }) }]))
    expect(at(DAY)).toEqual([{ heat: 9 }])
    expect(at(77_760)).toEqual([{ heat: 10 }])
    expect(at(77_759)).toEqual([null])
    // Of a day of 25 hours 22 and a half are enough, of one of 23 not twenty and a half.
    expect(at(81_000, 90_000)).toEqual([{ heat: 10 }])
    expect(at(80_999, 90_000)).toEqual([null])
    expect(at(73_800, 82_800)).toEqual([null])
  })

  test('has 24 hours at most, even that on which clocks go back', () => {
    expect(hoursOf(daysOf([{ ran: { heat: 25 }, known: 90_000, length: 90_000 }]))).toEqual([{ heat: 24 }])
    expect(hoursOf(daysOf([{ ran: { heat: 23 }, known: 82_800, length: 82_800 }]))).toEqual([{ heat: 23 }])
  })

  test('after the last that may count is left out, the last itself is not', () => {
    const days = daysOf([{ ran: { heat: 1 } }, { ran: { heat: 2 } }, { ran: { heat: 3 } }])
    expect(hoursOf(days, FURNACE, FROM + 1)).toEqual([{ heat: 1 }, { heat: 2 }, null])
    expect(hoursOf(days, FURNACE, FROM - 1)).toEqual([null, null, null])
  })

  test('tells of each run for itself', () => {
    expect(hoursOf(daysOf([{ ran: { heat: 0 } }, { ran: { cool: 2, fan: 3 } }, { ran: {} }]))).toEqual([
      { heat: 0 },
      { cool: 2, fan: 3 },
      null,
    ])
  })
})

describe('every hour of the blower', () => {
  const NOT_HEAT = { withHeat: false }
  const NOT_COOL = { withCool: false }
  test.each<[string, Told, Partial<RunDays['fan']>, FanRule, Told | null]>([
    ['is what was told, where that holds all', { heat: 4, cool: 2, fan: 7 }, {}, FURNACE, { heat: 4, cool: 2, fan: 7 }],
    ['whatever is unknown beside it', { fan: 7 }, {}, FURNACE, { fan: 7 }],
    ['adds heating and the blowing after it', { heat: 4, fan: 1 }, NOT_HEAT, FURNACE, { heat: 4, fan: 5.28 }],
    [
      'adds no heating that does not blow',
      { heat: 4, fan: 1 },
      NOT_HEAT,
      { ...FURNACE, heatBlower: 0 },
      { heat: 4, fan: 1 },
    ],
    ['asks for none of it either', { fan: 1 }, NOT_HEAT, { ...FURNACE, heatBlower: 0 }, { fan: 1 }],
    ['adds cooling', { cool: 3, fan: 1 }, NOT_COOL, FURNACE, { cool: 3, fan: 4 }],
    [
      'adds no cooling that does not blow',
      { cool: 3, fan: 1 },
      NOT_COOL,
      { ...FURNACE, coolBlows: false },
      { cool: 3, fan: 1 },
    ],
    ['asks for none of it either', { fan: 1 }, NOT_COOL, { ...FURNACE, coolBlows: false }, { fan: 1 }],
    [
      'adds both where it holds neither',
      { heat: 2, cool: 3, fan: 1 },
      { ...NOT_HEAT, ...NOT_COOL },
      { heatBlower: 1.5, coolBlows: true },
      { heat: 2, cool: 3, fan: 7 },
    ],
    ['is unknown where its heating is', { cool: 3, fan: 1 }, NOT_HEAT, FURNACE, { cool: 3 }],
    ['is unknown where its cooling is', { heat: 4, fan: 1 }, NOT_COOL, FURNACE, { heat: 4 }],
    ['leaves a day of which nothing else is told', { fan: 1 }, NOT_HEAT, FURNACE, null],
    ['has 24 hours a day', { heat: 20, fan: 4 }, NOT_HEAT, FURNACE, { heat: 20, fan: 24 }],
    ['is made of nothing where none was told', { heat: 4 }, NOT_HEAT, FURNACE, { heat: 4 }],
  ])('%s', (_, ran, fan, rule, wanted) => {
    const [hours] = hoursOf(daysOf([{ ran }], fan), rule)
    expect(hours && Object.fromEntries(Object.entries(hours).map(([run, of]) => [run, Number(of.toFixed(9))]))).toEqual(
      wanted,
    )
  })
})

describe('pieces of days', () => {
  const days = new Map(
    (
      [
        ['2026-10-02', { heat: 2, fan: 3 }],
        ['2025-12-31', { heat: 5 }],
        ['2026-09-29', { heat: 1.004 }],
        ['2026-09-30', { heat: 1.004 }],
        ['2026-10-01', { heat: 2, fan: 3 }],
        ['2026-10-03', { heat: 2 }],
        ['2026-10-04', { heat: 0 }],
        ['2026-10-06', { heat: 2 }],
        ['2026-10-07', { cool: 2 }],
        ['2026-10-08', { cool: 1, fan: 1 }],
      ] satisfies [string, Told][]
    ).map(([day, hours]) => [dayNumber(day), hours]),
  )

  test('end with the month, at a gap, and where other things are known', () => {
    const pieces = [
      { from: '2025-12-31', to: '2025-12-31', heatHours: 5 },
      { from: '2026-09-29', to: '2026-09-30', heatHours: 2.01 },
      { from: '2026-10-01', to: '2026-10-02', heatHours: 4, fanHours: 6 },
      { from: '2026-10-03', to: '2026-10-04', heatHours: 2 },
      { from: '2026-10-06', to: '2026-10-06', heatHours: 2 },
      { from: '2026-10-07', to: '2026-10-07', coolHours: 2 },
      { from: '2026-10-08', to: '2026-10-08', coolHours: 1, fanHours: 1 },
    ]
    expect(monthlyPieces(days)).toEqual(pieces)
    // The days stay as they were: asked again they say the same.
    expect(monthlyPieces(days)).toEqual(pieces)
  })

  test('of a month are one line of a table, in the order of months', () => {
    expect(monthsOf(days)).toEqual([
      { month: '2025-12', days: 1, piece: { heatHours: 5 } },
      { month: '2026-09', days: 2, piece: { heatHours: 2.01 } },
      { month: '2026-10', days: 7, piece: { heatHours: 8, coolHours: 3, fanHours: 7 } },
    ])
  })
})
