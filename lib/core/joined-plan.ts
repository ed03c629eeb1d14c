import { type Day, dayNumber } from './day'
import type { Household } from './household'
import { planParts, suppliesOf } from './plan'
import type { HouseholdPlan, Plan, Supply } from './plan-types'
import type { Profiles } from './profile'
import { planRounds, type RoundHome } from './rounds'
import { bySize, kindKey } from './supplies'
import type { Figures, Tables } from './tables'

/** What one home adds to a plan of many, so that only the homes that changed have to be planned anew. */
export interface PlannedHome {
  home: RoundHome
  on: Day
  plan: HouseholdPlan
  supplies: Supply[]
}

/** One home's part of a plan of many. */
export function plannedHome(household: Household, tables: Tables, on: Day, profiles: Profiles): PlannedHome {
  const day = dayNumber(on)
  const { plan, bought } = planParts(household, tables, day, profiles)
  const { id, name, building, tenure } = household
  const supplies = suppliesOf([{ on: day, bought }], tables, tables.figures.suppliesMonths.value)
  return { home: { id, name, ...(building !== undefined && { building }), tenure }, on, plan, supplies }
}

/** The parts as one plan: what `plan` makes of the same homes. Where there is none, it is of `otherwise`. */
export function joinPlans(parts: readonly PlannedHome[], figures: Figures, otherwise: Day): Plan {
  const supplies = new Map<string, Supply>()
  for (const supply of parts.flatMap((part) => part.supplies)) {
    const known = supplies.get(kindKey(supply))
    if (known) known.count += supply.count
    else supplies.set(kindKey(supply), { ...supply })
  }
  const planned = parts.map((part) => ({ ...part, on: dayNumber(part.on) }))
  return {
    on: parts[0]?.on ?? otherwise,
    households: parts.map(({ plan }) => plan),
    supplies: [...supplies.values()].sort(bySize),
    rounds: planRounds(planned, { openDays: figures.roundsOpenDays.value }).rounds,
  }
}
