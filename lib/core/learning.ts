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

/** The logarithm of the weight of each point before any look, and what it says of θ. */
let prior: { sigma: number; logWeight: Float64Array; theta: Theta } | undefined

/**
 * What looks tell of θ: ln θ is normal around 0 before any, and each look is an ordered probit of ln x (model,
 * section 5). The order of the looks does not matter; looks at filters too fresh to tell are passed over.
 */
export function learnTheta(looks: readonly Look[], figures: Figures): Theta {
  const { logWeight, theta } = priorOf(figures.thetaSigma.value)
  const telling = looks.filter((look) => look.expected >= figures.leastLoadToLearn.value)
  if (telling.length === 0) return theta
  const weight = logWeight.slice()
  for (const look of telling) addLogLikelihood(weight, look, figures)
  return quantiles(weight)
}

function priorOf(sigma: number): NonNullable<typeof prior> {
  if (prior?.sigma !== sigma) {
    const logWeight = LOG_THETA.map((t) => -((t / sigma) ** 2) / 2)
    prior = { sigma, logWeight, theta: quantiles(logWeight) }
  }
  return prior
}

function quantiles(logWeight: Float64Array): Theta {
  let greatest = Number.NEGATIVE_INFINITY
  for (const w of logWeight) greatest = Math.max(greatest, w)
  // A point counts half its own weight, so that the prior's median is exactly θ = 1.
  const below = new Float64Array(POINTS)
  let total = 0
  for (let i = 0; i < POINTS; i++) {
    const w = Math.exp((logWeight[i] as number) - greatest)
    below[i] = total + w / 2
    total += w
  }
  return { q10: quantile(below, 0.1 * total), q50: quantile(below, 0.5 * total), q90: quantile(below, 0.9 * total) }
}

/** Adds to each point how likely a person sees this light there, by the logarithm of the load. */
function addLogLikelihood(weight: Float64Array, { light, expected }: Look, figures: Figures): void {
  const spread = figures.lightSpread.value
  const toClear = (Math.log(figures.clearBelow.value) - Math.log(expected)) / spread
  const toDark = (Math.log(figures.darkAbove.value) - Math.log(expected)) / spread
  for (let i = 0; i < POINTS; i++) {
    const away = (LOG_THETA[i] as number) / spread
    const logLikelihood =
      light === 'clear'
        ? logDistribution(toClear - away)
        : light === 'dark'
          ? logDistribution(away - toDark)
          : logBetween(toClear - away, toDark - away)
    weight[i] = (weight[i] as number) + logLikelihood
  }
}

/** θ where the weight below reaches `share`. */
function quantile(below: Float64Array, share: number): number {
  let i = 0
  while (i < POINTS - 1 && (below[i] as number) < share) i++
  if (i === 0) return Math.exp(LOG_THETA[0] as number)
  const low = below[i - 1] as number
  const high = below[i] as number
  const part = high === low ? 1 : Math.min(1, (share - low) / (high - low))
  return Math.exp((LOG_THETA[i - 1] as number) + part * ((LOG_THETA[i] as number) - (LOG_THETA[i - 1] as number)))
}
