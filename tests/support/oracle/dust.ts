import type { Filter, Household } from '@/lib/core/household'
import { type Airflow, airVolume, areaOf, mediumOf, pathOf } from './air'
import { number } from './days'
import type { Hours } from './hours'

const EVENTS = { renovation: 3, smoke: 2, dust: 1.3 }

/** Micrograms a cubic metre in this household, without events and cleaning (model.md, section 4). */
export function concentrationOf(home: Household): number {
  const pets = home.petFactor ?? [1, 1.25, 1.5, 1.75][home.pets] ?? 2
  return 55 * (0.7 + 0.15 * home.people) * pets * (home.smoking ? 1.3 : 1) * (home.carpet ? 1.15 : 1)
}

/** Grams that this filter catches on a day, at θ = 1. `filters` are all filters of its system. */
export function caughtOn(
  day: number,
  facts: { home: Household; filter: Filter; filters: Filter[]; hours: Hours; air: Airflow },
): number {
  const { home, filter, filters, hours, air } = facts
  const figures = mediumOf(filter.medium, filter.merv, filter.nominal.depthIn)
  if (!figures) return 0
  const path = pathOf(filters, filter)
  const today = hours.at(day)
  let dust = concentrationOf(home)
  for (const event of home.dustEvents) {
    if (number(event.from) <= day && day <= number(event.to)) dust *= EVENTS[event.kind]
  }
  dust *= 2.85 / (2 + (5 * path.arrestance * today.blower) / 24)
  return (dust * airVolume(air, today) * path.share * path.reaches * figures.arrestance) / 1e6
}

export function capacityOf(filter: Filter): number | null {
  const figures = mediumOf(filter.medium, filter.merv, filter.nominal.depthIn)
  return figures && figures.gramsPerFt2 * areaOf(filter)
}
