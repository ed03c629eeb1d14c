import { derating } from './airflow'
import { type Cycle, cycleThrough, yearPlace } from './cycle'
import { type DayNumber, dayNumber } from './day'
import type { Climate, Reading, System, WeatherSpell } from './household'
import type { Profiles, Scales } from './profile'
import { type DayHours, divideDay, type RunSettings } from './runtime'
import type { Figures } from './tables'
import { type DailyWeather, weatherDays } from './weather'

/** Measured days, and the modelled days between them, in order from `from`. */
export interface Measured {
  from: DayNumber
  days: DayHours[]
  scales: Scales
}

interface Span {
  from: DayNumber
  to: DayNumber
  hours: number
}

/** Hours of one quantity by day of the stretch; null where it was not measured. */
type Daily = (number | null)[]

const FULL_DAY = 24

/** Heating hours that a fuel bill stands for; a bill belongs to a system with an input rating. */
export function billHeatHours(
  bill: { therms: number; baseTherms: number },
  heat: NonNullable<System['heat']>,
  elevationFt: number,
  figures: Figures,
): number {
  if (heat.inputBtuh === undefined) throw new Error('a bill needs the input rating of its system')
  const inputBtuh = heat.inputBtuh * derating(heat.source, elevationFt, figures)
  return (Math.max(0, bill.therms - bill.baseTherms) * figures.btuPerTherm.value) / inputBtuh
}

/**
 * What was measured of one system replaces the model on its days and scales it elsewhere (model, section 2); null where
 * nothing was. A hot or cold spell raises the hours of its days that were not measured, and scales nothing: one week's
 * weather says nothing of another's.
 */
export function measure(
  facts: {
    system: System
    readings: readonly Reading[]
    weather: readonly WeatherSpell[]
    climate: Climate
    elevationFt: number
    on: DayNumber
  },
  settings: RunSettings,
  profiles: Profiles,
  figures: Figures,
): Measured | null {
  const readings = facts.readings.filter((r) => r.system === facts.system.id)
  const weather = weatherDays(facts.weather, settings, figures)
  if (readings.length === 0 && weather.size === 0) return null
  const spans = (quantity: (reading: Reading) => number | undefined): Span[] =>
    readings.flatMap((r) => {
      const hours = quantity(r)
      return hours === undefined ? [] : [{ from: dayNumber(r.from), to: dayNumber(r.to), hours }]
    })
  const heatSpans = spans((r) =>
    r.source === 'bill'
      ? facts.system.heat && billHeatHours(r, facts.system.heat, facts.elevationFt, figures)
      : r.heatHours,
  )
  const coolSpans = spans((r) => (r.source === 'bill' ? undefined : r.coolHours))
  const fanSpans = spans((r) => (r.source === 'bill' || !settings.movesAir ? undefined : r.fanHours))

  const all = [...heatSpans, ...coolSpans, ...fanSpans]
  // A reading may hold nothing that tells of this system: fan hours of a boiler, say.
  if (all.length === 0 && weather.size === 0) return null
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const span of all) [from, to] = [Math.min(from, span.from), Math.max(to, span.to)]
  // Not spread: a file may hold more of them than a call takes arguments.
  for (const day of weather.keys()) [from, to] = [Math.min(from, day), Math.max(to, day)]
  const count = to - from + 1
  const { load, cycles } = profiles.load(facts.climate, settings)
  const heat = spread(heatSpans, from, count, load.heat, cycles.heat, figures)
  const cool = spread(coolSpans, from, count, load.cool, cycles.cool, figures)
  const scales = {
    heat: scaleOf(heat, from, facts.on, load.heat, figures),
    cool: scaleOf(cool, from, facts.on, load.cool, figures),
  }
  const days = Array.from({ length: count }, (_, i) => {
    const place = yearPlace(from + i)
    const spell: DailyWeather | undefined = weather.get(from + i)
    const heatHours = heat[i] ?? Math.max(load.heat[place] as number, spell?.heat ?? 0) * scales.heat
    const coolHours = cool[i] ?? Math.max(load.cool[place] as number, spell?.cool ?? 0) * scales.cool
    return divideDay(heatHours, coolHours, settings, figures)
  })
  for (const span of fanSpans) fitBlower(days.slice(span.from - from, span.to - from + 1), span.hours)
  return { from, days, scales }
}

/** Spreads each span's hours over its days in the model's proportions, or evenly where the model has hardly any. */
function spread(
  spans: Span[],
  from: DayNumber,
  count: number,
  load: Float64Array,
  cycle: Cycle,
  figures: Figures,
): Daily {
  const daily: Daily = new Array(count).fill(null)
  for (const span of spans) {
    const modelled = cycleThrough(cycle, span.to) - cycleThrough(cycle, span.from - 1)
    const even = span.hours / (span.to - span.from + 1)
    for (let day = span.from; day <= span.to; day++) {
      const hours =
        modelled < figures.evenSpreadBelowHours.value
          ? even
          : (span.hours * (load[yearPlace(day)] as number)) / modelled
      daily[day - from] = Math.min(FULL_DAY, hours)
    }
  }
  return daily
}

/** How measured days of about the last year scale the model elsewhere: the fewer hours were measured, the closer to 1. */
function scaleOf(daily: Daily, from: DayNumber, on: DayNumber, load: Float64Array, figures: Figures): number {
  let measured = 0
  let modelled = 0
  daily.forEach((hours, i) => {
    const day = from + i
    if (hours === null || day > on || day <= on - figures.scalingWindowDays.value) return
    measured += hours
    modelled += load[yearPlace(day)] as number
  })
  if (modelled < figures.evenSpreadBelowHours.value) return 1
  const ratio = Math.min(figures.greatestScale.value, Math.max(figures.leastScale.value, measured / modelled))
  const weight = modelled / (modelled + figures.scalingHalfHours.value)
  return Math.exp(weight * Math.log(ratio))
}

/** A measured total of the blower: what heating and cooling leave of it ran for the fan alone; less than they need scales them down. */
function fitBlower(days: DayHours[], blowerHours: number): void {
  const needed = days.reduce((sum, d) => sum + d.heatRun + d.coolRun, 0)
  const share = needed > blowerHours ? blowerHours / needed : 1
  const fanOnly = Math.max(0, blowerHours - needed) / days.length
  for (const day of days) {
    day.heatRun *= share
    day.coolRun *= share
    day.fanOnly = Math.min(FULL_DAY - day.heatRun - day.coolRun, fanOnly)
  }
}
