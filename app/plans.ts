import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { Profiles } from '@/lib/core/profile'
import { keepPlans } from '@/lib/data/kept-plans'

// Homes of one climate and thermostat share their sums; renewed, so that a long life keeps no climate for ever.
const PLANS_A_RENEWAL = 500
let profiles = new Profiles(tables.figures)
let made = 0

/** The sums that the next household is reckoned with. */
export function sharedProfiles(): Profiles {
  if (++made % PLANS_A_RENEWAL === 0) profiles = new Profiles(tables.figures)
  return profiles
}

/** Every page's plans: made once for a household's revision and day, whoever asks. */
export const plans = keepPlans<HouseholdPlan>(
  (stored, on) => planHousehold(stored.household, tables, on, sharedProfiles()),
  { version: tables.version },
)
