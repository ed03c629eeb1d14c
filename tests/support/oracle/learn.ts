import type { Light } from '@/lib/core/household'
import { below, logAbove } from './normal'

/** A look: the modelled load at θ = 1 and the light that passed. */
export interface Look {
  x: number
  light: Light
}

/** ln P(light | θ): an ordered probit of ln x with spread 0.5 (model.md, section 5). */
export function logLikelihood({ x, light }: Look, lnTheta: number): number {
  const low = (Math.log(0.4) - Math.log(x) - lnTheta) / 0.5
  const high = (Math.log(0.8) - Math.log(x) - lnTheta) / 0.5
  if (light === 'clear') return logAbove(-low)
  if (light === 'dark') return logAbove(high)
  if (low > 0) return logAbove(low) + Math.log1p(-Math.exp(logAbove(high) - logAbove(low)))
  if (high < 0) return logAbove(-high) + Math.log1p(-Math.exp(logAbove(-low) - logAbove(-high)))
  return Math.log(below(high) - below(low))
}

/** Quantiles of θ after the looks. */
export function thetaAfter(looks: Look[]): { q10: number; q50: number; q90: number } {
  const grid = Array.from({ length: 201 }, (_, i) => -2 + i * 0.02)
  const logs = grid.map((u) => -(u * u) / (2 * 0.25) + looks.reduce((sum, look) => sum + logLikelihood(look, u), 0))
  const top = Math.max(...logs)
  const weights = logs.map((log) => Math.exp(log - top))
  const whole = weights.reduce((a, b) => a + b, 0)
  let before = 0
  const middles = weights.map((weight) => {
    const middle = (before + weight / 2) / whole
    before += weight
    return middle
  })
  function quantile(q: number): number {
    const i = middles.findIndex((m) => m >= q)
    if (i === 0) return Math.exp(-2)
    if (i === -1) return Math.exp(2)
    const [low, high] = [middles[i - 1] as number, middles[i] as number]
    return Math.exp((grid[i - 1] as number) + (0.02 * (q - low)) / (high - low))
  }
  return { q10: quantile(0.1), q50: quantile(0.5), q90: quantile(0.9) }
}
