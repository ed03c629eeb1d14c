import type { Assumed, CoolSource, Delivery, HeatSource, System } from '@/lib/core/household'

/** How heat reaches the rooms, in what a person can see. */
export const HOW = [
  'ducts',
  'radiators',
  'heads',
  'room',
  'boiler-ducts',
  'building-air',
  'building-radiators',
  'none',
  'unknown',
] as const
export const FUELS = ['gas', 'propane', 'oil', 'electric', 'pump', 'dual', 'unknown'] as const
export const COOL_WORDS = ['central', 'pump', 'window', 'none', 'unknown'] as const

export interface EquipmentWords {
  how: (typeof HOW)[number]
  fuel: (typeof FUELS)[number]
  cool: (typeof COOL_WORDS)[number]
}

export interface Equipment {
  delivery: Delivery
  heat: HeatSource | undefined
  cool: CoolSource | undefined
  assumed: Assumed['code'][]
}

interface Clash {
  field: 'fuel' | 'cool' | 'how'
  clash: string
}

type Fuel = EquipmentWords['fuel']
const FURNACES = {
  gas: 'gas-furnace',
  propane: 'propane-furnace',
  oil: 'oil-furnace',
  electric: 'electric-furnace',
} as const
const BOILERS = {
  gas: 'gas-boiler',
  propane: 'propane-boiler',
  oil: 'oil-boiler',
  electric: 'electric-boiler',
} as const

/**
 * The equipment that three plain answers mean, or why they cannot be so. What is unknown is what asks for the most
 * care: a burner rather than none, so that its yearly service is never left out.
 */
export function equipmentOf({ how, fuel, cool }: EquipmentWords): Equipment | Clash {
  const heat = heatOf(how, fuel)
  if (typeof heat === 'object') return heat
  if (cool === 'central' && (how === 'radiators' || how === 'building-radiators')) {
    return {
      field: 'cool',
      clash: 'The central cooling has ducts of its own: choose “nothing” here, and add it as another system.',
    }
  }
  if (cool === 'pump' && (how === 'radiators' || how === 'building-radiators') && heat !== 'heat-pump') {
    return {
      field: 'cool',
      clash: 'The ductless units have air of their own: choose “nothing” here, and add them as another system.',
    }
  }
  if (how === 'none' && (cool === 'none' || cool === 'window')) {
    return {
      field: 'how',
      clash: 'This system would neither heat nor cool. Choose what it does; window units alone need no system.',
    }
  }
  const cooling = coolOf(how, heat, cool)
  const assumed: Assumed['code'][] = []
  if (how === 'unknown') assumed.push('delivery')
  if (heat && isFuelAssumed(how, fuel)) assumed.push('heat-source')
  if (cool === 'unknown' && cooling) assumed.push('cool-source')
  return { delivery: deliveryOf(how, heat, cooling), heat, cool: cooling, assumed }
}

function isFuelAssumed(how: EquipmentWords['how'], fuel: Fuel): boolean {
  return fuel === 'unknown' && how !== 'heads'
}

function heatOf(how: EquipmentWords['how'], fuel: Fuel): HeatSource | undefined | Clash {
  if (how === 'none' || how === 'building-air' || how === 'building-radiators') return undefined
  if (how === 'heads') {
    if (fuel === 'pump' || fuel === 'unknown' || fuel === 'electric') return 'heat-pump'
    return {
      field: 'fuel',
      clash: 'Units on the wall with a unit outside are a heat pump: choose that, or another way the heat comes.',
    }
  }
  const burns = fuel === 'unknown' ? 'gas' : fuel
  if (burns === 'pump') return 'heat-pump'
  if (burns === 'dual') {
    if (how === 'ducts' || how === 'unknown') return 'dual-fuel'
    return {
      field: 'fuel',
      clash: 'A heat pump with a furnace beside it blows through ducts: choose ducts, or another source.',
    }
  }
  if (how === 'radiators' || how === 'boiler-ducts') return BOILERS[burns]
  if (how === 'room') return burns === 'electric' ? 'electric-baseboard' : 'wall-furnace'
  return FURNACES[burns]
}

function coolOf(
  how: EquipmentWords['how'],
  heat: HeatSource | undefined,
  cool: EquipmentWords['cool'],
): CoolSource | undefined {
  const pumps = heat === 'heat-pump' || heat === 'dual-fuel'
  if (cool === 'none' || cool === 'window') return undefined
  if (cool === 'pump') return 'heat-pump'
  if (cool === 'central') return pumps ? 'heat-pump' : 'central-ac'
  if (pumps) return 'heat-pump'
  return how === 'ducts' || how === 'boiler-ducts' || how === 'none' || how === 'unknown' ? 'central-ac' : undefined
}

function deliveryOf(how: EquipmentWords['how'], heat: HeatSource | undefined, cool: CoolSource | undefined): Delivery {
  if (how === 'heads') return 'ductless'
  if (how === 'radiators' || how === 'building-radiators') return 'hydronic'
  if (how === 'room')
    return cool === 'central-ac' ? 'ducted' : cool === 'heat-pump' && heat !== 'heat-pump' ? 'ductless' : 'room'
  if (how === 'none') return cool === 'heat-pump' ? 'ductless' : 'ducted'
  return 'ducted'
}

/** The three answers that a system's equipment looks like; for what the questions cannot say, the nearest. */
export function equipmentWords({ heat, cool, delivery }: System, assumed: Assumed['code'][]): EquipmentWords {
  const source = heat?.source
  const pumps = source === 'heat-pump' || source === 'dual-fuel'
  return {
    how: assumed.includes('delivery') ? 'unknown' : howOf(source, delivery, cool !== undefined),
    fuel: assumed.includes('heat-source') || !source ? 'unknown' : fuelOf(source),
    cool: assumed.includes('cool-source')
      ? 'unknown'
      : !cool
        ? 'none'
        : cool.source === 'heat-pump' || pumps
          ? 'pump'
          : 'central',
  }
}

function howOf(source: HeatSource | undefined, delivery: Delivery, cools: boolean): EquipmentWords['how'] {
  if (!source)
    return delivery === 'hydronic' ? 'building-radiators' : delivery === 'ducted' && !cools ? 'building-air' : 'none'
  if (source === 'wall-furnace' || source === 'electric-baseboard') return 'room'
  if (source.endsWith('boiler')) return delivery === 'ducted' ? 'boiler-ducts' : 'radiators'
  return ({ ducted: 'ducts', hydronic: 'radiators', ductless: 'heads', room: 'room' } as const)[delivery]
}

function fuelOf(source: HeatSource): Fuel {
  if (source === 'heat-pump') return 'pump'
  if (source === 'dual-fuel') return 'dual'
  const word = source.split('-')[0]
  return word === 'wall' ? 'gas' : (FUELS.find((fuel) => fuel === word) ?? 'unknown')
}

/** A name for a system that was given none: `Gas furnace`, `Heat pump`, `Radiators`. */
export function systemName({ heat, cool, delivery }: Pick<Equipment, 'heat' | 'cool' | 'delivery'>): string {
  if (heat === 'heat-pump' && delivery === 'ductless') return 'Ductless units'
  if (heat === 'dual-fuel') return 'Heat pump and furnace'
  if (heat) return heat.charAt(0).toUpperCase() + heat.slice(1).replaceAll('-', ' ')
  if (cool) return delivery === 'ductless' ? 'Ductless units' : 'Central cooling'
  return delivery === 'hydronic' ? 'The building’s radiators' : 'The building’s air'
}
