import type { Device, Filter, FilterPlace, HeatSource, System } from '@/lib/core/household'
import type { Loose } from '../fault'
import { type Known, type Report, refer } from './household-rules'

type Systems = readonly (Loose<System> | undefined)[] | undefined

/** Heat and the way it is brought to the rooms must fit; only what cannot be built is refused. */
export function systemRules(systems: Systems, report: Report): void {
  systems?.forEach((system, index) => {
    const source = system?.heat?.source
    if (!system || !source) return
    if (source === 'heat-pump' && system.heat?.efficiency !== undefined) {
      report(
        ['systems', index, 'heat', 'efficiency'],
        'must be left out for a heat pump: it moves heat instead of burning fuel, so output over input says nothing',
      )
    }
    const clash = clashOf(source, system)
    if (clash) report(['systems', index, 'delivery'], clash)
  })
}

function clashOf(source: HeatSource, system: Loose<System>): string | undefined {
  const { delivery, cool } = system
  if (source === 'wall-furnace' || source === 'electric-baseboard') {
    const name = source === 'wall-furnace' ? 'a wall furnace' : 'an electric baseboard'
    if (delivery === 'hydronic') return `must be room: ${name} heats the room it stands in and has no water pipes`
    // Ducts may still carry the cooling of the same system.
    if ((delivery === 'ducted' || delivery === 'ductless') && !cool) {
      return `must be room: ${name} heats the room it stands in and sends no air anywhere else`
    }
  }
  if (source.endsWith('furnace') && source !== 'wall-furnace' && (delivery === 'hydronic' || delivery === 'room')) {
    return `must be ducted: a furnace blows warm air through ducts; with ${delivery === 'hydronic' ? 'radiators the heat comes from a boiler' : 'one room only it is a wall furnace'}`
  }
  if (source === 'dual-fuel' && (delivery === 'hydronic' || delivery === 'room')) {
    return 'must be ducted: dual fuel is a heat pump and a furnace that share one set of ducts'
  }
  return undefined
}

export function filterRules(
  filters: readonly (Loose<Filter> | undefined)[] | undefined,
  known: Known,
  report: Report,
): void {
  filters?.forEach((filter, index) => {
    if (!filter) return
    const system = refer(known.systems, filter.system, { path: ['filters', index, 'system'], report })
    const misfit = system && filter.place && misfitOf(filter.place, system)
    if (misfit) report(['filters', index, 'place'], misfit)
  })
}

/** Why no filter can be there, in words that say what to write instead. */
export function misfitOf(place: FilterPlace, system: Loose<System>): string | undefined {
  const { delivery } = system
  if (delivery === undefined || place === 'ventilator') return undefined
  const where = `${/^[aeiou]/.test(place) ? 'an' : 'a'} ${place.replaceAll('-', ' ')}`
  if (place === 'ductless-head') {
    return delivery === 'ductless'
      ? undefined
      : `is a ductless head, but this system's delivery is ${delivery}; describe the ductless heads as a system of their own`
  }
  if (delivery === 'hydronic') {
    return `cannot be ${where}: a boiler with radiators moves no air, so it has no filter; if an air handler with ducts belongs to it, write its delivery as ducted`
  }
  if (delivery === 'room') {
    // A window unit or a heat pump through the wall has a screen in its own cabinet.
    const blows = system.cool !== undefined || system.heat?.source === 'heat-pump'
    if (place === 'in-cabinet' && blows) return undefined
    return `cannot be ${where}: heat that stands in the room draws no air through ducts; take the filter out, or write the delivery as ducted`
  }
  if (delivery === 'ductless' && (place.endsWith('-grille') || place === 'furnace-slot')) {
    return `cannot be ${where}: a ductless system has no return duct; its screens are behind the front of each head, written ductless-head`
  }
  return undefined
}

export function deviceRules(
  devices: readonly (Loose<Device> | undefined)[] | undefined,
  known: Known,
  report: Report,
): void {
  devices?.forEach((device, index) => {
    if (!device) return
    refer(known.systems, device.system, { path: ['devices', index, 'system'], report })
    if (device.made && device.endOfLife && device.endOfLife < device.made) {
      report(['devices', index, 'endOfLife'], `is ${device.endOfLife}, before it was made (${device.made})`)
    }
  })
}
