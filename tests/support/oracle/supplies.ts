import type { Filter } from '@/lib/core/household'
import { monthsLater } from './days'
import { forecastOf, runsOut, type SystemFacts, thetaOf } from './filter'

/** How many of this filter the months from `on` need (model.md, section 8). */
export function neededOf(facts: SystemFacts, filter: Filter, months: number): number {
  if (filter.medium === 'washable' || filter.medium === 'screen') return 0
  const end = monthsLater(facts.on, months)
  const theta = thetaOf(facts).q50
  let count = 0
  let day = Math.max(facts.on, forecastOf(facts, filter).due)
  while (day < end) {
    count++
    day = runsOut(facts, filter, day, theta).day
  }
  return count
}
