import type { Light } from './household'
import { logBetween, logDistribution } from './normal'
import type { Figures } from './tables'

/** A look at a filter: what was seen, and the load the model expects with θ = 1. */
export interface Look {
  light: Light
  /** Dust caught over capacity at θ = 1. */
  expected: number
}

/** Quantiles of θ, the system's own dust factor. */
export interface Theta {
  q10: number
  q50: number
  q90: number
}

const POINTS = 201
const REACH = 2
const LOG_THETA = Float64Array.from({ length: POINTS }, (_, i) => -REACH + (2 * REACH * i) / (POINTS - 1))

let fromPrior: { sigma: number; theta: Theta } | undefined

/**
 * What looks tell of θ: ln θ is normal around 0 before any, and each look is an ordered probit of ln x (model,
 * section 5). The order of the looks does not matter; looks at filters too fresh to tell are passed over.
 */
export function learnTheta(looks: readonly Look[], figures: Figures): Theta {
  const telling = looks.filter((look) => look.expected >= figures.leastLoadToLearn.value)
  const sigma = figures.thetaSigma.value
  if (telling.length > 0) return posterior(telling, figures)
  if (fromPrior?.sigma !== sigma) fromPrior = { sigma, theta: posterior([], figures) }
  return fromPrior.theta
}

function posterior(looks: readonly Look[], figures: Figures): Theta {
  const sigma = figures.thetaSigma.value
  const logWeight = LOG_THETA.map((t) => -((t / sigma) ** 2) / 2)
  for (const look of looks) {
    const logLikelihood = likelihoodOf(look.light, figures)
    const logExpected = Math.log(look.expected)
    for (let i = 0; i < POINTS; i++) {
      logWeight[i] = (logWeight[i] as number) + logLikelihood((LOG_THETA[i] as number) + logExpected)
    }
  }
  const greatest = Math.max(...logWeight)
  const weight = logWeight.map((w) => Math.exp(w - greatest))
  const total = weight.reduce((sum, w) => sum + w, 0)
  // A point counts half its own weight, so that the prior's median is exactly θ = 1.
  const below = new Float64Array(POINTS)
  let sum = 0
  weight.forEach((w, i) => {
    below[i] = (sum + w / 2) / total
    sum += w
  })
  return { q10: quantile(below, 0.1), q50: quantile(below, 0.5), q90: quantile(below, 0.9) }
}

/** How likely a person sees this light, by the logarithm of the load. */
function likelihoodOf(light: Light, figures: Figures): (logLoad: number) => number {
  const spread = figures.lightSpread.value
  const clearBelow = Math.log(figures.clearBelow.value)
  const darkAbove = Math.log(figures.darkAbove.value)
  if (light === 'clear') return (logLoad) => logDistribution((clearBelow - logLoad) / spread)
  if (light === 'dark') return (logLoad) => logDistribution((logLoad - darkAbove) / spread)
  return (logLoad) => logBetween((clearBelow - logLoad) / spread, (darkAbove - logLoad) / spread)
}

function quantile(below: Float64Array, share: number): number {
  let i = below.findIndex((b) => b >= share)
  if (i === -1) i = POINTS - 1
  if (i === 0) return Math.exp(LOG_THETA[0] as number)
  const low = below[i - 1] as number
  const high = below[i] as number
  const part = high === low ? 1 : Math.min(1, (share - low) / (high - low))
  return Math.exp((LOG_THETA[i - 1] as number) + part * ((LOG_THETA[i] as number) - (LOG_THETA[i - 1] as number)))
}
