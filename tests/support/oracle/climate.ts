import type { Climate } from '@/lib/core/household'
import { monthAndDay, monthLength } from './days'
import { bisect, meanAboveZero } from './normal'

/** Mean and spread of a day's mean temperature, °F. */
export interface DayClimate {
  mean: number
  sigma: number
}

/** Model.md, section 1: the climate of every day of a year, read literally. The argument is a day number. */
export function climateOf(climate: Climate): (day: number) => DayClimate {
  if (climate.kind === 'monthly') {
    const months = climate.hdd65.map((hdd, m) => monthClimate(hdd, climate.cdd65[m] as number, monthLength(m)))
    return (day) => months[monthAndDay(day).month] as DayClimate
  }
  const { swing, sigma, mean } = fitAnnual(climate.hdd65, climate.cdd65)
  return (day) => ({ mean: temperature(mean, swing, monthAndDay(day).ordinal), sigma })
}

function temperature(mean: number, swing: number, ordinal: number): number {
  return mean - swing * Math.cos((2 * Math.PI * (ordinal - 21)) / 365)
}

const fits = new Map<string, { mean: number; swing: number; sigma: number }>()

// Kept, for speed only.
function fitAnnual(hdd: number, cdd: number) {
  const key = `${hdd} ${cdd}`
  const fit = fits.get(key) ?? findAnnual(hdd, cdd)
  fits.set(key, fit)
  return fit
}

function findAnnual(hdd: number, cdd: number) {
  const mean = 65 - (hdd - cdd) / 365
  function yearly(swing: number, sigma: number): number {
    let sum = 0
    for (let d = 1; d <= 365; d++) sum += meanAboveZero(65 - temperature(mean, swing, d), sigma)
    return sum
  }
  const flat = yearly(0, 6) >= hdd
  const fitted = flat ? 0 : bisect((a) => yearly(a, 6), hdd, 0, 200)
  if (hdd > 3000) return { mean, swing: Math.max(9, fitted), sigma: 6 }
  return { mean, swing: fitted, sigma: flat ? bisect((s) => yearly(0, s), hdd, 0, 6) : 6 }
}

function monthClimate(hdd: number, cdd: number, days: number): DayClimate {
  const mean = 65 - (hdd - cdd) / days
  if (hdd === 0 || cdd === 0) return { mean, sigma: 3 }
  return { mean, sigma: bisect((s) => meanAboveZero(65 - mean, s) * days, hdd, 0, 5000) }
}

export function heatingDegrees({ mean, sigma }: DayClimate, base: number): number {
  return meanAboveZero(base - mean, sigma)
}

export function coolingDegrees({ mean, sigma }: DayClimate, base: number): number {
  return meanAboveZero(mean - base, sigma)
}
