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
  const per = hoursPerDegreeDay(settings, figures)
  const loads = spells.flatMap(({ kind, from, to, highF, lowF }): Load[] => {
    const mean = (highF + lowF) / 2
    const cool = settings.cools ? Math.max(0, mean - settings.coolBaseF) * per.cool : 0
    const heat = settings.heat === null ? 0 : Math.max(0, settings.heatBaseF - mean) * per.heat
    const [by, hours] = kind === 'hot' ? (['cool', cool] as const) : (['heat', heat] as const)
    return hours === 0 ? [] : [{ by, hours: Math.min(24, hours), from: dayNumber(from), to: dayNumber(to) }]
  })
  const days = new Map<DayNumber, DailyWeather>()
  for (const by of ['heat', 'cool'] as const) {
    const own = loads.filter((load) => load.by === by)
    for (const [day, hours] of largestByDay(own)) {
      const before = days.get(day)
      if (before) before[by] = hours
      else days.set(day, { heat: 0, cool: 0, [by]: hours })
    }
  }
  return days
}

interface Load {
  by: 'heat' | 'cool'
  hours: number
  from: DayNumber
  to: DayNumber
}

/** The largest hours by day. The largest go first and every day is filled once, however many spells hold on it. */
function largestByDay(loads: readonly Load[]): Map<DayNumber, number> {
  const largest = new Map<DayNumber, number>()
  // After a day that is filled, the day to look at next; longer ways are made short as they are gone.
  const next = new Map<DayNumber, DayNumber>()
  const open = (from: DayNumber) => {
    let day = from
    for (let on = next.get(day); on !== undefined; on = next.get(day)) {
      const beyond = next.get(on)
      if (beyond !== undefined) next.set(day, beyond)
      day = on
    }
    return day
  }
  for (const { hours, from, to } of loads.toSorted((a, b) => b.hours - a.hours)) {
    for (let day = open(from); day <= to; day = open(day)) {
      largest.set(day, hours)
      next.set(day, day + 1)
    }
  }
  return largest
}
