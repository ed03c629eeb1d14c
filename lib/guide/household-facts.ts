import type { HeatSource, Household, System } from '@/lib/core/household'
import { type Episode, episodeFacts } from './episode'
import type { Facts } from './replay'

const HEAT: Record<HeatSource, string> = {
  'gas-furnace': 'gas',
  'gas-boiler': 'gas',
  // Most burn gas, some propane: neither is known.
  'wall-furnace': 'unknown',
  'propane-furnace': 'propane',
  'propane-boiler': 'propane',
  'oil-furnace': 'oil',
  'oil-boiler': 'oil',
  'electric-furnace': 'electric',
  'electric-boiler': 'electric',
  'electric-baseboard': 'electric',
  // The guide then asks whether it burns fuel in the cold.
  'heat-pump': 'heat-pump',
  'dual-fuel': 'heat-pump',
}

type Profile = Pick<Household, 'tenure' | 'vulnerable' | 'systems'>

/**
 * What the profile says to the guide. With several systems and none chosen nothing is taken as known about the
 * equipment. Without a household every fact is unknown, and the guide asks or takes the cautious case.
 */
export function guideFacts(household: Profile | null, systemId: string | null, episode: Episode | null): Facts {
  const remembered = episode === null ? {} : episodeFacts(episode)
  if (household === null) return remembered
  const system = chosen(household.systems, systemId)
  return {
    ...remembered,
    tenure: household.tenure,
    vulnerable: household.vulnerable ? 'yes' : 'no',
    systems: household.systems.length === 1 ? 'one' : 'several',
    heatSource: system?.heat === undefined ? 'unknown' : HEAT[system.heat.source],
    delivery: system?.delivery ?? 'unknown',
  }
}

function chosen(systems: readonly System[], id: string | null): System | null {
  if (id === null) return systems.length === 1 ? (systems[0] ?? null) : null
  return systems.find((system) => system.id === id) ?? null
}
