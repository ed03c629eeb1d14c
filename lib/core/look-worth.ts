import { afterLook, type Belief, chanceOfLights, thetaOf } from './belief'
import type { DayNumber } from './day'
import { LIGHTS, type Light } from './household'
import type { Figures } from './tables'

/** The days between which a filter is full with a chance of 80 %, none before today. */
export interface DayRange {
  early: DayNumber
  due: DayNumber
  late: DayNumber
}

/** One answer that a look today could give. */
export interface LightAnswer extends DayRange {
  light: Light
  /** How likely it is, 0…1. */
  chance: number
}

/** What a look today would teach. */
export interface LookWorth {
  now: DayRange
  answers: LightAnswer[]
  /** Days from early to late: now, and on average over the answers. */
  rangeDays: number
  rangeAfterDays: number
  isWorthIt: boolean
  /** It is full, or over its limit, however clean the home may be. */
  isOver: boolean
}

interface LookFacts {
  belief: Belief
  /** Load of the filter today at θ = 1. */
  expected: number
  /** The day on which it is full at a θ, the calendar limit at the latest. */
  dayFull: (theta: number) => DayNumber
  on: DayNumber
}

/**
 * What a look today would teach: each answer weighed by how likely it is, with the range of days after it. Null for a
 * filter too fresh to tell anything.
 */
export function lookWorth({ belief, expected, dayFull, on }: LookFacts, figures: Figures): LookWorth | null {
  if (expected < figures.leastLoadToLearn.value) return null
  const rangeOf = (believed: Belief): DayRange => {
    const { q10, q50, q90 } = thetaOf(believed)
    // Days that are over cannot be narrowed down any more.
    const day = (theta: number) => Math.max(on, dayFull(theta))
    return { early: day(q90), due: day(q50), late: day(q10) }
  }
  const chances = chanceOfLights(belief, expected, figures)
  const answers = LIGHTS.map((light) => ({
    light,
    chance: chances[light],
    ...rangeOf(afterLook(belief, { light, expected }, figures)),
  }))
  const now = rangeOf(belief)
  const rangeDays = now.late - now.early
  const rangeAfterDays = answers.reduce((sum, { chance, late, early }) => sum + chance * (late - early), 0)
  return {
    now,
    answers,
    rangeDays,
    rangeAfterDays,
    isOver: now.late <= on,
    isWorthIt: rangeDays - rangeAfterDays >= figures.lookWorthDays.value,
  }
}
