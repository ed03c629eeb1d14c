import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { LIGHTS } from '@/lib/core/household'
import { evidenceOf, type Look, learnTheta, quantiles } from '@/lib/core/learning'
import { erfc, expectedExcess, logBetween, logDistribution } from '@/lib/core/normal'
import { below, density, logAbove } from '../support/oracle/normal'

const { figures } = tables

describe('the normal distribution against an independent series and continued fraction', () => {
  test('erfc agrees to twelve digits, far into its tail too', () => {
    for (let x = -6; x <= 26; x += 0.037) {
      const wanted = x < 1 ? 2 * (1 - below(x * Math.SQRT2)) : 2 * Math.exp(logAbove(x * Math.SQRT2))
      expect(Math.abs(erfc(x) / wanted - 1)).toBeLessThan(1e-12)
    }
  })

  // Abramowitz and Stegun, Handbook of Mathematical Functions, table of the error function [S?].
  test('erfc has the handbook’s values', () => {
    expect(erfc(0)).toBe(1)
    expect(erfc(0.5)).toBeCloseTo(0.4795001222, 10)
    expect(erfc(1)).toBeCloseTo(0.1572992071, 10)
    expect(erfc(2)).toBeCloseTo(0.004677734981, 12)
    expect([erfc(28), erfc(-28), erfc(40), erfc(-6)]).toEqual([0, 2, 0, 2])
    expect(erfc(-0.5)).toBeCloseTo(2 - 0.4795001222, 10)
    expect(erfc(-1)).toBeCloseTo(2 - 0.1572992071, 10)
  })

  test('logarithms of tails that no number can hold stay right', () => {
    for (const z of [-1, -8, -30, -36.9, -37.1, -60, -400]) {
      expect(Math.abs(logDistribution(z) / logAbove(-z) - 1)).toBeLessThan(1e-6)
    }
    expect(logBetween(40, 41)).toBeCloseTo(logBetween(-41, -40), 9)
    expect(logBetween(1, 2)).toBeCloseTo(Math.log(below(2) - below(1)), 12)
    expect(logBetween(-2, -1)).toBeCloseTo(Math.log(below(2) - below(1)), 12)
    expect(logBetween(0, 1)).toBeCloseTo(Math.log(below(1) - 0.5), 12)
    // ln(Φ(−40) − Φ(−41)), of which the second is hardly anything.
    expect(logBetween(-41, -40) - logAbove(40)).toBeCloseTo(Math.log1p(-Math.exp(logAbove(41) - logAbove(40))), 9)
    expect(logBetween(-40.01, -40) - logAbove(40)).toBeCloseTo(Math.log1p(-Math.exp(logAbove(40.01) - logAbove(40))), 4)
    expect(logBetween(-1, 1)).toBeCloseTo(Math.log(below(1) - below(-1)), 12)
  })

  test('the expected excess is the integral that it stands for', () => {
    for (const [mean, sigma] of [
      [3, 6],
      [-10, 6],
      [0, 3],
    ] as const) {
      let integral = 0
      const step = 0.001
      for (let z = -9 + step / 2; z < 9; z += step) integral += Math.max(0, mean + sigma * z) * density(z) * step
      expect(expectedExcess(mean, sigma)).toBeCloseTo(integral, 6)
    }
    expect(expectedExcess(4, 0)).toBe(4)
    expect(expectedExcess(-4, 0)).toBe(0)
    expect(expectedExcess(0, 0)).toBe(0)
  })
})

const LOOKS: Look[][] = [
  [{ light: 'half', expected: 0.5 }],
  [
    { light: 'clear', expected: 0.5 },
    { light: 'dark', expected: 1.1 },
  ],
  [
    { light: 'dark', expected: 0.5 },
    { light: 'half', expected: 0.3 },
    { light: 'half', expected: 0.6 },
  ],
]

/** Prior times likelihood at ln θ = u, of the model's figures. */
function weightAt(u: number, looks: readonly Look[]): number {
  return looks.reduce(
    (weight, { light, expected }) => {
      const clear = below((Math.log(0.4 / expected) - u) / 0.5)
      const notDark = below((Math.log(0.8 / expected) - u) / 0.5)
      return weight * (light === 'clear' ? clear : light === 'half' ? notDark - clear : 1 - notDark)
    },
    density(u / 0.5),
  )
}

/** Quantiles of ln θ by integrating prior times likelihood in fine steps: no grid, no logarithms, no interpolation. */
function integrated(looks: Look[], share: number): number {
  const step = 0.002
  const weights: number[] = []
  for (let u = -2; u <= 2; u += step) weights.push(weightAt(u, looks))
  const wanted = share * weights.reduce((a, b) => a + b, 0)
  let sum = 0
  const passed = weights.findIndex((weight) => {
    sum += weight
    return sum >= wanted
  })
  return -2 + step * passed
}

