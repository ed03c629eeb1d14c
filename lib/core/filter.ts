import type { FilterInAir } from './air-path'
import { cyclePlace, firstReaching } from './cycle'
import type { DayNumber } from './day'
import type { FilterHistory } from './history'
import { type Look, learnTheta, type Theta } from './learning'
import type { Basis } from './plan-types'
import { startOf } from './pooling'
import { isHeavyUse, type Through } from './profile'
import { pathWithFitted, type SystemDays } from './system-days'
import type { Figures, Tables } from './tables'

/** When a filter is due, and the days around that (model, section 5). */
export interface FilterForecast {
  earliest: DayNumber
  due: DayNumber
  latest: DayNumber
  lookOn: DayNumber
  /** Null without a loading model. */
  early: DayNumber | null
  late: DayNumber | null
  basis: Basis
  /** The last known change; null where none is. */
  changedOn: DayNumber | null
  limitDays: number
}

/** The longest a filter may stay: what is printed on it, else the calendar limit of its kind. */
export function limitOf(f: FilterInAir): { days: number; basis: 'label' | 'calendar' } {
  const { labelLimitDays } = f.filter
  return labelLimitDays === undefined
    ? { days: f.row.calendarLimitDays, basis: 'calendar' }
    : { days: labelLimitDays, basis: 'label' }
}

/** Forecasts one filter from its last change, by the grams that reach it (`days.gramsThrough(f)`); without a known one it is due on the `since` day, to be looked at first. */
export function forecastFilter(
  facts: { f: FilterInAir; days: SystemDays; grams: Through; theta: Theta; history: FilterHistory; since: DayNumber },
  figures: Figures,
): FilterForecast {
  const { f, days, grams, theta, history, since } = facts
  const limit = limitOf(f)
  const changedOn = history.changes.at(-1)?.on ?? null
  if (changedOn === null) {
    const modelled = f.loading === null ? null : since
    return {
      earliest: since - figures.changeBeforeDays.value,
      due: since,
      latest: since + figures.changeAfterDays.value,
      lookOn: since,
      early: modelled,
      late: modelled,
      basis: 'never-recorded',
      changedOn,
      limitDays: limit.days,
    }
  }
  const { due, early, late } = daysFull(f, grams, theta, changedOn, limit.days)
  const lastSeen = Math.max(changedOn, history.looks.at(-1)?.on ?? changedOn)
  return {
    earliest: Math.min(due, Math.max(due - figures.changeBeforeDays.value, changedOn + figures.noLookWithinDays.value)),
    due,
    latest: due + figures.changeAfterDays.value,
    lookOn: lookDay({ days, lastSeen, early, due }, figures),
    early,
    late,
    basis: due < changedOn + limit.days ? 'loading' : limit.basis,
    changedOn,
    limitDays: limit.days,
  }
}

/** The day a filter changed on `from` next falls due, at the median of θ: for counting supplies. */
export function nextDue(f: FilterInAir, days: SystemDays, theta: Theta, from: DayNumber): DayNumber {
  const limitDays = limitOf(f).days
  if (f.loading === null) return from + limitDays
  return filling(days.gramsThrough(f), from, from + limitDays)(f.loading.capacityGrams / theta.q50, from + 1)
}

function daysFull(f: FilterInAir, grams: Through, theta: Theta, from: DayNumber, limitDays: number) {
  const limit = from + limitDays
  if (f.loading === null) return { due: limit, early: null, late: null }
  const { capacityGrams } = f.loading
  const dayFull = filling(grams, from, limit)
  // A dustier home fills the filter sooner, so each search starts where the one before ended.
  const early = dayFull(capacityGrams / theta.q90, from + 1)
  const due = dayFull(capacityGrams / theta.q50, early)
  return { early, due, late: dayFull(capacityGrams / theta.q10, due) }
}

/** The first day from `first` by whose end so many grams were caught since the change; the limit at the latest. */
function filling(
  grams: Through,
  changedOn: DayNumber,
  limit: DayNumber,
): (full: number, first: DayNumber) => DayNumber {
  const start = grams(changedOn)
  const last = grams(limit - 1)
  return (full, first) => (last - start < full ? limit : firstReaching(grams, start + full, first, limit - 1, last))
}

