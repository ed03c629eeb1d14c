import { describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { afterLook, priorBelief, thetaOf } from '@/lib/core/belief'
import { dayNumber } from '@/lib/core/day'
import type { DatedLook } from '@/lib/core/filter'
import { beliefSteps, filterStory, loadOn, type Stay, worthOf } from '@/lib/core/filter-story'
import type { FilterHistory } from '@/lib/core/history'
import { type Filter, type Light, MEDIA } from '@/lib/core/household'
import { learnTheta, worldPrior } from '@/lib/core/learning'
import { Profiles } from '@/lib/core/profile'
import { systemDays } from '@/lib/core/system-days'
import { bareHome, COLD, EVEN, HALL } from '../support/plan-of'

const { figures } = tables
const ON = dayNumber('2026-11-25')
const TWO_YEARS_AGO = dayNumber('2024-11-25')
/** Of a home half as dusty again as most. */
const DUSTY = priorBelief({ mean: Math.log(1.5), sigma: 0.3 })

function hall(changes: FilterHistory['changes'], looks: FilterHistory['looks'] = [], filter: Partial<Filter> = {}) {
  const home = bareHome({ climate: COLD, systems: [EVEN], filters: [{ ...HALL, ...filter }] })
  const days = systemDays(home, EVEN, ON, tables, new Profiles(figures))
  const f = days.path.filters[0] as (typeof days.path.filters)[number]
  const grams = days.gramsThrough(f)
  /** At θ = 1. */
  const daysToFill = (f.loading?.capacityGrams ?? 0) / (grams(ON) - grams(ON - 1))
  const facts = { f, days, history: { changes, looks }, belief: DUSTY, on: ON }
  return { daysToFill, story: filterStory(facts, tables), worth: worthOf(facts, tables) }
}

function currentStay(...given: Parameters<typeof hall>): Stay {
  return hall(...given).story.stays.at(-1) as Stay
}

describe('the stays of a filter', () => {
  test('of two years run from change to change; two changes of one day are one, and one still to come is none', () => {
    const since = TWO_YEARS_AGO
    const on = [since - 300, since - 100, since, since + 50, since + 50, ON, ON + 3]
    const { stays } = hall(on.map((day) => ({ on: day }))).story
    expect(stays.map(({ from, to, blowerHours }) => [from, to, blowerHours])).toEqual([
      // Taken out on the first day of the two years.
      [since - 100, since, expect.closeTo(2400, 6)],
      [since, since + 50, expect.closeTo(1200, 6)],
      [since + 50, ON, expect.closeTo((ON - since - 50) * 24, 6)],
      [ON, null, 0],
    ])
  })

  test('have the looks after the change up to the day of the next, or up to today, where the light was seen', () => {
    const seen: [number, Light?][] = [[-20, 'half'], [-15], [-10, 'dark'], [-9, 'clear'], [0, 'half'], [1, 'dark']]
    const looks = seen.map(([after, light]) => ({ on: ON + after, light }))
    const { stays } = hall([{ on: ON - 20 }, { on: ON - 10 }], looks).story
    expect(stays.map((stay) => stay.looks.map(({ on, light }) => [on - ON, light]))).toEqual([
      [[-10, 'dark']],
      [
        [-9, 'clear'],
        [0, 'half'],
      ],
    ])
    expect(stays.map(({ lightAtRemoval }) => lightAtRemoval)).toEqual(['dark', undefined])
  })

  test('tell what was fitted, and the limit of that', () => {
    const { stays } = hall([{ on: ON - 60, fitted: { medium: 'fiberglass' } }, { on: ON - 40 }]).story
    expect(stays.map(({ kind, limitDays }) => [kind, limitDays])).toEqual([
      ['fiberglass panel', 30],
      [expect.stringContaining('pleated'), 90],
    ])
  })

  test.each(MEDIA.map((medium) => [medium]))('%s: it is washed, or taken out for good', (medium) => {
    const { story } = hall([], [], { medium })
    expect(story.isWashed).toBe(['washable', 'screen'].includes(medium))
  })
})

describe('the load of a stay', () => {
  test('grows from nothing by the dust of a day, with θ at its three quantiles', () => {
    const { daysToFill, story } = hall([{ on: ON - 200 }, { on: ON - 100 }])
    expect(daysToFill).toBeGreaterThan(20)
    const { q10, q50, q90 } = thetaOf(DUSTY)
    const [past] = story.stays
    expect(past?.points[0]).toEqual({ on: ON - 200, low: 0, middle: 0, high: 0 })
    for (const { on, low, middle, high } of past?.points ?? []) {
      const atOne = (on - (ON - 200)) / daysToFill
      expect([low, middle, high]).toEqual([q10, q50, q90].map((theta) => expect.closeTo(atOne * theta, 9)))
    }
    expect(q50).toBeCloseTo(1.5, 2)
  })

  test('is drawn by 61 points at most, each day by its own where the stay is shorter, the last on its last day', () => {
    const { stays } = hall([{ on: ON - 210 }, { on: ON - 10 }, { on: ON }]).story
    const [long, short] = stays.map(({ points }) => points.map(({ on }) => on - ON))
    // 200 days in 60 steps of 3⅓.
    expect(long).toHaveLength(61)
    expect(long?.slice(0, 4)).toEqual([-210, -207, -203, -200])
    expect(long?.at(-1)).toBe(-10)
    expect(short).toEqual([-10, -9, -8, -7, -6, -5, -4, -3, -2, -1, 0])
  })

  test('of the filter in place is drawn to its limit, or to today where it is over that', () => {
    expect(currentStay([{ on: ON - 10 }]).points.at(-1)?.on).toBe(ON + 80)
    expect(currentStay([{ on: ON - 200 }]).points.at(-1)?.on).toBe(ON)
  })

  test('is not drawn where there is no model of it', () => {
    const { story } = hall([{ on: ON - 10 }], [], { medium: 'screen' })
    expect(story).toMatchObject({ hasModel: false, worth: null, stays: [{ points: [], limitDays: 30 }] })
    expect(hall([]).story).toMatchObject({ hasModel: true, worth: null, stays: [] })
  })

  test('between two points lies on the straight line between them, and before and after them at the ends', () => {
    const point = (on: number, middle: number) => ({ on, low: middle / 2, middle, high: middle * 3 })
    const stay = { ...currentStay([{ on: ON }]), points: [point(100, 0), point(110, 0.2), point(130, 0.8)] }
    const at = (day: number) => loadOn(stay, day)
    const near = (on: number, middle: number) => ({
      on,
      low: expect.closeTo(middle / 2, 9),
      middle: expect.closeTo(middle, 9),
      high: expect.closeTo(middle * 3, 9),
    })
    const line: [number, number][] = [
      [95, 0],
      [100, 0],
      [105, 0.1],
      [110, 0.2],
      [115, 0.35],
      [130, 0.8],
    ]
    for (const [day, middle] of line) expect(at(day)).toEqual(near(day, middle))
    expect(at(131)).toEqual(point(130, 0.8))
    expect(loadOn({ ...stay, points: [] }, 100)).toBeNull()
  })
})

describe('what a look today would teach', () => {
  test('is told of the filter in place today, not of one taken out or one still to come', () => {
    const { worth, daysToFill } = hall([{ on: ON - 50 }, { on: ON - 20 }, { on: ON + 5 }], [], { labelLimitDays: 900 })
    const { q10, q50, q90 } = thetaOf(DUSTY)
    const full = (theta: number) => ON - 20 + Math.ceil(daysToFill / theta - 1e-9)
    expect(worth?.now).toEqual({ early: full(q90), due: full(q50), late: full(q10) })
    // Fitted today, it holds nothing yet.
    expect(hall([{ on: ON - 50 }, { on: ON }]).worth).toBeNull()
  })

  test('ends at the filter’s limit, also where it would be full the day after', () => {
    const late = (labelLimitDays: number) => hall([{ on: ON - 20 }], [], { labelLimitDays }).worth?.now.late ?? 0
    const freely = late(900)
    const days = freely - (ON - 20)
    expect([days + 1, days, days - 1, days - 2].map((limit) => late(limit) - freely)).toEqual([0, 0, -1, -2])
  })
})

test('what is believed of the dust narrows look by look in order of days, without those too fresh to tell', () => {
  const look = (on: number, light: Light, expected: number): DatedLook => ({ filter: 'hall', on, light, expected })
  const least = figures.leastLoadToLearn.value
  const [half, atLeast, dark] = [look(20, 'half', 0.7), look(30, 'clear', least), look(40, 'dark', 0.5)]
  const prior = priorBelief(worldPrior(figures))
  const steps = beliefSteps(prior, [dark, half, look(10, 'dark', least * 0.99), atLeast], tables)
  expect(steps.map((step) => step.look)).toEqual([null, half, atLeast, dark])
  expect(steps[0]).toEqual({ look: null, belief: prior, theta: thetaOf(prior) })
  expect(steps[1]?.theta).toEqual(thetaOf(afterLook(prior, half, figures)))
  const learned = learnTheta([half, atLeast, dark], figures)
  for (const key of ['q10', 'q50', 'q90'] as const) expect((steps[3]?.theta[key] ?? 0) / learned[key]).toBeCloseTo(1, 9)
  expect(beliefSteps(prior, [], tables)).toHaveLength(1)
})
