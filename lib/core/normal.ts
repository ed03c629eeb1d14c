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
  -0.000023763016656650163, -0.005770270296489442, -0.02848174957559851, -0.3250421072470015, 0.12837916709551256,
]
const SMALL_Q = [
  -0.000003960228278775368, 0.00013249473800432164, 0.005081306281875766, 0.0650222499887673, 0.39791722395915535, 1,
]
const ERX = 0.8450629115104675
const NEAR_P = [
  -0.002166375594868791, 0.035478304325618236, -0.11089469428239668, 0.31834661990116175, -0.3722078760357013,
  0.41485611868374833, -0.0023621185607526594,
]
const NEAR_Q = [
  0.011984499846799107, 0.01363708391202905, 0.12617121980876164, 0.07182865441419627, 0.540397917702171,
  0.10642088040084423, 1,
]
const FAR_R = [
  -9.814329344169145, -81.2874355063066, -184.60509290671104, -162.39666946257347, -62.375332450326006,
  -10.558626225323291, -0.6938585727071818, -0.009864944034847148,
]
const FAR_S = [
  -0.0604244152148581, 6.570249770319282, 108.63500554177944, 429.00814002756783, 645.3872717332679, 434.56587747522923,
  137.65775414351904, 19.651271667439257, 1,
]
const VERY_FAR_R = [
  -483.5191916086514, -1025.0951316110772, -637.5664433683896, -160.63638485582192, -17.757954917754752,
  -0.799283237680523, -0.0098649429247001,
]
const VERY_FAR_S = [
  -22.44095244658582, 474.52854120695537, 2553.0504064331644, 3199.8582195085955, 1536.729586084437, 325.7925129965739,
  30.33806074348246, 1,
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
    size < 1 / 0.35
      ? polynomial(s, FAR_R) / polynomial(s, FAR_S)
      : polynomial(s, VERY_FAR_R) / polynomial(s, VERY_FAR_S)
  // A short z whose square is exact keeps the exponential accurate.
  const z = Math.fround(size)
  const tail = (Math.exp(-z * z - 0.5625) * Math.exp((z - size) * (z + size) + ratio)) / size
  return x > 0 ? tail : 2 - tail
}

/** φ, the standard normal density. */
export function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
}

/** Φ, the standard normal distribution. */
export function distribution(z: number): number {
  return erfc(-z * Math.SQRT1_2) / 2
}

// Below it Φ is too small for a number of full precision.
const SMALLEST = -37

/** ln Φ(z), also where Φ itself is too small for a number. */
export function logDistribution(z: number): number {
  if (z > SMALLEST) return Math.log(distribution(z))
  const w = 1 / (z * z)
  return (-z * z) / 2 - Math.log(-z) - Math.log(2 * Math.PI) / 2 + Math.log1p(-w + 3 * w * w - 15 * w ** 3)
}

/** ln(Φ(high) − Φ(low)) for low < high, each tail taken on its near side. */
export function logBetween(low: number, high: number): number {
  if (low >= 0) return logBetween(-high, -low)
  if (high > 0) return Math.log(1 - distribution(-high) - distribution(low))
  if (high > SMALLEST) return Math.log(distribution(high) - distribution(low))
  const logHigh = logDistribution(high)
  return logHigh + Math.log1p(-Math.exp(logDistribution(low) - logHigh))
}

/** E[(X)+] for X ~ N(mean, sigma): μΦ(μ/σ) + σφ(μ/σ). A sigma of 0 gives the larger of mean and 0. */
export function expectedExcess(mean: number, sigma: number): number {
  if (sigma <= 0) return Math.max(0, mean)
  const z = mean / sigma
  return mean * distribution(z) + sigma * density(z)
}
