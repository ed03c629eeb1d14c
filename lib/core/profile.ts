import { type ClimateYear, climateYear } from './climate'
import { CYCLE_ORIGIN, type Cycle, cycleOf, cycleThrough, yearPlace } from './cycle'
import { CYCLE_DAYS, type DayNumber } from './day'
import type { Climate } from './household'
import { PathMap } from './path-map'
import { type DayHours, divideDay, type LoadYear, loadYear, type RunSettings } from './runtime'
import type { Figures } from './tables'

/** The air a filter sees is the sum of three kinds of blowing, each with its own airflow. */
export interface AirCycles {
  heat: Cycle
  cool: Cycle
  fan: Cycle
}

/** Sums of a daily quantity over all days up to and including one, from a fixed zero: only differences mean anything. */
export type Through = (day: DayNumber) => number

/** One system's modelled hours, shared by every system with the same climate and settings. */
export interface Profile {
  settings: RunSettings
  /** Unscaled: what the climate asks. */
  load: LoadYear
  loadCycles: { heat: Cycle; cool: Cycle }
  /** Scaled by what was measured; by day of a 365-day year. */
  heat: Float64Array
  cool: Float64Array
  heatRun: Float64Array
  coolRun: Float64Array
  fanOnly: Float64Array
  blower: Float64Array
  cycles: { heat: Cycle; cool: Cycle; blower: Cycle }
  /** Sums of these hours through a day; only differences mean anything. */
  through: { heat: Through; cool: Through; blower: Through }
  hoursOn: (day: DayNumber) => DayHours
  /** Hours of the 365-day year: unscaled load, and the scaled hours of heating, cooling and blower. */
  totals: { heatLoad: number; coolLoad: number; heat: number; cool: number; blower: number }
  /** Days from each of the 1461 days of the cycle to the next one of heavy use; Infinity where there is none. */
  toHeavyUse: () => Float32Array
  /** Hours weighted by how clean the filter keeps the air, by the arrestance in the air's way. */
  air: (arrestance: number) => AirCycles
  /** Found seasons by kind and year; see season.ts. */
  seasons: Map<number, { start: DayNumber; end: DayNumber } | null>
}

/** How much the measured hours of a system differ from the model; 1 and 1 where nothing was measured. */
export interface Scales {
  heat: number
  cool: number
}

interface Load {
  load: LoadYear
  cycles: { heat: Cycle; cool: Cycle }
  /** Of these hours, by how the fan runs and how they are scaled. */
  profiles: PathMap<Profile>
}

/** Keeps climates and profiles, so that many households plan from few prefix sums. */
export class Profiles {
  private readonly years = new PathMap<ClimateYear>()
  private readonly loads = new PathMap<Load>()

  constructor(private readonly figures: Figures) {}

  get(climate: Climate, settings: RunSettings, scales: Scales): Profile {
    const load = this.load(climate, settings)
    const fan = settings.fan.mode === 'circulate' ? settings.fan.minutesPerHour : settings.fan.mode
    return load.profiles.get([fan, scales.heat, scales.cool], () => makeProfile(settings, load, scales, this.figures))
  }

  /** The unscaled hours alone, for comparing measured hours with them. */
  load(climate: Climate, settings: RunSettings): Load {
    return this.loads.get(settingsPath(climate, settings), () => {
      const year = this.years.get(degreeDayPath(climate), () => climateYear(climate, this.figures))
      const load = loadYear(settings, year, this.figures)
      return { load, cycles: { heat: cycleOf(load.heat), cool: cycleOf(load.cool) }, profiles: new PathMap() }
    })
  }
}

function degreeDayPath({ hdd65, cdd65 }: Climate): [number | string, number | string] {
  return [typeof hdd65 === 'number' ? hdd65 : hdd65.join(), typeof cdd65 === 'number' ? cdd65 : cdd65.join()]
}

/** What decides the load; the fan does not. */
function settingsPath(climate: Climate, s: RunSettings): (string | number | null)[] {
  const [hdd65, cdd65] = degreeDayPath(climate)
  const flags = (s.cools ? 1 : 0) + (s.heatBlows ? 2 : 0) + (s.coolBlows ? 4 : 0) + (s.movesAir ? 8 : 0)
  return [hdd65, cdd65, s.heat, flags, s.heatBaseF, s.coolBaseF, s.heatingDesignF, s.coolingDesignF]
}

