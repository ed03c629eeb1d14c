import type { Filter, Household, System } from '@/lib/core/household'
import { airflowOf, areaOf, loadingOf, pathOf, stands } from './air'
import { number } from './days'
import { capacityOf, concentrationOf } from './dust'
import { type Forecast, forecastOf, type SystemFacts, thetaOf } from './filter'
import { hoursOf } from './hours'

/** What the oracle says about one filter. */
export interface FilterReading {
  filter: Filter
  system: System
  facts: SystemFacts
  forecast: Forecast
  heatHours: number
  coolHours: number
  fanHours: number
  airflowCfm: number | null
  faceVelocityFpm: number | null
  dust: number
  arrestance: number | null
  capacity: number | null
  drop: number | null
  theta: { q10: number; q50: number; q90: number }
}

/** Everything that model.md makes shared by one system's filters, worked out once; days are kept, not summed ahead. */
export function systemFacts(home: Household, system: System, on: number): SystemFacts {
  const filters = home.filters.filter((f) => f.system === system.id)
  const hours = hoursOf(home, system, on)
  const kept = new Map<number, ReturnType<typeof hours.at>>()
  function at(day: number) {
    let found = kept.get(day)
    if (!found) {
      found = hours.at(day)
      kept.set(day, found)
    }
    return found
  }
  return { home, filters, hours: { ...hours, at }, air: airflowOf(home, system), on }
}

export function readFilter(facts: SystemFacts, system: System, filter: Filter): FilterReading {
  const { hours, air, filters, home } = facts
  let [heatHours, coolHours, fanHours] = [0, 0, 0]
  for (let day = number('2025-01-01'); day < number('2026-01-01'); day++) {
    const mean = hours.mean(day)
    heatHours += mean.heat
    coolHours += mean.cool
    fanHours += mean.blower
  }
  const figures = loadingOf(filter)
  const airflowCfm = stands(filter) === 'apart' ? null : air.most * pathOf(filters, filter).share
  const faceVelocityFpm = airflowCfm && airflowCfm / areaOf(filter)
  return {
    filter,
    system,
    facts,
    forecast: forecastOf(facts, filter),
    heatHours,
    coolHours,
    fanHours,
    airflowCfm,
    faceVelocityFpm,
    dust: concentrationOf(home),
    arrestance: figures?.arrestance ?? null,
    capacity: capacityOf(filter),
    drop: figures && faceVelocityFpm && figures.drop * (faceVelocityFpm / 300) ** figures.exponent,
    theta: thetaOf(facts),
  }
}
