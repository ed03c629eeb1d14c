import { type FilterInAir, faceVelocityFpm, velocityLimitFpm } from './air-path'
import { type DayNumber, dayText } from './day'
import { dateInWords } from './day-words'
import { stateOf } from './due'
import type { FilterForecast } from './filter'
import type { Theta } from './learning'
import type { Item, Reason, Warning } from './plan-types'
import { sizeText } from './supplies'
import type { SystemDays } from './system-days'
import type { Tables } from './tables'

interface Facts {
  f: FilterInAir
  days: SystemDays
  theta: Theta
  forecast: FilterForecast
  on: DayNumber
}

/** The plan's item for one filter, with its reasons. */
export function filterItem(facts: Facts, tables: Tables): Item {
  const { f, forecast, on } = facts
  const isWashed = f.filter.medium === 'washable' || f.filter.medium === 'screen'
  const task = isWashed ? 'wash-filter' : 'change-filter'
  return {
    task,
    subject: f.filter.id,
    doer: tables.tasks[task].doer,
    earliest: dayText(forecast.earliest),
    due: dayText(forecast.due),
    latest: dayText(forecast.latest),
    lookOn: dayText(forecast.lookOn),
    early: forecast.early === null ? null : dayText(forecast.early),
    late: forecast.late === null ? null : dayText(forecast.late),
    basis: forecast.basis,
    state: stateOf(forecast.due, forecast.latest, on, tables.figures),
    reasons: reasonsFor(facts, tables),
  }
}

function reasonsFor({ f, days, theta, forecast }: Facts, tables: Tables): Reason[] {
  const { changedOn } = forecast
  if (changedOn === null) {
    return [{ say: 'No change is recorded yet, so look at it first: nobody knows how full it is.', mark: 'C' }]
  }
  const changed = dateInWords(dayText(changedOn))
  const reasons = [whatSetTheDay(f, days, forecast, changed)]
  if (days.measured)
    reasons.push({ say: 'The hours are measured where they were measured, and scaled by them elsewhere.', mark: 'C' })
  if (theta.q50 !== 1) {
    const times = theta.q50.toFixed(2)
    reasons.push({
      say: `What was seen at this system’s filters says: ${times} times the estimated dust.`,
      mark: tables.figures.thetaSigma.mark,
    })
  }
  return reasons
}

function whatSetTheDay(f: FilterInAir, days: SystemDays, forecast: FilterForecast, changed: string): Reason {
  if (forecast.basis === 'label') {
    return { say: `Changed on ${changed}; the limit printed on the filter is ${forecast.limitDays} days.`, mark: 'P' }
  }
  if (forecast.basis === 'calendar' || f.loading === null) {
    const { calendarReason, calendarMark, calendarSource } = f.row
    const say = `Changed on ${changed}. ${calendarReason}`
    return { say, mark: calendarMark, ...(calendarSource && { source: calendarSource }) }
  }
  const hours = Math.round(days.blowerThrough(forecast.due) - days.blowerThrough(forecast.changedOn ?? forecast.due))
  const grams = Math.round(f.loading.capacityGrams)
  return {
    say: `Changed on ${changed}. By ${dateInWords(dayText(forecast.due))} the blower will have run about ${hours} hours since, and the filter will have caught the ${grams} g that one of its size holds.`,
    mark: 'C',
  }
}

/** A filter too small for its blower, with the common size that would do. */
export function velocityWarning(f: FilterInAir, days: SystemDays, tables: Tables): Warning | null {
  const limit = velocityLimitFpm(f.filter.place, tables)
  const velocity = faceVelocityFpm(f, days.airflow)
  if (limit === null || velocity === null || velocity <= limit) return null
  const cfm = velocity * f.faceAreaFt2
  const { widthIn, heightIn, depthIn } = f.filter.nominal
  const fitting = tables.commonSizes.filter(
    (s) => s.depthIn === depthIn && (cfm * 144) / (s.widthIn * s.heightIn) <= limit,
  )
  // A larger opening around the present one comes before another shape; the table has the smallest face first.
  const larger = fitting.find((s) => s.widthIn >= widthIn && s.heightIn >= heightIn) ?? fitting[0]
  const better = larger
    ? `A ${sizeText(larger).replaceAll('x', ' × ')} would bring it under that`
    : 'No common size alone would bring it under that; a second return would'
  return {
    code: 'filter-small-for-airflow',
    subject: f.filter.id,
    say: `This filter is small for this blower: air passes it at ${Math.round(velocity)} ft/min, and ${limit} is the most that suits its place. ${better}: ask a technician before the opening is changed.`,
  }
}
