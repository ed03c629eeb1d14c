import { COLD_ADVICE } from '@/content/away'
import { tables } from '@/content/tables'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { sharedPlanner } from '@/lib/core/shared-planner'
import { closeDatabase } from '@/lib/data/connection'
import { keepPlans } from '@/lib/data/kept-plans'
import { prepareDatabase } from '@/lib/data/prepare'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { runReminders } from '@/lib/outbound/runner'

// One pass, for a timer of the system's own. It may run beside a server that does the same.
const planOf = sharedPlanner(tables)
const plans = keepPlans<HouseholdPlan>((stored, on) => planOf(stored.household, on), { version: tables.version })
// The server knows where it listens; here a default would send people to a machine that is not theirs.
const NO_ADDRESS =
  'PUBLIC_URL has to be the address of the server, like https://plenum.example.org: the links of the mails are made from it. Set it as the server has it. Nothing was sent.'
try {
  const problem = URL.canParse(process.env.PUBLIC_URL ?? '') ? await prepareDatabase() : NO_ADDRESS
  if (problem) {
    console.error(problem)
    process.exitCode = 2
  } else {
    console.log(JSON.stringify(await runReminders({ plans, freezeWatch: COLD_ADVICE.map(({ say }) => say) })))
  }
} catch (error) {
  if (!(error instanceof DatabaseUnavailable)) throw error
  console.error(error.message)
  process.exitCode = 2
} finally {
  await closeDatabase()
}
