import type { FilterInAir } from './air-path'
import { afterLook, type Belief, thetaOf } from './belief'
import { firstDay } from './cycle'
import { addMonths, type DayNumber, dayNumber, dayText } from './day'
import { asFitted, type DatedLook, limitOf } from './filter'
import type { FilterHistory } from './history'
import type { Light } from './household'
import type { Theta } from './learning'
import { type LookWorth, lookWorth } from './look-worth'
import type { SystemDays } from './system-days'
import type { Tables } from './tables'

/** How full a filter was or will be at the end of a day; 1 is full. */
export interface LoadPoint {
  on: DayNumber
  /** At the 10 %, 50 % and 90 % quantile of θ: a dusty home is the high one. */
  low: number
  middle: number
  high: number
}

/** One filter in its place, from its change to the next. */
export interface Stay {
  /** What it is: "pleated, 1 inch". */
  kind: string
  from: DayNumber
  /** The day of the next change; null for the one in place. */
  to: DayNumber | null
  /** Empty without a loading model. */
  points: LoadPoint[]
  looks: { on: DayNumber; light: Light }[]
  /** Hours the blower ran on it, up to its removal or today. */
  blowerHours: number
  /** What the light said when it was taken out; undefined where nobody said. */
  lightAtRemoval?: Light
  limitDays: number
}

/** What happened to one filter of a system. */
export interface FilterStory {
  filter: string
  hasModel: boolean
  /** It is washed and put back, not taken out for good. */
  isWashed: boolean
  /** The oldest first; empty where no change was ever recorded. */
  stays: Stay[]
  /** What a look today would teach; null where it would teach nothing. */
  worth: LookWorth | null
}

interface StoryFacts {
  f: FilterInAir
  days: SystemDays
  history: FilterHistory
  belief: Belief
  on: DayNumber
}

const MONTHS_BACK = 24
const POINTS_A_STAY = 60

/** The stays of one filter over two years, and what a look today would teach about it. */
export function filterStory({ f, days, history, belief, on }: StoryFacts, tables: Tables): FilterStory {
  const since = dayNumber(addMonths(dayText(on), -MONTHS_BACK))
  const theta = thetaOf(belief)
  const changes = history.changes.filter((change) => change.on <= on)
  const stays = changes.flatMap((change, i): Stay[] => {
    const to = changes[i + 1]?.on ?? null
    // Two changes on one day are one; what was taken out before the two years began is over.
    if (to !== null && (to === change.on || to < since)) return []
    const { f: then, grams } = asFitted(f, days, change.fitted, tables)
    const { loading } = then
    const limitDays = limitOf(then).days
    const seen = to ?? on
    const light = history.looks.find((look) => look.on === to && look.light)?.light
    return [
      {
        kind: then.row.name,
        from: change.on,
        to,
        points: loading
          ? loadPoints(
              // Differences of sums may fall below nothing by their last digit.
              { load: (day) => Math.max(0, grams(day) - grams(change.on)) / loading.capacityGrams, theta },
              { from: change.on, to: to ?? Math.max(on, change.on + limitDays) },
            )
          : [],
        looks: history.looks.flatMap(({ on: day, light: seenLight }) =>
          seenLight && day > change.on && (to === null ? day <= on : day <= to) ? [{ on: day, light: seenLight }] : [],
        ),
        blowerHours: days.blowerThrough(seen) - days.blowerThrough(change.on),
        ...(light && { lightAtRemoval: light }),
        limitDays,
      },
    ]
  })
  return {
    filter: f.filter.id,
    hasModel: f.loading !== null,
    isWashed: f.filter.medium === 'washable' || f.filter.medium === 'screen',
    stays,
    worth: worthOf({ f, days, history, belief, on }, tables),
  }
}

/** What a look today at the filter in place would teach; null without a model, a known change, or anything to see yet. */
export function worthOf({ f, days, history, belief, on }: StoryFacts, tables: Tables): LookWorth | null {
  const changedOn = history.changes.findLast((change) => change.on <= on)?.on
  if (f.loading === null || changedOn === undefined) return null
  const { capacityGrams } = f.loading
  const grams = days.gramsThrough(f)
  const start = grams(changedOn)
  const limit = changedOn + limitOf(f).days
  const dayFull = (theta: number) =>
    firstDay(changedOn + 1, limit - 1, (day) => grams(day) - start >= capacityGrams / theta) ?? limit
  return lookWorth({ belief, expected: (grams(on) - start) / capacityGrams, dayFull, on }, tables.figures)
}

/** The load on a day of a stay, between its points. */
export function loadOn({ points }: Stay, day: DayNumber): LoadPoint | null {
  const after = points.findIndex(({ on }) => on >= day)
  const [a, b] = [points[Math.max(0, after - 1)], points[after]]
  if (!a || !b) return points.at(-1) ?? null
  const part = b.on === a.on ? 0 : (day - a.on) / (b.on - a.on)
  const between = (key: 'low' | 'middle' | 'high') => a[key] + part * (b[key] - a[key])
  return { on: day, low: between('low'), middle: between('middle'), high: between('high') }
}

function loadPoints(
  { load, theta }: { load: (day: DayNumber) => number; theta: Theta },
  { from, to }: { from: DayNumber; to: DayNumber },
): LoadPoint[] {
  const count = Math.min(POINTS_A_STAY, to - from)
  return Array.from({ length: count + 1 }, (_, i) => {
    const on = from + Math.round((i * (to - from)) / Math.max(1, count))
    const x = load(on)
    return { on, low: x * theta.q10, middle: x * theta.q50, high: x * theta.q90 }
  })
}

/** What was believed of θ before anything was seen, and after each look that told something, in order of days. */
export interface BeliefStep {
  /** Null before any look. */
  look: DatedLook | null
  belief: Belief
  theta: Theta
}

/** The belief about a system's θ as it narrowed, look by look; never empty. */
export function beliefSteps(prior: Belief, looks: readonly DatedLook[], tables: Tables): BeliefStep[] {
  const steps: BeliefStep[] = [{ look: null, belief: prior, theta: thetaOf(prior) }]
  const telling = looks.filter((look) => look.expected >= tables.figures.leastLoadToLearn.value)
  for (const look of telling.toSorted((a, b) => a.on - b.on)) {
    const belief = afterLook((steps.at(-1) as BeliefStep).belief, look, tables.figures)
    steps.push({ look, belief, theta: thetaOf(belief) })
  }
  return steps
}
