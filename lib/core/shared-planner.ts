import type { Day } from './day'
import type { Household } from './household'
import { planHousehold } from './plan'
import type { HouseholdPlan } from './plan-types'
import { Profiles } from './profile'
import type { Tables } from './tables'

// Renewed, so that a long life keeps no climate for ever.
const PLANS_A_RENEWAL = 500

/** Plans household after household; homes of one climate and thermostat share their sums. */
export function sharedPlanner(tables: Tables): (household: Household, on: Day) => HouseholdPlan {
  let profiles = new Profiles(tables.figures)
  let made = 0
  return (household, on) => {
    if (++made % PLANS_A_RENEWAL === 0) profiles = new Profiles(tables.figures)
    return planHousehold(household, tables, on, profiles)
  }
}
