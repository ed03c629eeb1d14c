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
/** The grid: 201 points of ln θ over −2…2. */
export const LOG_THETA: Float64Array = Float64Array.from(
  { length: POINTS },
  (_, i) => -REACH + (2 * REACH * i) / (POINTS - 1),
)

/** What is believed of ln θ before any look at the system's own filters: it is normal. */
export interface DustPrior {
  mean: number
  sigma: number
}

/** The same for every system of which nothing is known. */
export function worldPrior(figures: Figures): DustPrior {
  return { mean: 0, sigma: figures.thetaSigma.value }
}

/** What looks alone say of ln θ, taken as normal: for telling other systems. */
export interface Evidence {
  mean: number
  variance: number
}

interface Believed extends DustPrior {
  /** The logarithm of the weight of each point before any look, and what it says of θ. */
  logWeight: Float64Array
  theta: Theta
}

// Most systems start from the world: its weights are made once.
let world: Believed | undefined

/**
 * What looks tell of θ: ln θ is normal before any, and each look is an ordered probit of ln x (model,
 * section 5). The order of the looks does not matter; looks at filters too fresh to tell are passed over.
 */
export function learnTheta(looks: readonly Look[], figures: Figures, prior = worldPrior(figures)): Theta {
  const { logWeight, theta } = believed(prior)
  const telling = tellingAmong(looks, figures)
  return telling.length === 0 ? theta : quantiles(weighed(logWeight, telling, figures))
}

/**
 * What looks alone say of ln θ: the normal that, laid on the world's prior, gives the mean and variance that the
 * looks gave. Null where none of them tells anything.
 */
export function evidenceOf(looks: readonly Look[], figures: Figures): Evidence | null {
  const telling = tellingAmong(looks, figures)
  if (telling.length === 0) return null
  const prior = worldPrior(figures)
  const { mean, variance } = moments(weighed(believed(prior).logWeight, telling, figures))
  // Precisions add: what is more than the prior's came from the looks.
  const precision = 1 / variance - 1 / prior.sigma ** 2
  return precision > 1e-6 ? { mean: mean / variance / precision, variance: 1 / precision } : null
}

function tellingAmong(looks: readonly Look[], figures: Figures): Look[] {
  return looks.filter((look) => look.expected >= figures.leastLoadToLearn.value)
}

/** The logarithm of each point's weight before any look; only differences mean anything. */
export function logPrior({ mean, sigma }: DustPrior): Float64Array {
  return LOG_THETA.map((t) => -(((t - mean) / sigma) ** 2) / 2)
}

function believed({ mean, sigma }: DustPrior): Believed {
  if (world?.mean === mean && world.sigma === sigma) return world
  const logWeight = logPrior({ mean, sigma })
  const made = { mean, sigma, logWeight, theta: quantiles(logWeight) }
  if (mean === 0) world = made
  return made
}

function weighed(logWeight: Float64Array, looks: readonly Look[], figures: Figures): Float64Array {
  const weight = logWeight.slice()
  for (const look of looks) addLogLikelihood(weight, look, figures)
  return weight
}

function moments(logWeight: Float64Array): { mean: number; variance: number } {
  const greatest = logWeight.reduce((most, w) => Math.max(most, w), Number.NEGATIVE_INFINITY)
  let total = 0
  let first = 0
  let second = 0
  for (let i = 0; i < POINTS; i++) {
    const t = LOG_THETA[i] as number
    const w = Math.exp((logWeight[i] as number) - greatest)
    total += w
    first += w * t
    second += w * t * t
  }
  const mean = first / total
  return { mean, variance: second / total - mean * mean }
}

/** What weights on the grid say of θ. */
export function quantiles(logWeight: Float64Array): Theta {
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

/** Adds to each point the logarithm of how likely a person sees this light there: an ordered probit of ln x. */
export function addLogLikelihood(weight: Float64Array, { light, expected }: Look, figures: Figures): void {
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
  const part = Math.min(1, (share - low) / (high - low))
  return Math.exp((LOG_THETA[i - 1] as number) + part * ((LOG_THETA[i] as number) - (LOG_THETA[i - 1] as number)))
}
