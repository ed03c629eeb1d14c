/**
 * The standard normal distribution, accurate into its far tails, because learning multiplies tail probabilities.
 * `erfc` follows the rational approximations of the freely distributable C mathematics library fdlibm, s_erf.c:
 * "Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Permission to use, copy, modify, and
 * distribute this software is freely granted, provided that this notice is preserved."
 */

/** Coefficients from the highest power down. */
function polynomial(x: number, coefficients: readonly number[]): number {
  let sum = 0
  for (let i = 0; i < coefficients.length; i++) sum = sum * x + (coefficients[i] as number)
  return sum
}

const SMALL_P = [
  -2.37630166566501626084e-5, -5.77027029648944159157e-3, -2.84817495755985104766e-2, -3.2504210724700149937e-1,
  1.28379167095512558561e-1,
]
const SMALL_Q = [
  -3.9602282787753681232e-6, 1.32494738004321644526e-4, 5.08130628187576562776e-3, 6.50222499887672944485e-2,
  3.97917223959155352819e-1, 1,
]
const ERX = 8.45062911510467529297e-1
const NEAR_P = [
  -2.166375594868790843e-3, 3.54783043256182359371e-2, -1.10894694282396677476e-1, 3.18346619901161753674e-1,
  -3.72207876035701323847e-1, 4.14856118683748331666e-1, -2.36211856075265944077e-3,
]
const NEAR_Q = [
  1.1984499846799107417e-2, 1.36370839120290507362e-2, 1.26171219808761642112e-1, 7.18286544141962662868e-2,
  5.40397917702171048937e-1, 1.06420880400844228286e-1, 1,
]
const FAR_R = [
  -9.81432934416914548592, -8.12874355063065934246e1, -1.84605092906711035994e2, -1.62396669462573470355e2,
  -6.23753324503260060396e1, -1.05586262253232909814e1, -6.93858572707181764372e-1, -9.86494403484714822705e-3,
]
const FAR_S = [
  -6.04244152148580987438e-2, 6.57024977031928170135, 1.08635005541779435134e2, 4.29008140027567833386e2,
  6.45387271733267880336e2, 4.34565877475229228821e2, 1.376577541435190426e2, 1.96512716674392571292e1, 1,
]
const VERY_FAR_R = [
  -4.83519191608651397019e2, -1.02509513161107724954e3, -6.37566443368389627722e2, -1.60636384855821916062e2,
  -1.77579549177547519889e1, -7.99283237680523006574e-1, -9.86494292470009928597e-3,
]
const VERY_FAR_S = [
  -2.24409524465858183362e1, 4.74528541206955367215e2, 2.55305040643316442583e3, 3.19985821950859553908e3,
  1.53672958608443695994e3, 3.25792512996573918826e2, 3.03380607434824582924e1, 1,
]

/** The complementary error function, relative error below 1e-15 where it does not underflow. */
export function erfc(x: number): number {
  const size = Math.abs(x)
  if (size < 0.84375) {
    const y = polynomial(x * x, SMALL_P) / polynomial(x * x, SMALL_Q)
    return x < 0.25 ? 1 - (x + x * y) : 0.5 - (x * y + (x - 0.5))
  }
  if (size < 1.25) {
    const y = polynomial(size - 1, NEAR_P) / polynomial(size - 1, NEAR_Q)
    return x >= 0 ? 1 - ERX - y : 1 + (ERX + y)
  }
  if (size >= 28) return x > 0 ? 0 : 2
  const s = 1 / (size * size)
  const ratio =
    size < 1 / 0.35 ? polynomial(s, FAR_R) / polynomial(s, FAR_S) : polynomial(s, VERY_FAR_R) / polynomial(s, VERY_FAR_S)
  // A short z whose square is exact keeps the exponential accurate.
  const z = Math.fround(size)
  const tail = (Math.exp(-z * z - 0.5625) * Math.exp((z - size) * (z + size) + ratio)) / size
  return x > 0 ? tail : 2 - tail
}

/** φ, the standard normal density. */
export function density(z: number): number {
  return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI)
}

/** Φ, the standard normal distribution. */
export function distribution(z: number): number {
  return erfc(-z * Math.SQRT1_2) / 2
}

/** ln Φ(z), also where Φ itself is too small for a number. */
export function logDistribution(z: number): number {
  if (z > -37) return Math.log(distribution(z))
  const w = 1 / (z * z)
  return -z * z / 2 - Math.log(-z) - Math.log(2 * Math.PI) / 2 + Math.log1p(-w + 3 * w * w - 15 * w ** 3)
}

/** ln(Φ(high) − Φ(low)) for low < high, each tail taken on its near side. */
export function logBetween(low: number, high: number): number {
  if (low >= 0) return logBetween(-high, -low)
  if (high > 0) return Math.log(1 - distribution(-high) - distribution(low))
  const logHigh = logDistribution(high)
  return logHigh + Math.log1p(-Math.exp(logDistribution(low) - logHigh))
}

/** E[(X)+] for X ~ N(mean, sigma): μΦ(μ/σ) + σφ(μ/σ). A sigma of 0 gives the larger of mean and 0. */
export function expectedExcess(mean: number, sigma: number): number {
  if (sigma <= 0) return Math.max(0, mean)
  const z = mean / sigma
  return mean * distribution(z) + sigma * density(z)
}
