import { tables } from '@/content/tables'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { sharedPlanner, sharedProfiles } from '@/lib/core/shared-planner'
import { keepPlans } from '@/lib/data/kept-plans'

/** The sums that the next household is reckoned with. */
export const profiles = sharedProfiles(tables)

const planOf = sharedPlanner(tables, profiles)

/** Every page's plans: made once for a household's revision and day, whoever asks. */
export const plans = keepPlans<HouseholdPlan>((stored, on) => planOf(stored.household, on), { version: tables.version })
