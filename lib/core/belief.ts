import { LIGHTS, type Light } from './household'
import type { DustPrior, Look, Theta } from './learning'
import { logBetween, logDistribution } from './normal'
import type { Figures } from './tables'

/**
 * What is believed of ln θ, the logarithm of a system's own dust factor, on the model's grid (section 5): the whole
 * curve that `learnTheta` gives the quantiles of, for drawing it and for asking what another look would tell.
 */
export interface Belief {
  /** By point of `LOG_THETA`; only differences mean anything. */
  logWeight: Float64Array
  /** The same as shares that sum to 1. */
  share: Float64Array
}

const POINTS = 201
const REACH = 2
/** The grid: 201 points of ln θ over −2…2. */
export const LOG_THETA: Float64Array = Float64Array.from(
  { length: POINTS },
  (_, i) => -REACH + (2 * REACH * i) / (POINTS - 1),
)
/** Between two points of the grid. */
export const STEP = (2 * REACH) / (POINTS - 1)

/** Before any look. */
export function priorBelief({ mean, sigma }: DustPrior): Belief {
  return beliefOf(LOG_THETA.map((t) => -(((t - mean) / sigma) ** 2) / 2))
}

/** After one more look; one at a filter too fresh to tell changes nothing. The order of looks does not matter. */
export function afterLook(belief: Belief, look: Look, figures: Figures): Belief {
  if (look.expected < figures.leastLoadToLearn.value) return belief
  const likelihood = logLikelihood(look, figures)
  return beliefOf(belief.logWeight.map((w, i) => w + likelihood(LOG_THETA[i] as number)))
}

/** How likely each answer is that a look would give now, at a filter whose load is `expected` at θ = 1. They sum to 1. */
export function chanceOfLights(belief: Belief, expected: number, figures: Figures): Record<Light, number> {
  const chances = LIGHTS.map((light) => {
    const likelihood = logLikelihood({ light, expected }, figures)
    return [light, belief.share.reduce((sum, s, i) => sum + s * Math.exp(likelihood(LOG_THETA[i] as number)), 0)]
  })
  return Object.fromEntries(chances)
}

/** Quantiles of θ, as `learnTheta` finds them: a grid point counts half its own share. */
export function thetaOf({ share }: Belief): Theta {
  return { q10: quantile(share, 0.1), q50: quantile(share, 0.5), q90: quantile(share, 0.9) }
}

/** The variance of ln θ. */
export function varianceOf({ share }: Belief): number {
  const mean = share.reduce((sum, s, i) => sum + s * (LOG_THETA[i] as number), 0)
  return share.reduce((sum, s, i) => sum + s * ((LOG_THETA[i] as number) - mean) ** 2, 0)
}

function beliefOf(logWeight: Float64Array): Belief {
  let greatest = Number.NEGATIVE_INFINITY
  for (const w of logWeight) greatest = Math.max(greatest, w)
  const weight = logWeight.map((w) => Math.exp(w - greatest))
  const total = weight.reduce((sum, w) => sum + w, 0)
  return { logWeight, share: weight.map((w) => w / total) }
}

/** The logarithm of how likely a person sees this light, by ln θ: an ordered probit of ln x, each tail on its near side. */
function logLikelihood({ light, expected }: Look, figures: Figures): (logTheta: number) => number {
  const spread = figures.lightSpread.value
  const toClear = (Math.log(figures.clearBelow.value) - Math.log(expected)) / spread
  const toDark = (Math.log(figures.darkAbove.value) - Math.log(expected)) / spread
  if (light === 'clear') return (t) => logDistribution(toClear - t / spread)
  if (light === 'dark') return (t) => logDistribution(t / spread - toDark)
  return (t) => logBetween(toClear - t / spread, toDark - t / spread)
}

function quantile(share: Float64Array, wanted: number): number {
  let before = 0
  let sum = 0
  for (let i = 0; i < POINTS; i++) {
    const here = share[i] as number
    const below = sum + here / 2
    if (below >= wanted || i === POINTS - 1) {
      if (i === 0) return Math.exp(LOG_THETA[0] as number)
      const part = below === before ? 1 : Math.min(1, (wanted - before) / (below - before))
      return Math.exp((LOG_THETA[i - 1] as number) + part * STEP)
    }
    before = below
    sum += here
  }
  throw new Error('the grid of θ has no points')
}
