import type { ClimateYear } from './climate'
import { degreeDays } from './climate'
import type { Climate, Fan, HeatSource, System } from './household'
import type { Figures } from './tables'

/** What decides the hours a system runs, with what was left out filled in. */
export interface RunSettings {
  heat: HeatSource | null
  cools: boolean
  heatBlows: boolean
  coolBlows: boolean
  /** Whether the fan moves air through a filter at all. */
  movesAir: boolean
  heatBaseF: number
  coolBaseF: number
  heatingDesignF: number
  coolingDesignF: number
  fan: Fan
}

/** Hours of load of each day of a 365-day year: what the equipment must run to keep the set points. */
export interface LoadYear {
  heat: Float64Array
  cool: Float64Array
}

/** How one day's hours divide. `heat` and `cool` are hours of load; the others are hours the blower runs for them. */
export interface DayHours {
  heat: number
  cool: number
  heatRun: number
  coolRun: number
  fanOnly: number
}

const BLOWING_HEAT: ReadonlySet<HeatSource> = new Set([
  'gas-furnace',
  'propane-furnace',
  'oil-furnace',
  'electric-furnace',
  'heat-pump',
  'dual-fuel',
])
const FULL_DAY = 24

/** Whether a system's delivery moves air through ducts or a head. */
export function movesAir(system: System): boolean {
  return system.delivery === 'ducted' || system.delivery === 'ductless'
}

export function heatBlows(system: System): boolean {
  return system.heat !== undefined && BLOWING_HEAT.has(system.heat.source) && movesAir(system)
}

export function coolBlows(system: System): boolean {
  return system.cool !== undefined && movesAir(system)
}

export function runSettings(system: System, climate: Climate, figures: Figures): RunSettings {
  const heatSetpointF = system.thermostat?.heatSetpointF ?? figures.defaultHeatSetpointF.value
  const coolSetpointF = system.thermostat?.coolSetpointF ?? figures.defaultCoolSetpointF.value
  return {
    heat: system.heat?.source ?? null,
    cools: system.cool !== undefined,
    heatBlows: heatBlows(system),
    coolBlows: coolBlows(system),
    movesAir: movesAir(system),
    heatBaseF: heatSetpointF - figures.heatBaseBelowSetpointF.value,
    coolBaseF: coolSetpointF - figures.coolBaseBelowSetpointF.value,
    heatingDesignF: climate.heatingDesignF,
    coolingDesignF: climate.coolingDesignF,
    fan: system.fan ?? { mode: 'auto' },
  }
}

/** Hours of load for one degree-day below the heating base, and one above the cooling base (model, section 2). */
export function hoursPerDegreeDay(settings: RunSettings, figures: Figures): { heat: number; cool: number } {
  const least = figures.leastDesignDifferenceF.value
  const isHeatPump = settings.heat === 'heat-pump' || settings.heat === 'dual-fuel'
  const heatOversize = isHeatPump ? 0 : figures.heatOversize.value
  return {
    heat:
      (FULL_DAY * figures.heatAdjustment.value) /
      (Math.max(least, settings.heatBaseF - settings.heatingDesignF) * (1 + heatOversize)),
    cool: FULL_DAY / (Math.max(least, settings.coolingDesignF - settings.coolBaseF) * (1 + figures.coolOversize.value)),
  }
}

/** Hours of load by day of year, from degree-days and design temperatures (model, section 2); 0…24 h a day. */
export function loadYear(settings: RunSettings, year: ClimateYear, figures: Figures): LoadYear {
  const per = hoursPerDegreeDay(settings, figures)
  const none = new Float64Array(365)
  return {
    heat:
      settings.heat === null
        ? none
        : degreeDays(year, 'heating', settings.heatBaseF).map((dd) => Math.min(FULL_DAY, dd * per.heat)),
    cool: settings.cools
      ? degreeDays(year, 'cooling', settings.coolBaseF).map((dd) => Math.min(FULL_DAY, dd * per.cool))
      : none,
  }
}

/** Divides a day: the blower runs on a little after heating, and no day has more than 24 h of anything. */
export function divideDay(heatHours: number, coolHours: number, settings: RunSettings, figures: Figures): DayHours {
  const heat = Math.min(FULL_DAY, heatHours)
  const cool = Math.min(FULL_DAY, coolHours)
  let heatRun = settings.heatBlows ? heat * figures.heatingBlowerFactor.value : 0
  let coolRun = settings.coolBlows ? cool : 0
  const both = heatRun + coolRun
  if (both > FULL_DAY) {
    heatRun *= FULL_DAY / both
    coolRun *= FULL_DAY / both
  }
  return { heat, cool, heatRun, coolRun, fanOnly: fanOnlyHours(heatRun + coolRun, settings) }
}

function fanOnlyHours(running: number, { fan, movesAir }: RunSettings): number {
  if (!movesAir || fan.mode === 'auto') return 0
  const least = fan.mode === 'on' ? FULL_DAY : (FULL_DAY * fan.minutesPerHour) / 60
  return Math.max(0, least - running)
}
