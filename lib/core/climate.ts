import type { AnnualClimate, Climate, MonthlyClimate } from './household'
import { expectedExcess } from './normal'
import { PathMap } from './path-map'
import type { Figures } from './tables'

/** A year of 365 days: each day's mean temperature is normal around `meanF` with spread `sigmaF`. */
export interface ClimateYear {
  meanF: Float64Array
  sigmaF: Float64Array
  /** Degree-days that were asked for, by kind and base: few thermostats' set points differ. */
  degreeDays: PathMap<Float64Array>
}

export const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const
const BASE_F = 65
const DAYS = 365

/** From two or twenty-four degree-day numbers to a year (model, section 1). */
export function climateYear(climate: Climate, figures: Figures): ClimateYear {
  return climate.kind === 'annual' ? fromAnnual(climate, figures) : fromMonthly(climate, figures)
}

/** Degree-days of each day of the year below (`heating`) or above (`cooling`) a base in °F; kept, so not to be changed. */
export function degreeDays(year: ClimateYear, kind: 'heating' | 'cooling', baseF: number): Float64Array {
  return year.degreeDays.get([kind, baseF], () =>
    Float64Array.from({ length: DAYS }, (_, i) => {
      const below = baseF - (year.meanF[i] as number)
      return expectedExcess(kind === 'heating' ? below : -below, year.sigmaF[i] as number)
    }),
  )
}

function fromAnnual(climate: AnnualClimate, figures: Figures): ClimateYear {
  const { hdd65, cdd65 } = climate
  // Exact: heating less cooling degree-days sum 65 − T over the year.
  const meanF = BASE_F - (hdd65 - cdd65) / DAYS
  const season = Float64Array.from({ length: DAYS }, (_, i) =>
    Math.cos((2 * Math.PI * (i + 1 - figures.coldestDayOfYear.value)) / DAYS),
  )
  const total = (swing: number, sigma: number) => {
    let sum = 0
    for (const s of season) sum += expectedExcess(BASE_F - meanF + swing * s, sigma)
    return sum
  }
  let sigma = figures.annualSigmaF.value
  let swing = 0
  const isCold = hdd65 > figures.flatClimateHdd65.value
  if (total(0, sigma) < hdd65) swing = rootOfIncreasing((a) => total(a, sigma) - hdd65)
  else if (!isCold) sigma = rootOfIncreasing((s) => total(0, s) - hdd65, sigma)
  if (isCold) swing = Math.max(figures.leastSwingF.value, swing)
  return yearOfDays(
    season.map((s) => meanF - swing * s),
    new Float64Array(DAYS).fill(sigma),
  )
}

function fromMonthly(climate: MonthlyClimate, figures: Figures): ClimateYear {
  const meanF = new Float64Array(DAYS)
  const sigmaF = new Float64Array(DAYS)
  let first = 0
  DAYS_IN_MONTH.forEach((days, month) => {
    const hdd = climate.hdd65[month] ?? 0
    const cdd = climate.cdd65[month] ?? 0
    const below = (hdd - cdd) / days
    const sigma =
      hdd === 0 || cdd === 0
        ? figures.sigmaWithoutDegreeDaysF.value
        : rootOfIncreasing((s) => expectedExcess(below, s) - hdd / days)
    meanF.fill(BASE_F - below, first, first + days)
    sigmaF.fill(sigma, first, first + days)
    first += days
  })
  return yearOfDays(meanF, sigmaF)
}

function yearOfDays(meanF: Float64Array, sigmaF: Float64Array): ClimateYear {
  return { meanF, sigmaF, degreeDays: new PathMap() }
}

/**
 * The root at or above 0 of an increasing function, to 1e-12 of its size; 0 where it is positive from the start. By
 * false position after Illinois (an end that stays counts half), which asks a fraction of what halving does.
 */
function rootOfIncreasing(f: (x: number) => number, knownHigh?: number): number {
  let low = 0
  let high = knownHigh ?? 1
  if (knownHigh === undefined) while (f(high) < 0) high *= 2
  let atLow = f(low)
  let atHigh = f(high)
  if (atLow >= 0) return low
  let kept: 'low' | 'high' | undefined
  for (let i = 0; i < 100 && high - low > 1e-12 * high; i++) {
    const between = (low * atHigh - high * atLow) / (atHigh - atLow)
    // No number is left between them.
    if (between <= low || between >= high) return between
    const value = f(between)
    if (value < 0) {
      if (kept === 'high') atHigh /= 2
      low = between
      atLow = value
      kept = 'high'
    } else {
      if (kept === 'low') atLow /= 2
      high = between
      atHigh = value
      kept = 'low'
    }
  }
  return high
}
