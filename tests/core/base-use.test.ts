import { expect, test } from 'vitest'
import { type BillDays, baseUseADay, daysOf, isSummerLarger } from '@/lib/core/base-use'

/** A bill of June's thirty days, 60 units, with no hour of heating or cooling. */
function bill(change: Partial<BillDays> = {}): BillDays {
  return { from: '2026-06-01', to: '2026-06-30', amount: 60, modelHeatHours: 0, modelCoolHours: 0, ...change }
}

const WINTER = bill({ from: '2026-01-01', to: '2026-01-31', amount: 310, modelHeatHours: 248 })
const ALONE = { coolingCounts: false }
const WITH_COOLING = { coolingCounts: true }

test('both days of a bill count', () => {
  expect(daysOf({ from: '2026-06-01', to: '2026-06-30' })).toBe(30)
  expect(daysOf({ from: '2026-06-01', to: '2026-06-01' })).toBe(1)
})

test('what a home uses a day beside heating is the middle of its bills without heating', () => {
  expect(baseUseADay([bill(), WINTER], ALONE)).toBe(2)
  // 30, 60 and 300 in thirty days: the middle one, whichever order they come in.
  expect(baseUseADay([bill({ amount: 300 }), bill({ amount: 30 }), bill()], ALONE)).toBe(2)
  // Of two it is half-way between.
  expect(baseUseADay([bill({ amount: 90 }), bill({ amount: 30 })], ALONE)).toBe(2)
  expect(
    baseUseADay([bill({ amount: 120 }), bill({ amount: 30 }), bill({ amount: 60 }), bill({ amount: 90 })], ALONE),
  ).toBe(2.5)
})

test('a bill with a quarter of an hour of heating a day, or more, tells nothing of it', () => {
  expect(baseUseADay([bill({ modelHeatHours: 7.4 })], ALONE)).toBe(2)
  expect(baseUseADay([bill({ modelHeatHours: 7.5 })], ALONE)).toBeNull()
  expect(baseUseADay([WINTER], ALONE)).toBeNull()
  expect(baseUseADay([], ALONE)).toBeNull()
})

test('cooling spoils a bill only where it runs on the same meter', () => {
  const hot = bill({ modelCoolHours: 120 })
  expect(baseUseADay([hot], ALONE)).toBe(2)
  expect(baseUseADay([hot], WITH_COOLING)).toBeNull()
  expect(baseUseADay([bill({ modelCoolHours: 7.5 })], WITH_COOLING)).toBeNull()
  expect(baseUseADay([bill({ modelCoolHours: 7.4 })], WITH_COOLING)).toBe(2)
  expect(baseUseADay([bill({ modelHeatHours: 90 })], WITH_COOLING)).toBeNull()
})

test('bills that are larger without heating than in winter are of something else', () => {
  // 10 a day in winter.
  expect(isSummerLarger([bill(), WINTER], ALONE)).toBe(false)
  expect(isSummerLarger([bill({ amount: 330 }), WINTER], ALONE)).toBe(true)
  // As much is not more.
  expect(isSummerLarger([bill({ amount: 300 }), WINTER], ALONE)).toBe(false)
  // A summer with cooling on the same meter tells nothing of what is used beside it.
  const cooled = bill({ amount: 330, modelCoolHours: 120 })
  expect(isSummerLarger([cooled, WINTER], ALONE)).toBe(true)
  expect(isSummerLarger([cooled, WINTER], WITH_COOLING)).toBe(false)
  // Without a bill of winter, or without one of summer, nothing can be said.
  expect(isSummerLarger([bill({ amount: 330 })], ALONE)).toBe(false)
  expect(isSummerLarger([WINTER], ALONE)).toBe(false)
})

test('winter is where an hour a day is heated, and its middle bill counts', () => {
  const cool = (modelHeatHours: number, amount = 60) => bill({ modelHeatHours, amount })
  expect(isSummerLarger([bill({ amount: 330 }), cool(29.9)], ALONE)).toBe(false)
  expect(isSummerLarger([bill({ amount: 330 }), cool(30)], ALONE)).toBe(true)
  expect(isSummerLarger([bill({ amount: 330 }), cool(60, 600), cool(60, 500), cool(60)], ALONE)).toBe(false)
})
