import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { keepPlans } from '@/lib/data/kept-plans'

/** Every page's plans: made once for a household's revision and day, whoever asks. */
export const plans = keepPlans<HouseholdPlan>((stored, on) => planHousehold(stored.household, tables, on), {
  version: tables.version,
})
