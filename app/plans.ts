import { tables } from '@/content/tables'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { sharedPlanner } from '@/lib/core/shared-planner'
import { keepPlans } from '@/lib/data/kept-plans'

const planOf = sharedPlanner(tables)

/** Every page's plans: made once for a household's revision and day, whoever asks. */
export const plans = keepPlans<HouseholdPlan>((stored, on) => planOf(stored.household, on), { version: tables.version })
