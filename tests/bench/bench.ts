import rrule from 'rrule'
import { tables } from '@/content/tables'
import { plan, planHousehold } from '@/lib/core/plan'
import { Profiles } from '@/lib/core/profile'
import { manyHouseholds } from './many-households'
import { benchHomes, benchRounds } from './units'

const ON = '2026-11-25'

function milliseconds(run: () => void): number {
  const start = process.hrtime.bigint()
  run()
  return Number(process.hrtime.bigint() - start) / 1e6
}

/** The median of several runs, after one that warms up. */
function median(runs: number, run: () => void): number {
  run()
  return Array.from({ length: runs }, () => milliseconds(run)).sort((a, b) => a - b)[runs >> 1] as number
}

const { RRule } = rrule
const expandRules = () => {
  for (let i = 0; i < 20_000; i++) {
    const rule = new RRule({
      freq: RRule.MONTHLY,
      dtstart: new Date(Date.UTC(2026, 10, 1 + (i % 28))),
      until: new Date(Date.UTC(2027, 10, 25)),
    })
    rule.all()
  }
}
const homes = manyHouseholds(100_000, ON)
const planAll = (count: number) => () => {
  const profiles = new Profiles(tables.figures)
  for (let i = 0; i < count; i++) planHousehold(homes[i] as (typeof homes)[number], tables, ON, profiles)
}

const rules = median(3, expandRules)
const sizes = [1000, 10_000, 100_000].map((count) => ({ count, ms: median(3, planAll(count)) }))
const ten = sizes[1] as { ms: number }
console.log(`rrule expands 20,000 monthly rules over one year: ${rules.toFixed(0)} ms`)
for (const { count, ms } of sizes)
  console.log(
    `plan ${count} households, ${2 * count} filters: ${ms.toFixed(0)} ms (${((1000 * ms) / count).toFixed(1)} µs each)`,
  )
console.log(`rrule / plan at 10,000 households: ${(rules / ten.ms).toFixed(1)} (at least 10 is asked)`)
console.log(`with rounds and supplies: ${median(3, () => void plan(homes.slice(0, 10_000), tables, ON)).toFixed(0)} ms`)
console.log(benchRounds(ON, plan(homes.slice(0, 1000), tables, ON).households))
for (const line of await benchHomes(ON)) console.log(line)
await import('./outbound')
