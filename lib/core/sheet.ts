import type { Day } from './day'
import { effects } from './effects'
import { looksWorth } from './home-story'
import type { Household } from './household'
import type { LookWorth } from './look-worth'
import { planHousehold } from './plan'
import type { Effect, HouseholdPlan, SystemYear } from './plan-types'
import type { Tables } from './tables'
import { systemYears } from './year'

/** Everything that is shown of one home on one sheet. Plain data: it travels to a browser as it is. */
export interface HomeSheet {
  household: Household
  on: Day
  plan: HouseholdPlan
  /** What each fact does to each filter's day. */
  effects: { filter: string; effects: Effect[] }[]
  years: SystemYear[]
  /** What a look would teach, by the filter's id. */
  looks: [string, LookWorth][]
}

/** The sheet of one home on one day. */
export function sheetOf(household: Household, tables: Tables, on: Day): HomeSheet {
  const plan = planHousehold(household, tables, on)
  return {
    household,
    on,
    plan,
    effects: household.filters.map(({ id }) => ({ filter: id, effects: effects(household, id, tables, on) })),
    years: systemYears(household, tables, on),
    looks: [...looksWorth(household, tables, on, plan.items)],
  }
}
