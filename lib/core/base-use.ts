import type { Day } from './day'
import { daysBetween } from './day'

/** A bill in any one unit, with the hours that the model has for its days. */
export interface BillDays {
  from: Day
  to: Day
  amount: number
  modelHeatHours: number
  modelCoolHours: number
}

// Less than a quarter of an hour a day is no heating: our choice.
const NO_HOURS_A_DAY = 0.25
const WINTER_HOURS_A_DAY = 1

/**
 * What a home uses every day beside heating (hot water, cooking): the median of the bills in which hardly any heating
 * is modelled; where cooling runs on the same meter, of those with hardly any cooling either. Null where no bill tells.
 */
export function baseUseADay(bills: readonly BillDays[], { coolingCounts }: { coolingCounts: boolean }): number | null {
  const summer = bills.filter((bill) => isIdle(bill, coolingCounts))
  return summer.length === 0 ? null : median(summer.map(useADay))
}

/** Whether the bills without heating use more a day than those of winter: then they are no bills of this heating. */
export function isSummerLarger(bills: readonly BillDays[], { coolingCounts }: { coolingCounts: boolean }): boolean {
  const base = baseUseADay(bills, { coolingCounts })
  const winter = bills.filter((bill) => bill.modelHeatHours >= WINTER_HOURS_A_DAY * daysOf(bill))
  return base !== null && winter.length > 0 && base > median(winter.map(useADay))
}

export function daysOf({ from, to }: { from: Day; to: Day }): number {
  return daysBetween(from, to) + 1
}

function isIdle(bill: BillDays, coolingCounts: boolean): boolean {
  const most = NO_HOURS_A_DAY * daysOf(bill)
  return bill.modelHeatHours < most && (!coolingCounts || bill.modelCoolHours < most)
}

function useADay(bill: BillDays): number {
  return bill.amount / daysOf(bill)
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const middle = sorted.length / 2
  const [low, high] = [sorted[Math.ceil(middle) - 1] ?? 0, sorted[Math.floor(middle)] ?? 0]
  return (low + high) / 2
}
