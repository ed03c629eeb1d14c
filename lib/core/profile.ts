import { type ClimateYear, climateYear } from './climate'
import { CYCLE_ORIGIN, type Cycle, cycleOf, cycleThrough } from './cycle'
import { CYCLE_DAYS, type DayNumber } from './day'
import type { Climate } from './household'
import { divideDay, type LoadYear, loadYear, type RunSettings } from './runtime'
import type { Figures } from './tables'

/** The air a filter sees is the sum of three kinds of blowing, each with its own airflow. */
export interface AirCycles {
  heat: Cycle
  cool: Cycle
  fan: Cycle
}

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
  /** Days from each of the 1461 days of the cycle to the next one of heavy use; Infinity where there is none. */
  toHeavyUse: Float64Array
  /** Hours weighted by how clean the filter keeps the air, by the arrestance in the air's way. */
  air: (arrestance: number) => AirCycles
  /** Found seasons by kind and year; see season.ts. */
  seasons: Map<string, { start: DayNumber; end: DayNumber } | null>
}

/** How much the measured hours of a system differ from the model; 1 and 1 where nothing was measured. */
export interface Scales {
  heat: number
  cool: number
}

/** Keeps climates and profiles, so that many households plan from few prefix sums. */
export class Profiles {
  private readonly years = new Map<string, ClimateYear>()
  private readonly loads = new Map<string, { load: LoadYear; cycles: { heat: Cycle; cool: Cycle } }>()
  private readonly profiles = new Map<string, Profile>()
  private readonly climateKeys = new WeakMap<Climate, string>()

  constructor(private readonly figures: Figures) {}

  get(climate: Climate, settings: RunSettings, scales: Scales): Profile {
    const key = `${this.loadKey(climate, settings)}|${scales.heat}|${scales.cool}`
    let profile = this.profiles.get(key)
    if (!profile) {
      profile = makeProfile(settings, this.load(climate, settings), scales, this.figures)
      this.profiles.set(key, profile)
    }
    return profile
  }

  /** The unscaled hours alone, for comparing measured hours with them. */
  load(climate: Climate, settings: RunSettings): { load: LoadYear; cycles: { heat: Cycle; cool: Cycle } } {
    const key = this.loadKey(climate, settings)
    let known = this.loads.get(key)
    if (!known) {
      const load = loadYear(settings, this.year(climate), this.figures)
      known = { load, cycles: { heat: cycleOf(load.heat), cool: cycleOf(load.cool) } }
      this.loads.set(key, known)
    }
    return known
  }

  private year(climate: Climate): ClimateYear {
    const key = this.climateKey(climate)
    let year = this.years.get(key)
    if (!year) {
      year = climateYear(climate, this.figures)
      this.years.set(key, year)
    }
    return year
  }

  private climateKey(climate: Climate): string {
    let key = this.climateKeys.get(climate)
    if (key === undefined) {
      key = `${climate.hdd65}/${climate.cdd65}`
      this.climateKeys.set(climate, key)
    }
    return key
  }

  private loadKey(climate: Climate, s: RunSettings): string {
    const fan = s.fan.mode === 'circulate' ? s.fan.minutesPerHour : s.fan.mode
    const sources = `${s.heat}${s.cools ? 'C' : ''}${s.heatBlows ? 'h' : ''}${s.coolBlows ? 'c' : ''}${s.movesAir ? 'm' : ''}`
    return `${this.climateKey(climate)}|${sources}|${s.heatBaseF}|${s.coolBaseF}|${s.heatingDesignF}|${s.coolingDesignF}|${fan}`
  }
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
  { load, cycles: loadCycles }: { load: LoadYear; cycles: { heat: Cycle; cool: Cycle } },
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
  const cycles = { heat: cycleOf(heat), cool: cycleOf(cool), blower: cycleOf(blower) }
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
    toHeavyUse: daysToHeavyUse(cycles.blower, figures),
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

function daysToHeavyUse(blower: Cycle, figures: Figures): Float64Array {
  const wait = new Float64Array(CYCLE_DAYS).fill(Number.POSITIVE_INFINITY)
  let ahead = Number.POSITIVE_INFINITY
  // Any whole cycle does; one far enough from the first day that the days before it exist.
  for (let place = 2 * CYCLE_DAYS - 1; place >= 0; place--) {
    const heavy = isHeavyUse((day) => cycleThrough(blower, day), CYCLE_ORIGIN + CYCLE_DAYS + place, figures)
    ahead = heavy ? 0 : ahead + 1
    if (place < CYCLE_DAYS) wait[place] = ahead
  }
  return wait
}
