import type { Household, Reading, System } from '@/lib/core/household'
import { climateOf, coolingDegrees, heatingDegrees } from './climate'
import { monthAndDay, number } from './days'

const FURNACES = ['gas-furnace', 'propane-furnace', 'oil-furnace', 'electric-furnace']
const PUMPS = ['heat-pump', 'dual-fuel']
const BURNERS = ['gas', 'propane', 'oil', 'dual', 'wall']

/** What one day of one system holds, in hours. */
export interface DayHours {
  /** Load hours, measured where measured, scaled elsewhere. */
  heat: number
  cool: number
  /** Through the blower. */
  blownHeat: number
  blownCool: number
  fanOnly: number
  blower: number
}

export interface Hours {
  unscaledHeat: (day: number) => number
  unscaledCool: (day: number) => number
  at: (day: number) => DayHours
  /** The scaled model's day without readings: for the mean year. */
  mean: (day: number) => DayHours
}

export function isPump(system: System): boolean {
  return PUMPS.includes(system.heat?.source ?? '')
}

export function movesAir(system: System): boolean {
  return system.delivery === 'ducted' || system.delivery === 'ductless'
}

export function heatBlows(system: System): boolean {
  return movesAir(system) && [...FURNACES, ...PUMPS].includes(system.heat?.source ?? '')
}

export function coolBlows(system: System): boolean {
  return movesAir(system) && system.cool !== undefined
}

/** A fuel burner loses 4 % of its rating for each 1000 ft, above 2000 ft. */
export function derating(home: Household, system: System): number {
  const z = home.elevationFt ?? 0
  const burns = BURNERS.includes((system.heat?.source ?? '').split('-')[0] as string)
  return burns && z > 2000 ? 1 - (0.04 * z) / 1000 : 1
}

/** Model.md, section 2, a day at a time. */
export function hoursOf(home: Household, system: System, on: number): Hours {
  const climate = climateOf(home.climate)
  const { heatSetpointF = 70, coolSetpointF = 75 } = system.thermostat ?? {}
  const heatBase = heatSetpointF - 5
  const coolBase = coolSetpointF - 10
  const cache = new Map<number, { heat: number; cool: number }>()
  function unscaled(day: number) {
    const key = monthAndDay(day).ordinal
    let found = cache.get(key)
    if (!found) {
      const depth = Math.max(10, heatBase - home.climate.heatingDesignF) * (isPump(system) ? 1 : 1.7)
      const height = Math.max(10, home.climate.coolingDesignF - coolBase) * 1.25
      found = {
        heat: system.heat ? Math.min(24, (24 * 0.77 * heatingDegrees(climate(day), heatBase)) / depth) : 0,
        cool: system.cool ? Math.min(24, (24 * coolingDegrees(climate(day), coolBase)) / height) : 0,
      }
      cache.set(key, found)
    }
    return found
  }

  const readings = home.readings.filter((r) => r.system === system.id)
  function total(reading: Reading, kind: 'heat' | 'cool' | 'fan'): number | undefined {
    if (reading.source !== 'bill') return reading[`${kind}Hours`]
    if (kind !== 'heat' || !system.heat?.inputBtuh) return undefined
    const input = system.heat.inputBtuh * derating(home, system)
    return (Math.max(0, reading.therms - reading.baseTherms) * 100_000) / input
  }
  function spanOf(kind: 'heat' | 'cool' | 'fan', day: number) {
    for (const reading of readings) {
      const hours = total(reading, kind)
      const [from, to] = [number(reading.from), number(reading.to)]
      if (hours !== undefined && from <= day && day <= to) return { from, to, hours }
    }
  }
  function measured(kind: 'heat' | 'cool', day: number): number | undefined {
    const span = spanOf(kind, day)
    if (!span) return undefined
    let model = 0
    for (let d = span.from; d <= span.to; d++) model += unscaled(d)[kind]
    const share = model < 1 ? 1 / (span.to - span.from + 1) : unscaled(day)[kind] / model
    return Math.min(24, span.hours * share)
  }
  function scale(kind: 'heat' | 'cool'): number {
    let model = 0
    let seen = 0
    for (let day = on - 399; day <= on; day++) {
      const hours = measured(kind, day)
      if (hours === undefined) continue
      model += unscaled(day)[kind]
      seen += hours
    }
    if (model < 1) return 1
    const ratio = Math.min(4, Math.max(0.25, seen / model))
    return Math.exp((model / (model + 60)) * Math.log(ratio))
  }
  const scales = { heat: scale('heat'), cool: scale('cool') }

  function load(kind: 'heat' | 'cool', day: number, useReadings: boolean): number {
    const read = useReadings ? measured(kind, day) : undefined
    return read ?? Math.min(24, unscaled(day)[kind] * scales[kind])
  }
  function blown(day: number, useReadings: boolean) {
    const heat = heatBlows(system) ? 1.07 * load('heat', day, useReadings) : 0
    const cool = coolBlows(system) ? load('cool', day, useReadings) : 0
    const shrink = heat + cool > 24 ? 24 / (heat + cool) : 1
    return { heat: heat * shrink, cool: cool * shrink }
  }
  const fanSpans = new Map<number, { shrink: number; extra: number }>()
  function fanSpan(span: { from: number; to: number; hours: number }) {
    let found = fanSpans.get(span.from)
    if (!found) {
      let sum = 0
      for (let d = span.from; d <= span.to; d++) sum += blown(d, true).heat + blown(d, true).cool
      const days = span.to - span.from + 1
      found = { shrink: sum > span.hours ? span.hours / sum : 1, extra: Math.max(0, span.hours - sum) / days }
      fanSpans.set(span.from, found)
    }
    return found
  }
  function day(day: number, useReadings: boolean): DayHours {
    let { heat, cool } = blown(day, useReadings)
    let fanOnly = 0
    const span = useReadings && movesAir(system) ? spanOf('fan', day) : undefined
    if (span) {
      const { shrink, extra } = fanSpan(span)
      heat *= shrink
      cool *= shrink
      fanOnly = Math.min(24 - heat - cool, extra)
    } else if (movesAir(system) && system.fan?.mode === 'on') fanOnly = 24 - heat - cool
    else if (movesAir(system) && system.fan?.mode === 'circulate') {
      fanOnly = Math.max(0, (24 * system.fan.minutesPerHour) / 60 - heat - cool)
    }
    return {
      heat: load('heat', day, useReadings),
      cool: load('cool', day, useReadings),
      blownHeat: heat,
      blownCool: cool,
      fanOnly,
      blower: heat + cool + fanOnly,
    }
  }
  return {
    unscaledHeat: (d) => unscaled(d).heat,
    unscaledCool: (d) => unscaled(d).cool,
    at: (d) => day(d, true),
    mean: (d) => day(d, false),
  }
}