const anyLook = fc.record({
  light: fc.constantFrom(...LIGHTS),
  expected: fc.double({ min: 0.05, max: 2.5, noNaN: true }),
})

describe('what looks tell of θ', () => {
  test('before any, the median is exactly 1 and the quantiles are those of a spread of 0.5', () => {
    const { q10, q50, q90 } = learnTheta([], figures)
    expect(q50).toBeCloseTo(1, 12)
    expect(Math.log(q90)).toBeCloseTo(0.5 * 1.2815515655, 2)
    expect(q10 * q90).toBeCloseTo(1, 9)
  })

  test('the posterior agrees with direct numerical integration within half a step of its grid', {
    timeout: 30_000,
  }, () => {
    fc.assert(
      fc.property(fc.array(anyLook, { maxLength: 5 }), (looks) => {
        const theta = learnTheta(looks, figures)
        for (const [q, share] of [
          ['q10', 0.1],
          ['q50', 0.5],
          ['q90', 0.9],
        ] as const) {
          expect(Math.abs(Math.log(theta[q]) - integrated(looks, share))).toBeLessThan(0.01)
        }
      }),
      { seed: 5, numRuns: 40 },
    )
  })

  test('what is believed before may have any middle and spread, one after the other', () => {
    for (const [mean, sigma] of [
      [0.3, 0.2],
      [0, 0.3],
      [0, 0.5],
      [-0.4, 0.5],
      [0, 0.5],
    ] as const) {
      const { q10, q50, q90 } = learnTheta([], figures, { mean, sigma })
      expect(Math.log(q50)).toBeCloseTo(mean, 3)
      expect(Math.log(q10)).toBeCloseTo(mean - sigma * 1.2815515655, 2)
      expect(Math.log(q90)).toBeCloseTo(mean + sigma * 1.2815515655, 2)
    }
  })

  test('what looks alone say is what they add to the prior’s precision', () => {
    for (const looks of LOOKS) {
      let [total, first, second] = [0, 0, 0]
      for (let u = -2; u <= 2; u += 0.002) {
        const weight = weightAt(u, looks)
        total += weight
        first += weight * u
        second += weight * u * u
      }
      const mean = first / total
      const variance = second / total - mean * mean
      const precision = 1 / variance - 1 / 0.5 ** 2
      const found = evidenceOf(looks, figures)
      expect(found?.variance).toBeCloseTo(1 / precision, 2)
      expect(found?.mean).toBeCloseTo(mean / variance / precision, 2)
    }
    expect(evidenceOf([], figures)).toBeNull()
    expect(evidenceOf([{ light: 'dark', expected: 0.0099 }], figures)).toBeNull()
    expect(evidenceOf([{ light: 'dark', expected: 0.01 }], figures)).not.toBeNull()
  })

  test('the ends of what is believed are the ends of its grid', () => {
    const only = (at: number) => quantiles(Float64Array.from({ length: 201 }, (_, i) => (i === at ? 0 : -2000)))
    expect([only(0).q10, only(0).q50]).toEqual([Math.exp(-2), Math.exp(-2)])
    expect(Math.log(only(200).q50)).toBeCloseTo(2, 1)
    expect(Math.log(only(200).q90)).toBeLessThanOrEqual(2)
    expect(Math.log(only(100).q50)).toBeCloseTo(0, 6)
  })

  test('more light never lengthens θ', { timeout: 30_000 }, () => {
    const anyLoad = fc.double({ min: 0.001, max: 30, noNaN: true })
    fc.assert(
      fc.property(
        fc.array(fc.record({ light: fc.constantFrom(...LIGHTS), expected: anyLoad }), { minLength: 1, maxLength: 12 }),
        fc.nat(),
        (looks, pick) => {
          const i = pick % looks.length
          const [clear, half, dark] = LIGHTS.map((light) =>
            learnTheta(looks.with(i, { light, expected: (looks[i] as Look).expected }), figures),
          )
          for (const q of ['q10', 'q50', 'q90'] as const) {
            expect(clear?.[q]).toBeLessThanOrEqual((half?.[q] ?? 0) * (1 + 1e-12))
            expect(half?.[q]).toBeLessThanOrEqual((dark?.[q] ?? 0) * (1 + 1e-12))
          }
        },
      ),
      { seed: 6, numRuns: 150 },
    )
  })

  test('a look at a filter that has caught next to nothing is passed over', () => {
    expect(learnTheta([{ light: 'dark', expected: 0.0099 }], figures)).toEqual(learnTheta([], figures))
    expect(learnTheta([{ light: 'dark', expected: 0.0101 }], figures).q50).toBeGreaterThan(1)
  })
})
