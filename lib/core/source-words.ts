import type { CoolSource, HeatSource } from './household'

const HEAT: Record<HeatSource, string> = {
  'gas-furnace': 'a gas furnace',
  'propane-furnace': 'a propane furnace',
  'oil-furnace': 'an oil furnace',
  'electric-furnace': 'an electric furnace',
  'heat-pump': 'a heat pump',
  'dual-fuel': 'a heat pump with a furnace beside it',
  'gas-boiler': 'a gas boiler',
  'propane-boiler': 'a propane boiler',
  'oil-boiler': 'an oil boiler',
  'electric-boiler': 'an electric boiler',
  'wall-furnace': 'a wall furnace',
  'electric-baseboard': 'electric baseboards',
}

const COOL: Record<CoolSource, string> = { 'central-ac': 'central air conditioning', 'heat-pump': 'a heat pump' }

/** `a gas furnace`. */
export function sourceInWords(source: HeatSource): string {
  return HEAT[source]
}

/** `central air conditioning`. */
export function coolSourceInWords(source: CoolSource): string {
  return COOL[source]
}
