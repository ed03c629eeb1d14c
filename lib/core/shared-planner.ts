import type { Day } from './day'
import type { Household } from './household'
import { planHousehold } from './plan'
import type { HouseholdPlan } from './plan-types'
import { Profiles } from './profile'
import type { Tables } from './tables'

// Renewed, so that a long life keeps no climate for ever.
const PLANS_A_RENEWAL = 500

/** The sums to plan the next household with, which homes of one climate and thermostat share; ask once a household. */
export function sharedProfiles(tables: Tables): () => Profiles {
  let profiles = new Profiles(tables.figures)
  let asked = 0
  return () => {
    if (++asked === PLANS_A_RENEWAL) {
      profiles = new Profiles(tables.figures)
      asked = 0
    }
    return profiles
  }
}

/** Plans household after household from shared sums. */
export function sharedPlanner(
  tables: Tables,
  profiles = sharedProfiles(tables),
): (household: Household, on: Day) => HouseholdPlan {
  return (household, on) => planHousehold(household, tables, on, profiles())
}
