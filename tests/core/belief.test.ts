import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { afterLook, type Belief, chanceOfLights, priorBelief, thetaOf } from '@/lib/core/belief'
import { LIGHTS } from '@/lib/core/household'
import { evidenceOf, type Look, learnTheta, worldPrior } from '@/lib/core/learning'
import { lookWorth } from '@/lib/core/look-worth'
import { distribution } from '@/lib/core/normal'

const { figures } = tables
const prior = priorBelief(worldPrior(figures))

const anyLook: fc.Arbitrary<Look> = fc.record({
  light: fc.constantFrom(...LIGHTS),
  expected: fc.oneof(fc.double({ min: 0.001, max: 4, noNaN: true }), fc.constantFrom(0.009, 0.01, 0.4, 0.8, 1)),
})
const anyBelief = fc
  .array(anyLook, { maxLength: 8 })
  .map((looks) => looks.reduce((belief, look) => afterLook(belief, look, figures), prior))

test('the curve and the quantiles that plans use are one and the same belief', () => {
  fc.assert(
    fc.property(fc.array(anyLook, { maxLength: 12 }), (looks) => {
      const belief = looks.reduce((before, look) => afterLook(before, look, figures), prior)
      const [drawn, planned] = [thetaOf(belief), learnTheta(looks, figures)]
      for (const key of ['q10', 'q50', 'q90'] as const) expect(drawn[key] / planned[key]).toBeCloseTo(1, 9)
    }),
  )
  expect(thetaOf(prior).q50).toBeCloseTo(1, 12)
})

test('even a dark look changes nothing where the filter is too fresh to tell, and from the least load on it does', () => {
  const least = figures.leastLoadToLearn.value
  for (const light of LIGHTS) expect(afterLook(prior, { light, expected: 0.99 * least }, figures)).toEqual(prior)
  expect(thetaOf(afterLook(prior, { light: 'dark', expected: least }, figures)).q50).toBeGreaterThan(2)
})

