import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  cycleOf,
  cyclePlace,
  cycleThrough,
  firstDay,
  firstReaching,
  weightedThrough,
  yearOf,
  yearPlace,
} from '@/lib/core/cycle'
import { dayNumber, dayOfYear, dayText } from '@/lib/core/day'

/** A year of which every day has a value of its own: its place and one. */
const YEAR = Float64Array.from({ length: 365 }, (_, i) => i + 1)
const CYCLE = cycleOf(YEAR)
const FLAT = cycleOf(new Float64Array(365).fill(2))
const LAST = dayNumber('2099-12-31')

describe('a quantity that repeats with the climate', () => {
  test('has on each day from 1901 to 2099 the value of its day of the year, 29 February that of the 28th', () => {
    for (let day = dayNumber('1901-01-02'); day <= LAST; day += 5) {
      const value = dayOfYear(dayText(day))
      expect(cycleThrough(CYCLE, day) - cycleThrough(CYCLE, day - 1)).toBe(value)
      expect(yearPlace(day)).toBe(value - 1)
      expect(yearOf(day)).toBe(Number(dayText(day).slice(0, 4)))
    }
    const leap = dayNumber('2028-02-29')
    expect([-1, 0, 1].map((more) => cycleThrough(CYCLE, leap + more) - cycleThrough(CYCLE, leap + more - 1))).toEqual([
      59, 59, 60,
    ])
    for (const day of ['2027-12-31', '2028-01-01', '2028-12-31', '2029-01-01'])
      expect([yearOf(dayNumber(day)), yearPlace(dayNumber(day))]).toEqual([
        Number(day.slice(0, 4)),
        day.endsWith('31') ? 364 : 0,
      ])
  })

  test('goes on before 1901 and after 2099, a day beside the calendar at most', () => {
    for (const year of [1890, 1899, 1900, 2100, 2101, 2110])
      for (const end of ['01-01', '02-28', '07-01', '12-31']) {
        const day = dayNumber(`${year}-${end}`)
        const place = dayOfYear(`${year}-${end}`) - 1
        expect([-1, 0, 1].map((more) => (place + more + 365) % 365)).toContain(yearPlace(day))
        expect(cycleThrough(CYCLE, day) - cycleThrough(CYCLE, day - 1)).toBe(yearPlace(day) + 1)
        expect(yearOf(day)).toBe(year)
        expect(cyclePlace(day)).toBe(cyclePlace(day + 1461 * 30))
      }
  })

  test('comes to 365 or 366 days of it in a year, and two of them weighted to their weighted sum', () => {
    const whole = (year: number) => [dayNumber(`${year - 1}-12-31`), dayNumber(`${year}-12-31`)] as const
    for (const [year, sum] of [
      [2027, (365 * 366) / 2],
      [2028, (365 * 366) / 2 + 59],
      [2029, (365 * 366) / 2],
    ] as const) {
      const [before, end] = whole(year)
      expect(cycleThrough(CYCLE, end) - cycleThrough(CYCLE, before)).toBe(sum)
      const weighted = (day: number) => weightedThrough(CYCLE, 3, FLAT, 0.5, day)
      expect(weighted(end) - weighted(before)).toBe(3 * sum + (year === 2028 ? 366 : 365))
    }
  })
})

describe('the first day', () => {
  test('of a condition that stays is found between two days, both included, or none is', () => {
    for (let from = 0; from < 6; from++)
      for (let to = 0; to < 12; to++)
        for (let begins = 0; begins < 14; begins++) {
          const days = Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i)
          const wanted = days.find((day) => day >= begins) ?? null
          expect(firstDay(from, to, (day) => day >= begins)).toBe(wanted)
        }
  })

  test('by which a rising sum reaches a goal is the one that counting finds, whatever the steps', () => {
    const steps = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 5 }), fc.constant(500)), {
      minLength: 2,
      maxLength: 60,
    })
    fc.assert(
      fc.property(steps, fc.nat(1000), fc.nat(59), (each, share, start) => {
        let sum = 0
        const sums = each.map((step) => {
          sum += step
          return sum
        })
        const to = sums.length - 1
        const from = Math.min(start, to)
        const atEnd = sums[to] as number
        const goal = (atEnd * share) / 1000
        const wanted = sums.findIndex((reached, day) => day >= from && reached >= goal)
        expect(firstReaching((day) => sums[day] as number, goal, from, to, atEnd)).toBe(wanted)
      }),
      { seed: 3, numRuns: 500 },
    )
  })

  test('is the last one where the search begins at it or after it', () => {
    expect(firstReaching((day) => day, 3, 7, 5, 5)).toBe(5)
    expect(firstReaching((day) => day, 3, 5, 5, 5)).toBe(5)
    expect(firstReaching((day) => day, 3, 3, 9, 9)).toBe(3)
    expect(firstReaching((day) => day, 3, 0, 9, 9)).toBe(3)
  })
})
