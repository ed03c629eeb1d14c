import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { LIGHTS } from '@/lib/core/household'
import { type Look, learnTheta } from '@/lib/core/learning'
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
  })

  test('logarithms of tails that no number can hold stay right', () => {
    for (const z of [-1, -8, -30, -36.9, -37.1, -60, -400]) {
      expect(Math.abs(logDistribution(z) / logAbove(-z) - 1)).toBeLessThan(1e-6)
    }
    expect(logBetween(40, 41)).toBeCloseTo(logBetween(-41, -40), 9)
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
  })
})

/** Quantiles of ln θ by integrating prior times likelihood in fine steps: no grid, no logarithms, no interpolation. */
function integrated(looks: Look[], share: number): number {
  const step = 0.002
  const weights: number[] = []
  for (let u = -2; u <= 2; u += step) {
    let weight = density(u / 0.5)
    for (const { light, expected } of looks) {
      const clear = below((Math.log(0.4 / expected) - u) / 0.5)
      const notDark = below((Math.log(0.8 / expected) - u) / 0.5)
      weight *= light === 'clear' ? clear : light === 'half' ? notDark - clear : 1 - notDark
    }
    weights.push(weight)
  }
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
