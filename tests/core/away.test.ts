import { expect, test } from 'vitest'
import { isColdMonth } from '@/lib/core/away'
import type { Climate } from '@/lib/core/household'

const MONTHS = Array.from({ length: 12 }, (_, i) => i + 1)

function coldMonths(climate: Climate): number[] {
  return MONTHS.filter((month) => isColdMonth(climate, `2026-${String(month).padStart(2, '0')}-15`))
}

test('known by the year, a place whose design day freezes has its cold months from November to March', () => {
  const annual = { kind: 'annual', hdd65: 4000, cdd65: 1000, coolingDesignF: 90 } as const
  expect(coldMonths({ ...annual, heatingDesignF: 32 })).toEqual([1, 2, 3, 11, 12])
  expect(coldMonths({ ...annual, heatingDesignF: 33 })).toEqual([])
})

test('known by months, those of a mean of 50 °F or less are cold, each by its own number of days', () => {
  const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
  const none = days.map(() => 0)
  // Not by the design temperature, which freezes nothing here.
  const monthly = { kind: 'monthly', cdd65: none, heatingDesignF: 45, coolingDesignF: 90 } as const
  const even = (belowBase: number) => ({ ...monthly, hdd65: days.map((n) => n * belowBase) })
  expect(coldMonths(even(65 - 50))).toEqual(MONTHS)
  expect(coldMonths(even(65 - 50.1))).toEqual([])
  const spring = { ...monthly, hdd65: [900, 700, 500, 200, 60, 0, 0, 0, 40, 300, 460, 800] }
  // March 500 / 31 = 16.1; October 300 / 31 = 9.7; November 460 / 30 = 15.3.
  expect(coldMonths(spring)).toEqual([1, 2, 3, 11, 12])
})
