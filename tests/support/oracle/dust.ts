import type { Filter, Household } from '@/lib/core/household'
import { type Airflow, airVolume, areaOf, loadingOf, pathOf } from './air'
import { number } from './days'
import type { Hours } from './hours'

const EVENTS = { renovation: 3, smoke: 2, dust: 1.3 }

/** Micrograms a cubic metre in this household, without events and cleaning (model.md, section 4). */
export function concentrationOf(home: Household): number {
  const pets = home.petFactor ?? [1, 1.25, 1.5, 1.75][home.pets] ?? 2
  return 55 * (0.7 + 0.15 * home.people) * pets * (home.smoking ? 1.3 : 1) * (home.carpet ? 1.15 : 1)
}

/** Grams that a filter catches on a day, at θ = 1. `filters` are all filters of its system. */
export function catchOf(facts: {
  home: Household
  filter: Filter
  filters: Filter[]
  hours: Hours
  air: Airflow
}): (day: number) => number {
  const { home, filter, filters, hours, air } = facts
  const figures = loadingOf(filter)
  if (!figures) return () => 0
  const path = pathOf(filters, filter)
  const usual = concentrationOf(home)
  const events = home.dustEvents.map((e) => ({ from: number(e.from), to: number(e.to), factor: EVENTS[e.kind] }))
  return (day) => {
    const today = hours.at(day)
    let dust = usual
    for (const { from, to, factor } of events) if (from <= day && day <= to) dust *= factor
    dust *= 2.85 / (2 + (5 * path.arrestance * today.blower) / 24)
    return (dust * airVolume(air, today) * path.share * path.reaches * figures.arrestance) / 1e6
  }
}

export function capacityOf(filter: Filter): number | null {
  const figures = loadingOf(filter)
  return figures && figures.gramsPerFt2 * areaOf(filter)
}