/** Share of the reference home's dust that is left in the air, when a filter cleans it so many hours of the day (model, section 4). */
export function cleaningFactor(arrestance: number, blowerHours: number, figures: Figures): number {
  const loss = figures.lossPerHour.value
  return (
    (loss + figures.referenceCleaning.value) /
    (loss + (figures.airChangesPerHour.value * arrestance * blowerHours) / 24)
  )
}

function makeProfile(
  settings: RunSettings,
  { load, cycles: loadCycles }: Load,
  scales: Scales,
  figures: Figures,
): Profile {
  const [heat, cool, heatRun, coolRun, fanOnly, blower] = Array.from({ length: 6 }, () => new Float64Array(365)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  for (let i = 0; i < 365; i++) {
    const day = divideDay(
      (load.heat[i] as number) * scales.heat,
      (load.cool[i] as number) * scales.cool,
      settings,
      figures,
    )
    heat[i] = day.heat
    cool[i] = day.cool
    heatRun[i] = day.heatRun
    coolRun[i] = day.coolRun
    fanOnly[i] = day.fanOnly
    blower[i] = day.heatRun + day.coolRun + day.fanOnly
  }
  const byArrestance = new Map<number, AirCycles>()
  const cycles = {
    // Not scaled, the hours are the load's.
    heat: scales.heat === 1 ? loadCycles.heat : cycleOf(heat),
    cool: scales.cool === 1 ? loadCycles.cool : cycleOf(cool),
    blower: cycleOf(blower),
  }
  const sum = (hours: Float64Array) => hours.reduce((total, h) => total + h, 0)
  let toHeavyUse: Float32Array | undefined
  return {
    settings,
    load,
    loadCycles,
    heat,
    cool,
    heatRun,
    coolRun,
    fanOnly,
    blower,
    cycles,
    through: {
      heat: (day) => cycleThrough(cycles.heat, day),
      cool: (day) => cycleThrough(cycles.cool, day),
      blower: (day) => cycleThrough(cycles.blower, day),
    },
    hoursOn: (day) => {
      const i = yearPlace(day)
      return {
        heat: heat[i] as number,
        cool: cool[i] as number,
        heatRun: heatRun[i] as number,
        coolRun: coolRun[i] as number,
        fanOnly: fanOnly[i] as number,
      }
    },
    totals: {
      heatLoad: sum(load.heat),
      coolLoad: sum(load.cool),
      heat: sum(heat),
      cool: sum(cool),
      blower: sum(blower),
    },
    toHeavyUse: () => (toHeavyUse ??= daysToHeavyUse(cycles.blower, figures)),
    air: (arrestance) => {
      let air = byArrestance.get(arrestance)
      if (!air) {
        const cleaned = (hours: Float64Array) =>
          cycleOf(hours.map((h, i) => h * cleaningFactor(arrestance, blower[i] as number, figures)))
        air = { heat: cleaned(heatRun), cool: cleaned(coolRun), fan: cleaned(fanOnly) }
        byArrestance.set(arrestance, air)
      }
      return air
    },
    seasons: new Map(),
  }
}

/** Whether the blower's mean over the days up to and including `day` is heavy use, given sums through a day. */
export function isHeavyUse(blowerThrough: (day: DayNumber) => number, day: DayNumber, figures: Figures): boolean {
  const days = figures.trailingDays.value
  return blowerThrough(day) - blowerThrough(day - days) >= figures.heavyUseHours.value * days
}

function daysToHeavyUse(blower: Cycle, figures: Figures): Float32Array {
  const wait = new Float32Array(CYCLE_DAYS).fill(Number.POSITIVE_INFINITY)
  const through = (day: DayNumber) => cycleThrough(blower, day)
  let ahead = Number.POSITIVE_INFINITY
  // Any whole cycle does; one far enough from the first day that the days before it exist.
  for (let place = 2 * CYCLE_DAYS - 1; place >= 0; place--) {
    const heavy = isHeavyUse(through, CYCLE_ORIGIN + CYCLE_DAYS + place, figures)
    ahead = heavy ? 0 : ahead + 1
    if (place < CYCLE_DAYS) wait[place] = ahead
  }
  return wait
}