test('shares sum to one, also after looks that contradict each other', () => {
  fc.assert(
    fc.property(anyBelief, fc.double({ min: 0.01, max: 4, noNaN: true }), (belief, expected) => {
      expect(belief.share.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
      const chances = chanceOfLights(belief, expected, figures)
      expect(LIGHTS.reduce((sum, light) => sum + chances[light], 0)).toBeCloseTo(1, 9)
    }),
  )
})

test('looks that contradict each other as strongly, however often, leave the middle where it was', () => {
  // Dark when an eighth of what it takes was caught, and clear at eight times the most that is: alike on both sides.
  const both: Look[] = [
    { light: 'dark', expected: figures.darkAbove.value / 8 },
    { light: 'clear', expected: 8 * figures.clearBelow.value },
  ]
  const looks = Array.from({ length: 40 }, () => both).flat()
  expect(learnTheta(looks, figures).q50).toBeCloseTo(1, 9)
  expect(evidenceOf(looks, figures)?.mean).toBeCloseTo(0, 9)
  const belief = looks.reduce((before, look) => afterLook(before, look, figures), prior)
  expect(belief.share.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9)
})

test('before any look the chances are those of a normal load seen with normal error', () => {
  // ln x is N(ln expected, σ² + τ²) then: the textbook result for a probit with a normal prior.
  const spread = Math.hypot(figures.thetaSigma.value, figures.lightSpread.value)
  for (const expected of [0.1, 0.4, 0.6, 0.8, 1.5]) {
    const chances = chanceOfLights(prior, expected, figures)
    expect(chances.clear).toBeCloseTo(distribution(Math.log(0.4 / expected) / spread), 3)
    expect(chances.dark).toBeCloseTo(1 - distribution(Math.log(0.8 / expected) / spread), 3)
  }
})

/** The mean of a belief's place among the factors. */
function meanOf({ share }: Belief): number {
  return share.reduce((sum, s, i) => sum + s * i, 0)
}

function varianceOf(belief: Belief): number {
  const mean = meanOf(belief)
  return belief.share.reduce((sum, s, i) => sum + s * (i - mean) ** 2, 0)
}

/** What is expected of a belief after a look: over its answers, each as often as it is likely. */
function afterAnyLook(belief: Belief, expected: number, of: (after: Belief) => number): number {
  const chances = chanceOfLights(belief, expected, figures)
  return LIGHTS.reduce((sum, light) => sum + chances[light] * of(afterLook(belief, { light, expected }, figures)), 0)
}

test('a look is never expected to teach less than nothing', () => {
  let taught = 0
  fc.assert(
    fc.property(anyBelief, fc.double({ min: 0.01, max: 4, noNaN: true }), (belief, expected) => {
      const before = varianceOf(belief)
      const after = afterAnyLook(belief, expected, varianceOf)
      expect(after).toBeLessThanOrEqual(before * (1 + 1e-9))
      if (after < before * 0.95) taught++
    }),
    { numRuns: 300 },
  )
  expect(taught).toBeGreaterThan(50)
})

test('the mean of what may be believed after a look is what is believed before it', () => {
  fc.assert(
    fc.property(anyBelief, fc.double({ min: 0.01, max: 4, noNaN: true }), (belief, expected) => {
      expect(afterAnyLook(belief, expected, meanOf)).toBeCloseTo(meanOf(belief), 6)
    }),
  )
})

/** A filter that fills evenly, in 100 days at θ = 1, with so long a limit. */
function evenly(on: number, limit: number) {
  return {
    belief: prior,
    on,
    expected: on / 100,
    dayFull: (theta: number) => Math.min(limit, Math.ceil(100 / theta)),
  }
}

test('a look at half a filter is worth it; at a fresh one or under a close limit it is not', () => {
  const half = lookWorth(evenly(50, 400), figures)
  expect(half).toMatchObject({ now: { early: 53, due: 100, late: 190 }, rangeDays: 137, isWorthIt: true })
  expect(half?.rangeAfterDays).toBeLessThan(125)
  expect(lookWorth({ ...evenly(0, 400), expected: 0.009 }, figures)).toBeNull()
  expect(lookWorth({ ...evenly(1, 400), expected: figures.leastLoadToLearn.value }, figures)).not.toBeNull()
  const limited = lookWorth(evenly(30, 45), figures)
  expect(limited).toMatchObject({ rangeDays: 0, isWorthIt: false, isOver: false })
})

test('a look is worth it that narrows the days by just as many as it has to, and not by less', () => {
  const half = lookWorth(evenly(50, 400), figures)
  const narrowed = (half?.rangeDays ?? 0) - (half?.rangeAfterDays ?? 0)
  const asking = (days: number) => ({ ...figures, lookWorthDays: { ...figures.lookWorthDays, value: days } })
  expect(lookWorth(evenly(50, 400), asking(narrowed))?.isWorthIt).toBe(true)
  expect(lookWorth(evenly(50, 400), asking(narrowed + 0.001))?.isWorthIt).toBe(false)
  // A filter that has hardly begun is clear in almost any home.
  expect(lookWorth(evenly(2, 400), figures)).toMatchObject({ rangeDays: 137, isWorthIt: false })
})

test('it is over on the day on which it is full in the cleanest home, and on its limit', () => {
  for (const [on, limit, isOver] of [
    [189, 400, false],
    [190, 400, true],
    [44, 45, false],
    [45, 45, true],
    [46, 45, true],
  ] as const)
    expect([on, lookWorth(evenly(on, limit), figures)?.isOver]).toEqual([on, isOver])
})

test('more light never makes the day earlier, and no day is before today', () => {
  fc.assert(
    fc.property(anyBelief, fc.integer({ min: 2, max: 300 }), fc.integer({ min: 20, max: 400 }), (belief, on, limit) => {
      const worth = lookWorth({ ...evenly(on, limit), belief }, figures)
      if (!worth) return
      const [clear, half, dark] = LIGHTS.map((light) => worth.answers.find((answer) => answer.light === light))
      for (const key of ['early', 'due', 'late'] as const) {
        expect(clear?.[key]).toBeGreaterThanOrEqual(half?.[key] ?? 0)
        expect(half?.[key]).toBeGreaterThanOrEqual(dark?.[key] ?? 0)
        expect(dark?.[key]).toBeGreaterThanOrEqual(on)
      }
    }),
  )
})
