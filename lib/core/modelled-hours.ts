import { climateYear } from './climate'
import { type Day, dayNumber, dayOfYear, dayText } from './day'
import type { Climate, Household } from './household'
import { Profiles } from './profile'
import { systemDays } from './system-days'
import type { Tables } from './tables'

/** Hours of heating and cooling that the model has for a system between two days, both included, measured or not: the plain estimate. */
export function modelledHours(
  home: Household,
  systemId: string,
  { from, to }: { from: Day; to: Day },
  { tables, on }: { tables: Tables; on: Day },
): { heat: number; cool: number } {
  const system = home.systems.find(({ id }) => id === systemId)
  if (!system) return { heat: 0, cool: 0 }
  const { weather: _, ...rest } = home
  const days = systemDays({ ...rest, readings: [] }, system, dayNumber(on), tables, new Profiles(tables.figures))
  const [before, last] = [dayNumber(from) - 1, dayNumber(to)]
  return {
    heat: days.heatThrough(last) - days.heatThrough(before),
    cool: days.coolThrough(last) - days.coolThrough(before),
  }
}

/** The usual mean temperature between two days, °F. */
export function usualMeanF(climate: Climate, { from, to }: { from: Day; to: Day }, tables: Tables): number {
  const { meanF } = climateYear(climate, tables.figures)
  let [sum, count] = [0, 0]
  // A year says all that a longer time would.
  for (let day = dayNumber(from); day <= dayNumber(to) && count < 366; day++, count++)
    sum += meanF[dayOfYear(dayText(day)) - 1] ?? 0
  return sum / count
}
