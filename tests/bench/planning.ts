import rrule from 'rrule'
import { tables } from '@/content/tables'
import type { Household } from '@/lib/core/household'
import { plan, planHousehold } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { manyHouseholds } from './many-households'

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

const homes = manyHouseholds(10_000, ON)

/** Everything about each home: dates, workings, warnings and reasons; climates and profiles are made anew each time. */
function planAll(planned: readonly Household[]): void {
  const profiles = new Profiles(tables.figures)
  for (const home of planned) planHousehold(home, tables, ON, profiles)
}

function milliseconds(run: () => void): number {
  const start = process.hrtime.bigint()
  run()
  return Number(process.hrtime.bigint() - start) / 1e6
}

/** The fastest of several runs: whatever else the machine does only adds to a time. */
function fastest(times: number[]): number {
  return Math.min(...times)
}

// Each round measures one after the other, so that a busy moment of the machine falls on both.
const few = homes.slice(0, 1000)
for (let i = 0; i < 3; i++) planAll(homes)
expandRules()
const rounds = Array.from({ length: ROUNDS }, () => ({
  rules: milliseconds(expandRules),
  small: milliseconds(() => planAll(few)),
  plans: milliseconds(() => planAll(homes)),
}))
const rules = fastest(rounds.map((r) => r.rules))
const small = fastest(rounds.map((r) => r.small))
const plans = fastest(rounds.map((r) => r.plans))
const whole = fastest(Array.from({ length: 3 }, () => milliseconds(() => void plan(homes, tables, ON))))
// Made last: so many homes in memory slow the collection of garbage for everything else.
const many = manyHouseholds(100_000, ON)
const large = fastest(Array.from({ length: 3 }, () => milliseconds(() => planAll(many))))

console.log(`rrule expands 20,000 monthly rules over one year: ${rules.toFixed(0)} ms`)
for (const [count, ms] of [
  [1000, small],
  [10_000, plans],
  [100_000, large],
] as const) {
  const each = ((1000 * ms) / count).toFixed(1)
  console.log(`plan ${count} households, ${2 * count} filters: ${ms.toFixed(0)} ms (${each} µs each)`)
}
const times = rules / plans
console.log(`rrule / plan at 10,000 households: ${times.toFixed(1)} (at least 10 is asked)`)
console.log(`with rounds and supplies: ${whole.toFixed(0)} ms`)