/** The day to hold the filter to a lamp: when it could be full, or a month into heavy use; never after the due day. */
function lookDay(
  facts: { days: SystemDays; lastSeen: DayNumber; early: DayNumber | null; due: DayNumber },
  figures: Figures,
): DayNumber {
  const { days, lastSeen, early, due } = facts
  const heavy = firstHeavyUse(days, lastSeen + figures.lookAfterDays.value, due, figures)
  const wanted = Math.min(early ?? due, heavy)
  return Math.min(due, Math.max(wanted, lastSeen + figures.noLookWithinDays.value))
}

function firstHeavyUse(days: SystemDays, from: DayNumber, to: DayNumber, figures: Figures): DayNumber {
  let day = from
  // Measured days still count in the mean of the month after them; beyond that the shared table knows.
  const ownEnd = days.ownDaysEnd + figures.trailingDays.value
  for (; day <= to && day < ownEnd; day++) if (isHeavyUse(days.blowerThrough, day, figures)) return day
  return day > to ? to : day + (days.profile.toHeavyUse()[cyclePlace(day)] as number)
}

/** Dust caught since the last change over capacity, at the end of `on`; null without a known change or model. */
export function loadedFraction(
  f: FilterInAir,
  grams: Through,
  theta: Theta,
  changedOn: DayNumber | null,
  on: DayNumber,
): number | null {
  if (f.loading === null || changedOn === null) return null
  return (theta.q50 * (grams(on) - grams(changedOn))) / f.loading.capacityGrams
}

/** What the looks at a system's filters tell of its θ, from where it starts. */
export function systemTheta(
  days: SystemDays,
  historyOf: (filter: string) => FilterHistory,
  on: DayNumber,
  tables: Tables,
): Theta {
  const prior = startOf(days.system.dustStart, tables.figures)
  return learnTheta(systemLooks(days, historyOf, on, tables), tables.figures, prior)
}

/** A look that tells of θ, with its day. */
export interface DatedLook extends Look {
  filter: string
  on: DayNumber
}

/** The looks at a system's filters that tell of its θ on a day: those of the last two years after a known change. */
export function systemLooks(
  days: SystemDays,
  historyOf: (filter: string) => FilterHistory,
  on: DayNumber,
  tables: Tables,
): DatedLook[] {
  const looks: DatedLook[] = []
  for (const f of days.path.filters) {
    const history = historyOf(f.filter.id)
    if (history.looks.length > 0) looks.push(...looksAt(f, days, history, on, tables))
  }
  return looks
}

function looksAt(f: FilterInAir, days: SystemDays, history: FilterHistory, on: DayNumber, tables: Tables): DatedLook[] {
  const { figures } = tables
  return history.looks.flatMap((look) => {
    if (look.light === undefined || look.on > on || look.on < on - figures.learnFromDays.value) return []
    const change = history.changes.findLast((c) => c.on < look.on)
    if (!change) return []
    const { f: then, grams } = asFitted(f, days, change.fitted, tables)
    if (then.loading === null) return []
    const expected = (grams(look.on) - grams(change.on)) / then.loading.capacityGrams
    return [{ filter: f.filter.id, on: look.on, light: look.light, expected }]
  })
}

/** A filter as a change fitted it, and the grams that reach it: what is in place now, where the change said nothing. */
export function asFitted(
  f: FilterInAir,
  days: SystemDays,
  fitted: FilterHistory['changes'][number]['fitted'],
  tables: Tables,
): { f: FilterInAir; grams: Through } {
  if (!fitted) return { f, grams: days.gramsThrough(f) }
  const { merv: _current, ...rest } = f.filter
  const path = pathWithFitted(
    days.path.filters.map((other) => other.filter),
    { ...rest, ...fitted },
    tables,
  )
  const then = path.filters.find((other) => other.filter.id === f.filter.id) ?? f
  return { f: then, grams: days.gramsThrough(then, path) }
}
