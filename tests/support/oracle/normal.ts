// The normal distribution from its series and its continued fraction: nothing here is shared with lib/core.

/** Density of the standard normal distribution. */
export function density(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
}

/** Natural logarithm of P(Z > x), right far out in the tail as well. */
export function logAbove(x: number): number {
  if (x < 2.5) return Math.log(below(-x))
  // Q(x) = φ(x) / (x + 1/(x + 2/(x + 3/…)))
  let fraction = x
  for (let k = 200; k >= 1; k--) fraction = x + k / fraction
  return (-x * x) / 2 - Math.log(2 * Math.PI) / 2 - Math.log(fraction)
}

/** P(Z < x). */
export function below(x: number): number {
  if (x < -2.5) return Math.exp(logAbove(-x))
  if (x > 2.5) return 1 - Math.exp(logAbove(x))
  // Φ(x) = ½ + φ(x)·(x + x³/3 + x⁵/(3·5) + …)
  let sum = 0
  let term = x
  for (let k = 1; Math.abs(term) > 1e-18; k++) {
    sum += term
    term *= (x * x) / (2 * k + 1)
  }
  return 0.5 + density(x) * sum
}

/** E[(X)+] for X ~ N(mean, sigma). */
export function meanAboveZero(mean: number, sigma: number): number {
  if (sigma < 1e-9) return Math.max(0, mean)
  const z = mean / sigma
  if (z < -37) return 0
  return mean * below(z) + sigma * density(z)
}

/** The place in [low, high] where a rising function passes the wanted value; an end where it never does. */
export function bisect(rising: (x: number) => number, wanted: number, low: number, high: number): number {
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (rising(middle) < wanted) low = middle
    else high = middle
  }
  return (low + high) / 2
}
