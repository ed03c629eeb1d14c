import type { Filter, Household, Light, LogRecord } from '@/lib/core/household'
import { type Airflow, loadingOf, mediumOf } from './air'
import { number } from './days'
import { capacityOf, catchOf } from './dust'
import type { Hours } from './hours'
import { type Look, thetaAfter } from './learn'

export interface SystemFacts {
  home: Household
  filters: Filter[]
  hours: Hours
  air: Airflow
  on: number
}

export interface Forecast {
  due: number
  early: number | null
  late: number | null
  lookOn: number
  earliest: number
  latest: number
  basis: 'loading' | 'calendar' | 'label' | 'never-recorded'
  /** x at `on`, median θ. */
  loaded: number | null
  /** x on the due day and the day before: how near the threshold a disagreement of one day is. */
  xDue: number
  xBefore: number
}

export function limitOf(filter: Filter): number {
  const table = mediumOf(filter.medium, filter.merv, filter.nominal.depthIn)?.limit
  return filter.labelLimitDays ?? table ?? (filter.place === 'ventilator' ? 60 : 30)
}

// The order of entry must not matter, so of two changes on one day what they fitted decides.
function fittedText(record: LogRecord): string {
  if (record.kind !== 'filter-changed' || !record.fitted) return ''
  return `${record.fitted.medium} ${record.fitted.merv ?? ''}`
}

function recordsOf(home: Household, filter: Filter) {
  return home.records
    .filter(
      (r): r is Exclude<LogRecord, { kind: 'service-done' }> => r.kind !== 'service-done' && r.filter === filter.id,
    )
    .map((r) => ({ ...r, day: number(r.on) }))
    .sort((a, b) => a.day - b.day || (fittedText(a) < fittedText(b) ? -1 : 1))
}

/** All looks that tell something about a system's dust in the last 730 days (model.md, section 5). */
export function looksOf(facts: SystemFacts): Look[] {
  const looks: Look[] = []
  for (const filter of facts.filters) {
    const records = recordsOf(facts.home, filter)
    for (const record of records) {
      const light: Light | undefined = record.light
      if (!light || record.day < facts.on - 730) continue
      const change = records.findLast((r) => r.kind === 'filter-changed' && r.day < record.day)
      if (!change) continue
      const fitted = change.kind === 'filter-changed' ? change.fitted : undefined
      const then: Filter = fitted ? { ...filter, medium: fitted.medium, merv: fitted.merv } : filter
      const capacity = capacityOf(then)
      if (!capacity) continue
      const filters = facts.filters.map((f) => (f.id === filter.id ? then : f))
      const caught = catchOf({ ...facts, filter: then, filters })
      let grams = 0
      for (let day = change.day + 1; day <= record.day; day++) grams += caught(day)
      if (grams / capacity >= 0.01) looks.push({ x: grams / capacity, light })
    }
  }
  return looks
}

export function thetaOf(facts: SystemFacts) {
  return thetaAfter(looksOf(facts))
}

/** From a change: the first day at which a filter with this dust factor is full, or its limit. */
export function runsOut(facts: SystemFacts, filter: Filter, change: number, theta: number) {
  const capacity = capacityOf(filter)
  const limit = change + limitOf(filter)
  const caught = catchOf({ ...facts, filter })
  let x = 0
  let xBefore = 0
  if (capacity) {
    for (let day = change + 1; day <= limit; day++) {
      xBefore = x
      x += (theta * caught(day)) / capacity
      if (x >= 1) return { day, full: true, x, xBefore }
    }
  }
  return { day: limit, full: false, x, xBefore }
}

function forecastFrom(facts: SystemFacts, filter: Filter, change: number, looked: number): Forecast {
  const theta = thetaOf(facts)
  const screen = loadingOf(filter) === null
  const median = runsOut(facts, filter, change, theta.q50)
  const early = screen ? null : runsOut(facts, filter, change, theta.q90).day
  const late = screen ? null : runsOut(facts, filter, change, theta.q10).day
  let heavy = looked + 30
  for (; heavy < median.day; heavy++) {
    let sum = 0
    for (let d = heavy - 29; d <= heavy; d++) sum += facts.hours.at(d).blower
    if (sum / 30 >= 4) break
  }
  const look = Math.min(median.day, Math.max(looked + 14, Math.min(early ?? median.day, heavy)))
  const capacity = capacityOf(filter)
  const caught = catchOf({ ...facts, filter })
  let grams = 0
  for (let d = change + 1; d <= facts.on; d++) grams += caught(d)
  return {
    due: median.day,
    early,
    late,
    lookOn: look,
    earliest: Math.min(median.day, Math.max(median.day - 21, change + 14)),
    latest: median.day + 7,
    basis:
      median.full && median.day < change + limitOf(filter) ? 'loading' : filter.labelLimitDays ? 'label' : 'calendar',
    loaded: capacity && (theta.q50 * grams) / capacity,
    xDue: median.x,
    xBefore: median.xBefore,
  }
}

export function forecastOf(facts: SystemFacts, filter: Filter): Forecast {
  const records = recordsOf(facts.home, filter)
  const change = records.findLast((r) => r.kind === 'filter-changed')
  if (!change) {
    const due = facts.home.since ? number(facts.home.since) : facts.on
    const modelled = loadingOf(filter) ? due : null
    const span = { due, earliest: due - 21, latest: due + 7, early: modelled, late: modelled, lookOn: due }
    return { ...span, basis: 'never-recorded', loaded: null, xDue: 0, xBefore: 0 }
  }
  const looked = records.at(-1)?.day ?? change.day
  return forecastFrom(facts, filter, change.day, Math.max(change.day, looked))
}
