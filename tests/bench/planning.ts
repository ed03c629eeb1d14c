import rrule from 'rrule'
import { tables } from '@/content/tables'
import type { Household } from '@/lib/core/household'
import { plan, planHousehold } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { manyHouseholds } from './many-households'
import { atLeast, middle, type Row } from './table'

const ON = '2026-11-25'
const ROUNDS = 9

const { RRule } = rrule
function expandRules(): void {
  for (let i = 0; i < 20_000; i++) {
    const rule = new RRule({
      freq: RRule.MONTHLY,
      dtstart: new Date(Date.UTC(2026, 10, 1 + (i % 28))),
      until: new Date(Date.UTC(2027, 10, 25)),
    })
    rule.all()
  }
}

/** Everything about each home: dates, workings, warnings and reasons; climates and profiles are made anew each time. */
function planAll(planned: readonly Household[]): void {
  const profiles = new Profiles(tables.figures)
  for (const home of planned) planHousehold(home, tables, ON, profiles)
}

function synchronous(run: () => void): number {
  const start = process.hrtime.bigint()
  run()
  return Number(process.hrtime.bigint() - start) / 1e6
}

/** The fastest of several runs: whatever else the machine does only adds to a time. */
function fastest(times: number[]): number {
  return Math.min(...times)
}

/** Planning against as many monthly rules of a calendar library, and how it grows with the number of homes. */
export function planningRows(): Row[] {
  const homes = manyHouseholds(10_000, ON)
  const few = homes.slice(0, 1000)
  for (let i = 0; i < 3; i++) planAll(homes)
  expandRules()
  // Each round measures one after the other, so that a busy moment of the machine falls on both.
  const rounds = Array.from({ length: ROUNDS }, () => ({
    rules: synchronous(expandRules),
    small: synchronous(() => planAll(few)),
    plans: middle([1, 2, 3].map(() => synchronous(() => planAll(homes)))),
  }))
  const rules = fastest(rounds.map((r) => r.rules))
  const small = fastest(rounds.map((r) => r.small))
  const plans = fastest(rounds.map((r) => r.plans))
  // Of each round by itself: the machine is now quicker and now slower, for both alike.
  const times = middle(rounds.map((r) => r.rules / r.plans))
  const whole = fastest(Array.from({ length: 3 }, () => synchronous(() => void plan(homes, tables, ON))))
  // Made last: so many homes in memory slow the collection of garbage for everything else.
  const many = manyHouseholds(100_000, ON)
  const pairs = Array.from({ length: 3 }, () => ({
    large: synchronous(() => planAll(many)),
    tenth: synchronous(() => planAll(homes)),
  }))
  const large = fastest(pairs.map((pair) => pair.large))
  const growth = middle(pairs.map((pair) => pair.large / 10 / pair.tenth))
  const each = (count: number, ms: number): Row => ({
    what: `plan ${count.toLocaleString('en')} homes, ${(2 * count).toLocaleString('en')} filters`,
    figure: `${ms.toFixed(0)} ms, ${((1000 * ms) / count).toFixed(1)} µs each`,
  })
  return [
    { what: 'rrule expands 20,000 monthly rules over one year', figure: `${rules.toFixed(0)} ms` },
    each(1000, small),
    each(10_000, plans),
    each(100_000, large),
    atLeast('rrule / plan at 10,000 homes, the middle of nine rounds', times, 10),
    {
      what: 'a home at 100,000 / a home at 10,000',
      figure: `${growth.toFixed(2)} times`,
      goal: 'linear: 0.7 to 1.5 times',
      meets: growth > 0.7 && growth < 1.5,
    },
    { what: 'the same 10,000 with rounds and supplies', figure: `${whole.toFixed(0)} ms` },
  ]
}
