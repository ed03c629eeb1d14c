import { type FilterInAir, faceVelocityFpm, velocityLimitFpm } from './air-path'
import { type DayNumber, dayText } from './day'
import { dateInWords, plural } from './day-words'
import { sourced, stateOf } from './due'
import type { FilterForecast } from './filter'
import type { DustStart, NominalSize } from './household'
import type { Theta } from './learning'
import type { Item, Reason, Warning } from './plan-types'
import type { SystemDays } from './system-days'
import type { Tables } from './tables'
import { type Units, velocityInWords } from './unit-words'

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

function reasonsFor(facts: Facts, tables: Tables): Reason[] {
  const { f, days, theta, forecast } = facts
  if (forecast.changedOn === null) {
    return [{ say: 'No change is recorded yet, so look at it first: nobody knows how full it is.', mark: 'C' }]
  }
  const reasons = [whatSetTheDay(facts, dateInWords(dayText(forecast.changedOn)))]
  if (f.loading === null) return reasons
  if (days.measured)
    reasons.push({
      say: 'Measured hours count where there are any, and correct the reckoned ones elsewhere.',
      mark: 'C',
    })
  const { dustStart } = days.system
  if (dustStart) reasons.push({ say: startInWords(dustStart), mark: tables.figures.poolShares.mark })
  // Off the middle of the grid a start comes back only nearly as it was.
  const isTold = dustStart ? Math.abs(theta.q50 / dustStart.median - 1) > 0.005 : theta.q50 !== 1
  if (isTold) {
    const say = `Judging by the looks at its filters, this home has about ${theta.q50.toFixed(1)} times the dust that was reckoned.`
    reasons.push({ say, mark: tables.figures.thetaSigma.mark })
  }
  return reasons
}

function startInWords({ median, systems }: DustStart): string {
  return `Before any look at its own filters it starts from looks at ${plural(systems, 'other system')} of the same owner: about ${median.toFixed(1)} times the dust that was reckoned.`
}

function whatSetTheDay({ f, days, forecast, on }: Facts, changed: string): Reason {
  const last = `Last ${f.filter.medium === 'washable' || f.filter.medium === 'screen' ? 'washed' : 'changed'} on ${changed}.`
  if (forecast.basis === 'label') {
    return { say: `${last} The limit printed on the filter is ${forecast.limitDays} days.`, mark: 'P' }
  }
  if (forecast.basis === 'calendar' || f.loading === null) {
    const { calendarReason, calendarMark, calendarSource } = f.row
    return sourced(`${last} ${calendarReason}`, calendarMark, calendarSource)
  }
  const hours = Math.round(days.blowerThrough(forecast.due) - days.blowerThrough(forecast.changedOn ?? forecast.due))
  const grams = Math.round(f.loading.capacityGrams)
  const day = dateInWords(dayText(forecast.due))
  const say =
    forecast.due <= on
      ? `By ${day} the blower had run about ${hours} hours, and the filter had caught the ${grams} g that one of its size holds.`
      : `By ${day} the blower will have run about ${hours} hours, and the filter will have caught the ${grams} g that one of its size holds.`
  return { say: `${last} ${say}`, mark: 'C' }
}

/** A filter too small for its blower, with the common size that would do. */
export function velocityWarning(
  { f, days, units }: { f: FilterInAir; days: SystemDays; units: Units },
  tables: Tables,
): Warning | null {
  const limit = velocityLimitFpm(f.filter.place, tables)
  const velocity = faceVelocityFpm(f, days.airflow)
  if (limit === null || velocity === null || velocity <= limit) return null
  const cfm = velocity * f.faceAreaFt2
  const { widthIn, heightIn, depthIn } = f.filter.nominal
  const fits = (s: NominalSize) => s.depthIn === depthIn && (cfm * 144) / (s.widthIn * s.heightIn) <= limit
  // A larger opening around the present one comes before another shape; the table has the smallest face first.
  const larger =
    tables.commonSizes.find((s) => s.widthIn >= widthIn && s.heightIn >= heightIn && fits(s)) ??
    tables.commonSizes.find(fits)
  const better = larger
    ? `A ${larger.widthIn} × ${larger.heightIn} × ${larger.depthIn} would bring it under that`
    : 'No common size alone would bring it under that; a second grille that draws air in would'
  return {
    code: 'filter-small-for-airflow',
    subject: f.filter.id,
    say: `This filter is small for this blower: ${speedInWords(velocity, limit, units)} ${better}: ask a technician before the opening is changed.`,
  }
}

function speedInWords(fpm: number, limitFpm: number, units: Units): string {
  const [speed, limit] = [velocityInWords(fpm, units), velocityInWords(limitFpm, units)]
  // Rounded, a little over the limit looks like the limit itself.
  return speed === limit
    ? `air passes it a little faster than ${limit}, the most that suits its place.`
    : `air passes it at ${speed}, and ${limit} is the most that suits its place.`
}
