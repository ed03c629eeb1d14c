import type { Device, Household, System, Task } from '@/lib/core/household'
import { monthsLater, number } from './days'
import type { Hours } from './hours'
import { isPump } from './hours'
import { isInside, type Season, seasonsAround } from './season'
import { lastDone, type Service, sinceOf } from './service'

function inPeriod(due: number, period: number) {
  return { due, earliest: due - Math.floor(period / 4), latest: due + Math.floor(period / 10) }
}

/** A look every so many days. */
function fixed(home: Household, device: Device, on: number, task: Task, period: number): Service {
  const last = lastDone(home, task, device.id)
  const due = last === undefined ? sinceOf(home, on) : last + period
  const basis = last === undefined ? 'never-recorded' : 'calendar'
  return { task, subject: device.id, doer: 'resident', basis, ...inPeriod(due, period) }
}

/** A recorded replacement is the new alarm's manufacture day, until newer dates are entered. */
function replacement(home: Household, device: Device): Service | null {
  const replaced = lastDone(home, 'alarm-replace', device.id)
  let made = device.made === undefined ? undefined : number(device.made)
  let printed = device.endOfLife === undefined ? undefined : number(device.endOfLife)
  if (replaced !== undefined && (made === undefined || made < replaced)) {
    made = replaced
    if (printed !== undefined && printed <= replaced) printed = undefined
  }
  const aged = made === undefined ? undefined : monthsLater(made, device.kind === 'smoke-alarm' ? 120 : 84)
  const due =
    device.kind === 'co-alarm'
      ? (printed ?? aged)
      : aged === undefined || printed === undefined
        ? (aged ?? printed)
        : Math.min(aged, printed)
  if (due === undefined) return null
  const basis = 'age'
  return { task: 'alarm-replace', subject: device.id, doer: 'resident', due, earliest: due - 90, latest: due, basis }
}

/** What a device asks for, without regard to seasons. */
export function deviceTasks(home: Household, device: Device, on: number): Service[] {
  switch (device.kind) {
    case 'erv':
    case 'hrv':
      return [fixed(home, device, on, 'ventilator-hoods', 90), fixed(home, device, on, 'ventilator-core', 180)]
    case 'water-heater-gas':
    case 'water-heater-electric':
      return [fixed(home, device, on, 'water-heater-look', 365)]
    case 'smoke-alarm':
    case 'co-alarm': {
      const replace = replacement(home, device)
      return [fixed(home, device, on, 'alarm-test', 30), ...(replace ? [replace] : [])]
    }
    default:
      return []
  }
}

type Facts = { home: Household; system: System; on: number; hours: Hours }
type NextDue = { due: number; basis: string } | null

/** A look that belongs to seasons: the first day that lies inside one of them; never recorded, on `since` or at the next start. */
function seasonLook(
  { home, on, hours }: Facts,
  look: { task: Task; subject: string; kinds: ('heat' | 'cool')[]; period: number },
  next: (season: Season, last: number) => NextDue,
): Service[] {
  const last = lastDone(home, look.task, look.subject)
  const base = last ?? sinceOf(home, on)
  const found = look.kinds
    .flatMap((kind) => seasonsAround(kind, kind === 'heat' ? hours.unscaledHeat : hours.unscaledCool, base))
    .filter((season) => (season.end ?? season.start + 365) > base)
    .flatMap((season) => {
      const one =
        last === undefined ? { due: Math.max(base, season.start), basis: 'never-recorded' } : next(season, last)
      return one && isInside(season, one.due) ? [one] : []
    })
    .sort((a, b) => a.due - b.due)[0]
  const who = { task: look.task, subject: look.subject, doer: 'resident' as const }
  return found ? [{ ...who, basis: found.basis, ...inPeriod(found.due, look.period) }] : []
}

// What was done inside the window of a season's start was done for that season.
function isUndone(season: Season, last: number, period: number): boolean {
  return last < season.start - Math.floor(period / 4)
}

function afterHours(hours: (day: number) => number, base: number, wanted: number, end: number): number | null {
  let sum = 0
  for (let day = base + 1; day < end; day++) {
    sum += hours(day)
    if (sum >= wanted) return day
  }
  return null
}

export function outdoorTasks(facts: Facts): Service[] {
  const { system } = facts
  const pump = isPump(system)
  const kinds: ('heat' | 'cool')[] = [
    ...(system.cool && (system.delivery !== 'room' || pump || system.cool.source === 'heat-pump')
      ? (['cool'] as const)
      : []),
    ...(pump ? (['heat'] as const) : []),
  ]
  const look = { task: 'outdoor-unit-clear' as const, subject: system.id, kinds, period: 30 }
  return seasonLook(facts, look, (season, last) =>
    isUndone(season, last, 30) ? { due: season.start, basis: 'season' } : { due: last + 30, basis: 'calendar' },
  )
}

export function condensateTasks(facts: Facts, device: Device): Service[] {
  const look = { task: 'condensate-look' as const, subject: device.id, kinds: ['cool' as const], period: 90 }
  return seasonLook(facts, look, (season, last) => {
    const base = Math.max(last, season.start)
    const worn = afterHours((d) => facts.hours.at(d).cool, base, 500, base + 90)
    return worn === null ? { due: base + 90, basis: 'calendar' } : { due: worn, basis: 'runtime' }
  })
}

export function padTasks(facts: Facts, device: Device): Service[] {
  const look = { task: 'humidifier-pad' as const, subject: device.id, kinds: ['heat' as const], period: 365 }
  return seasonLook(facts, look, (season, last) => {
    if (isUndone(season, last, 365)) return { due: season.start, basis: 'season' }
    if (!facts.home.hardWater) return null
    const base = Math.max(last, season.start)
    const worn = afterHours((d) => facts.hours.at(d).heat, base, 600, base + 366)
    return worn === null ? null : { due: worn, basis: 'runtime' }
  })
}
