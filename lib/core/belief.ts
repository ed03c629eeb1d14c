import { LIGHTS, type Light } from './household'
import { addLogLikelihood, type DustPrior, LOG_THETA, type Look, logPrior, quantiles, type Theta } from './learning'
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

/** Before any look. */
export function priorBelief(prior: DustPrior): Belief {
  return beliefOf(logPrior(prior))
}

/** After one more look; one at a filter too fresh to tell changes nothing. The order of looks does not matter. */
export function afterLook(belief: Belief, look: Look, figures: Figures): Belief {
  if (look.expected < figures.leastLoadToLearn.value) return belief
  const logWeight = belief.logWeight.slice()
  addLogLikelihood(logWeight, look, figures)
  return beliefOf(logWeight)
}

/** How likely each answer is that a look would give now, at a filter whose load is `expected` at θ = 1. They sum to 1. */
export function chanceOfLights(belief: Belief, expected: number, figures: Figures): Record<Light, number> {
  const chances = LIGHTS.map((light) => {
    const likelihood = new Float64Array(LOG_THETA.length)
    addLogLikelihood(likelihood, { light, expected }, figures)
    return [light, belief.share.reduce((sum, s, i) => sum + s * Math.exp(likelihood[i] as number), 0)]
  })
  return Object.fromEntries(chances)
}

/** Quantiles of θ, as `learnTheta` gives them. */
export function thetaOf({ logWeight }: Belief): Theta {
  return quantiles(logWeight)
}

function beliefOf(logWeight: Float64Array): Belief {
  let greatest = Number.NEGATIVE_INFINITY
  for (const w of logWeight) greatest = Math.max(greatest, w)
  const weight = logWeight.map((w) => Math.exp(w - greatest))
  const total = weight.reduce((sum, w) => sum + w, 0)
  return { logWeight, share: weight.map((w) => w / total) }
}
