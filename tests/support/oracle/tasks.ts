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

function replacement(home: Household, device: Device): Service | null {
  const years = device.kind === 'smoke-alarm' ? 10 : 7
  const due =
    device.kind === 'co-alarm' && device.endOfLife
      ? number(device.endOfLife)
      : device.made && monthsLater(number(device.made), 12 * years)
  if (!due) return null
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

/** A look that belongs to a season: at most so many days, and where given so many hours, after it was last done. */
export function seasonLook(
  facts: { home: Household; on: number; hours: Hours },
  look: { task: Task; subject: string; kinds: ('heat' | 'cool')[]; days: number; hours?: number; atStart: boolean },
): Service | null {
  const { home, on, hours } = facts
  const last = lastDone(home, look.task, look.subject)
  const base = last ?? sinceOf(home, on)
  const seasons: Season[] = look.kinds
    .flatMap((kind) => seasonsAround(kind, kind === 'heat' ? hours.unscaledHeat : hours.unscaledCool, base))
    .sort((a, b) => a.start - b.start)
  const who = { task: look.task, subject: look.subject, doer: 'resident' as const }
  if (last === undefined && seasons.some((s) => isInside(s, base))) {
    return { ...who, basis: 'never-recorded', ...inPeriod(base, look.days) }
  }
  for (const season of seasons) {
    const from = Math.max(last ?? season.start, season.start)
    if (!isInside(season, from)) continue
    if (last === undefined && season.start < base) continue
    let due = from + look.days
    let basis = 'calendar'
    if (look.atStart && from === season.start && (last ?? -1) < season.start) {
      due = from
      basis = 'season'
    } else if (look.hours !== undefined) {
      let sum = 0
      for (let d = from + 1; d < due; d++) {
        sum += hours.at(d).cool
        if (sum >= look.hours) {
          due = d
          basis = 'runtime'
        }
      }
    }
    if (isInside(season, due)) return { ...who, basis, ...inPeriod(due, look.days) }
  }
  return null
}

/** The looks of one system that follow its seasons. */
export function seasonTasks(facts: { home: Household; system: System; hours: Hours; on: number }): Service[] {
  const { system } = facts
  if (!isPump(system) && (!system.cool || system.delivery === 'room')) return []
  const kinds: ('heat' | 'cool')[] = isPump(system) ? ['heat', 'cool'] : ['cool']
  const outdoor = { task: 'outdoor-unit-clear' as const, subject: system.id, kinds, days: 30, atStart: true }
  const found = seasonLook(facts, outdoor)
  return found ? [found] : []
}
