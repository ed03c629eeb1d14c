import type { DustStart } from './household'
import { type DustPrior, type Evidence, worldPrior } from './learning'
import type { Figures } from './tables'

/** Where a system starts that is told by others, and how far they were believed. */
export interface PooledPrior extends DustPrior {
  /** Systems that told it. */
  systems: number
  /** Their own mean of ln θ, before it is drawn towards the world's 0. */
  told: number
  /** The share of that way that is gone, 0…1; the rest of it is what so few may have said by chance. */
  believed: number
}

/** What the looks at many systems of one owner say together, ready to be asked by each of them. */
export interface Pool {
  /** The start of a system: from all others, its own evidence left out. Null where nobody else tells anything. */
  startFor(own: Evidence | null): PooledPrior | null
}

/** Sums over the systems for one share of the world's variance that lies within an owner's systems. */
interface Sums {
  /** Variance within the owner's systems, and between owners. */
  within: number
  between: number
  precision: number
  weighted: number
  squared: number
  logs: number
}

/**
 * Pooled learning (model 1.1): an empirical Bayes normal–normal step on ln θ. The world's variance of ln θ is split
 * into a part between owners and a part within the systems of one; an owner's mean is normal around 0 with the first,
 * a system around its owner's mean with the second. How it splits is not known: each share of a grid counts by how
 * likely it makes what was seen. A system of which nobody tells anything starts as in version 1, exactly.
 * After C. N. Morris, "Parametric empirical Bayes inference", J. Am. Stat. Assoc. 78 (1983), from memory.
 */
export function poolOf(evidence: readonly Evidence[], figures: Figures): Pool {
  const steps = figures.poolShares.value
  const variance = worldPrior(figures).sigma ** 2
  const all = Array.from({ length: steps }, (_, i): Sums => {
    const within = (variance * (i + 0.5)) / steps
    const sums = { within, between: variance - within, precision: 0, weighted: 0, squared: 0, logs: 0 }
    for (const one of evidence) add(sums, one, 1)
    return sums
  })
  return {
    startFor(own) {
      const systems = evidence.length - (own ? 1 : 0)
      if (systems <= 0) return null
      const others = own ? all.map((sums) => add({ ...sums }, own, -1)) : all
      return { systems, ...mixed(others) }
    },
  }
}

/** A start as the household file states it. */
export function dustStart({ mean, sigma, systems }: PooledPrior): DustStart {
  const rounded = (x: number) => Math.round(x * 1000) / 1000
  return { median: rounded(Math.exp(mean)), spread: rounded(sigma), systems }
}

/** The start that a household states for a system, or the world's. */
export function startOf(start: DustStart | undefined, figures: Figures): DustPrior {
  return start ? { mean: Math.log(start.median), sigma: start.spread } : worldPrior(figures)
}

function add(sums: Sums, { mean, variance }: Evidence, times: 1 | -1): Sums {
  const spread = sums.within + variance
  sums.precision += times / spread
  sums.weighted += (times * mean) / spread
  sums.squared += (times * mean ** 2) / spread
  sums.logs += times * Math.log(spread)
  return sums
}

/** Mean and spread of a new system's ln θ over all shares, each by its marginal likelihood. */
function mixed(shares: readonly Sums[]): Omit<PooledPrior, 'systems'> {
  const each = shares.map(({ within, between, precision, weighted, squared, logs }) => {
    const certainty = precision + 1 / between
    const mean = weighted / certainty
    return {
      logLikelihood: -(logs + squared - weighted * mean + Math.log(between * certainty)) / 2,
      mean,
      variance: within + 1 / certainty,
      told: weighted / precision,
      believed: precision / certainty,
    }
  })
  const greatest = Math.max(...each.map((one) => one.logLikelihood))
  const weights = each.map((one) => Math.exp(one.logLikelihood - greatest))
  const total = weights.reduce((sum, w) => sum + w, 0)
  const average = (of: (one: (typeof each)[number]) => number) =>
    each.reduce((sum, one, i) => sum + (weights[i] as number) * of(one), 0) / total
  const mean = average((one) => one.mean)
  // The spread of the means counts too: the shares differ in how far they believe.
  const variance = average((one) => one.variance + one.mean ** 2) - mean ** 2
  return {
    mean,
    sigma: Math.sqrt(variance),
    told: average((one) => one.told),
    believed: average((one) => one.believed),
  }
}
