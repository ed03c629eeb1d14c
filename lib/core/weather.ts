import { type DayNumber, dayNumber } from './day'
import type { WeatherSpell } from './household'
import { hoursPerDegreeDay, type RunSettings } from './runtime'
import type { Figures } from './tables'

/** Hours of load on a day of a spell. */
export interface DailyWeather {
  heat: number
  cool: number
}

/**
 * What the equipment must run in a hot or cold spell, by day: degree-days by the mean-temperature method, from the mean
 * of its usual high and low (model, section 1). A hot spell tells of cooling only, a cold one of heating only; where
 * two meet the larger counts. It can only add: the days it names have at least the hours of their climate.
 */
export function weatherDays(
  spells: readonly WeatherSpell[],
  settings: RunSettings,
  figures: Figures,
): Map<DayNumber, DailyWeather> {
  const days = new Map<DayNumber, DailyWeather>()
  const per = hoursPerDegreeDay(settings, figures)
  for (const { kind, from, to, highF, lowF } of spells) {
    const mean = (highF + lowF) / 2
    const cool = kind === 'hot' && settings.cools ? Math.min(24, Math.max(0, mean - settings.coolBaseF) * per.cool) : 0
    const heat =
      kind === 'cold' && settings.heat !== null ? Math.min(24, Math.max(0, settings.heatBaseF - mean) * per.heat) : 0
    if (cool === 0 && heat === 0) continue
    const last = dayNumber(to)
    for (let day = dayNumber(from); day <= last; day++) {
      const before = days.get(day)
      days.set(day, { heat: Math.max(heat, before?.heat ?? 0), cool: Math.max(cool, before?.cool ?? 0) })
    }
  }
  return days
}
