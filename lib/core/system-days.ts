import { type AirPath, airPath, type FilterInAir } from './air-path'
import { type Airflow, airflowOf } from './airflow'
import { cycleThrough, weightedThrough } from './cycle'
import { type DayNumber, dayNumber } from './day'
import { dustConcentration, eventFactors } from './dust'
import type { Filter, Household, System } from './household'
import { type Measured, measure } from './measured'
import { cleaningFactor, type Profile, type Profiles, type Through } from './profile'
import { type DayHours, runSettings } from './runtime'
import type { Tables } from './tables'

/** One system's days: the shared profile, and where its own measured days differ from it. */
export interface SystemDays {
  system: System
  profile: Profile
  airflow: Airflow
  path: AirPath
  measured: Measured | null
  heatThrough: Through
  coolThrough: Through
  blowerThrough: Through
  /** Grams that reach θ = 1 and stay in a filter, summed through a day; zero for filters without a loading model. */
  gramsThrough: (f: FilterInAir, path?: AirPath) => Through
  /** Days before this one may differ from the profile through measured hours; none from it on. */
  ownDaysEnd: DayNumber
  hoursOn: (day: DayNumber) => DayHours
}

/** The days of one system at `on`; the facts are those of the household file. */
export function systemDays(
  home: Household,
  system: System,
  on: DayNumber,
  tables: Tables,
  profiles: Profiles,
): SystemDays {
  const { figures } = tables
  const settings = runSettings(system, home.climate, figures)
  const elevationFt = home.elevationFt ?? 0
  const measured =
    home.readings.length === 0 && !home.weather?.length
      ? null
      : measure(
          {
            ...{ system, readings: home.readings, weather: home.weather ?? [] },
            ...{ climate: home.climate, elevationFt, on },
          },
          settings,
          profiles,
          figures,
        )
  const profile = profiles.get(home.climate, settings, measured?.scales ?? UNSCALED)
  const airflow = airflowOf(system, elevationFt, figures)
  const path = airPath(
    home.filters.filter((f) => f.system === system.id),
    tables,
  )
  const dust = dustConcentration(home, tables)
  const stretch = ownStretch(home, measured, tables)

  const modelled = profile.hoursOn
  const hoursOn = measured
    ? (day: DayNumber): DayHours => measured.days[day - measured.from] ?? modelled(day)
    : modelled
  const withMeasured = (base: Through, of: (hours: DayHours) => number): Through => {
    if (!measured) return base
    return corrected(
      base,
      correction(measured.from, measured.days.length, (day) => of(hoursOn(day)) - of(modelled(day))),
    )
  }
  return {
    system,
    profile,
    airflow,
    path,
    measured,
    hoursOn,
    heatThrough: withMeasured(profile.through.heat, (h) => h.heat),
    coolThrough: withMeasured(profile.through.cool, (h) => h.cool),
    blowerThrough: withMeasured(profile.through.blower, blowerHours),
    gramsThrough: (f, along = path) => grams(f, along.arrestance),
    ownDaysEnd: measured ? measured.from + measured.days.length : Number.NEGATIVE_INFINITY,
  }

  function grams(f: FilterInAir, arrestance: number): Through {
    if (f.loading === null || f.share === null) return () => 0
    // µg of dust a cubic foot that stay in this filter, in grams, for an hour of one cfm.
    const perCfmHour =
      (60 * figures.cubicMetresPerCubicFoot.value * dust * f.share * f.reached * f.loading.arrestance) / 1e6
    const heat = perCfmHour * airflow.heat
    const cool = perCfmHour * airflow.cool
    const fan = perCfmHour * airflow.fan
    const air = profile.air(arrestance)
    const running: Through = (day) => weightedThrough(air.heat, heat, air.cool, cool, day)
    // Most fans are on auto: nothing is summed for them that is always zero.
    const base: Through = air.fan.total === 0 ? running : (day) => running(day) + fan * cycleThrough(air.fan, day)
    if (!stretch) return base
    const caught = (h: DayHours) =>
      (heat * h.heatRun + cool * h.coolRun + fan * h.fanOnly) * cleaningFactor(arrestance, blowerHours(h), figures)
    return corrected(
      base,
      correction(
        stretch.from,
        stretch.events.length,
        (day) => caught(hoursOn(day)) * (stretch.events[day - stretch.from] as number) - caught(modelled(day)),
      ),
    )
  }
}

/** Every hour the blower runs in a day. */
export function blowerHours(h: DayHours): number {
  return h.heatRun + h.coolRun + h.fanOnly
}

/** The filters of a system along its air, one of them with what was fitted at the time. */
export function pathWithFitted(filters: readonly Filter[], fitted: Filter, tables: Tables): AirPath {
  return airPath(
    filters.map((f) => (f.id === fitted.id ? fitted : f)),
    tables,
  )
}

const UNSCALED = { heat: 1, cool: 1 }

/**
 * From the first to the last day on which a filter's dust differs from the shared profile, measured days and dust
 * events: what the events of each day do.
 */
function ownStretch(
  home: Household,
  measured: Measured | null,
  { dustEvents }: Tables,
): { from: DayNumber; events: Float64Array } | null {
  if (!measured && home.dustEvents.length === 0) return null
  let from = measured?.from ?? Number.POSITIVE_INFINITY
  let to = measured ? measured.from + measured.days.length - 1 : Number.NEGATIVE_INFINITY
  // One by one: a file may hold more events than a call takes arguments.
  for (const event of home.dustEvents) {
    from = Math.min(from, dayNumber(event.from))
    to = Math.max(to, dayNumber(event.to))
  }
  return { from, events: eventFactors(home.dustEvents, { from, count: to - from + 1 }, dustEvents) }
}

interface Correction {
  from: DayNumber
  prefix: Float64Array
}

function correction(from: DayNumber, count: number, difference: (day: DayNumber) => number): Correction {
  const prefix = new Float64Array(count + 1)
  for (let i = 0; i < count; i++) prefix[i + 1] = (prefix[i] as number) + difference(from + i)
  return { from, prefix }
}

function corrected(base: Through, { from, prefix }: Correction): Through {
  const last = prefix.length - 1
  return (day) => base(day) + (prefix[Math.min(last, Math.max(0, day - from + 1))] as number)
}
