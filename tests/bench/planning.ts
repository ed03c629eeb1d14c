import rrule from 'rrule'
import { tables } from '@/content/tables'
import type { Household } from '@/lib/core/household'
import { plan, planHousehold } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { manyHouseholds } from './many-households'

const ON = '2026-11-25'
const ROUNDS = 7

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

/** Processor time, which a busy machine does not lengthen as it does the time of day. */
function milliseconds(run: () => void): number {
  const start = process.cpuUsage()
  run()
  const { user, system } = process.cpuUsage(start)
  return (user + system) / 1000
}

function median(values: number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] as number
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
const rules = median(rounds.map((r) => r.rules))
const small = median(rounds.map((r) => r.small))
const plans = median(rounds.map((r) => r.plans))
const whole = median(Array.from({ length: 3 }, () => milliseconds(() => void plan(homes, tables, ON))))
// Made last: so many homes in memory slow the collection of garbage for everything else.
const many = manyHouseholds(100_000, ON)
const large = median(Array.from({ length: 3 }, () => milliseconds(() => planAll(many))))

console.log(`rrule expands 20,000 monthly rules over one year: ${rules.toFixed(0)} ms`)
for (const [count, ms] of [
  [1000, small],
  [10_000, plans],
  [100_000, large],
] as const) {
  const each = ((1000 * ms) / count).toFixed(1)
  console.log(`plan ${count} households, ${2 * count} filters: ${ms.toFixed(0)} ms (${each} µs each)`)
}
const times = median(rounds.map((r) => r.rules / r.plans))
console.log(`rrule / plan at 10,000 households: ${times.toFixed(1)} (at least 10 is asked)`)
console.log(`with rounds and supplies: ${whole.toFixed(0)} ms`)
