import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { Device, Filter, Household, System } from '@/lib/core/household'
import { type Loose, type Path, pathText } from '../fault'
import { deviceRules, filterRules, systemRules } from './equipment-rules'
import { readingRules } from './reading-rules'
import { dustEventRules, recordRules, weatherRules } from './record-rules'

/** Where a rule puts what it found; the path is taken from the household. */
export type Report = (path: Path, say: string) => void

/** The parts of a household that others name, by id. */
export interface Known {
  systems: Parts<System>
  filters: Parts<Filter>
  devices: Parts<Device>
}

export interface Parts<T> {
  what: string
  byId: Map<string, Loose<T>>
  /** Every part has an id that could be read: only then is an id that is not among them wrong. */
  isComplete: boolean
}

/**
 * The rules that look at more than one key. They see whatever could be read of each household, so that one
 * wrong number elsewhere hides nothing. `today` is asked with the household's own zone.
 */
export function householdRules(
  households: readonly (Loose<Household> | undefined)[],
  today: (timeZone: string) => Day,
): Fault[] {
  const faults: Fault[] = []
  partsOf('household', households, (path, say) => faults.push({ path: pathText(['households', ...path]), say }))
  households.forEach((household, index) => {
    if (!household) return
    const report: Report = (path, say) => faults.push({ path: pathText(['households', index, ...path]), say })
    const known = {
      systems: partsOf<System>('system', listOf(household, 'systems'), within(report, 'systems')),
      filters: partsOf<Filter>('filter', listOf(household, 'filters'), within(report, 'filters')),
      devices: partsOf<Device>('device', listOf(household, 'devices'), within(report, 'devices')),
    }
    const day = household.timeZone === undefined ? undefined : today(household.timeZone)
    climateRules(household, report)
    dustEventRules(household.dustEvents, report)
    weatherRules(household.weather, report)
    systemRules(household.systems, report)
    filterRules(household.filters, known, report)
    deviceRules(household.devices, known, report)
    recordRules(household.records, { known, day, report })
    readingRules(household.readings, { known, day, report })
  })
  return faults
}

/** Reports an id that no part of its kind has. */
export function refer<T>(
  parts: Parts<T>,
  id: string | undefined,
  found: { path: Path; report: Report },
): Loose<T> | undefined {
  if (id === undefined) return undefined
  const part = parts.byId.get(id)
  if (part || !parts.isComplete) return part
  const ids = [...parts.byId.keys()].slice(0, 12)
  const have = ids.length === 0 ? `this household has no ${parts.what}s` : `this household has ${ids.join(', ')}`
  found.report(found.path, `names the ${parts.what} ${JSON.stringify(id)}, but ${have}`)
  return undefined
}

function within(report: Report, key: string): Report {
  return (path, say) => report([key, ...path], say)
}

type Lists = 'systems' | 'filters' | 'devices'

/** A list that was left out is empty; one that could not be read may have held anything. */
function listOf<K extends Lists>(household: Loose<Household>, key: K): Loose<Household[K]> {
  const list = household[key] as Loose<Household[K]> | undefined
  return list ?? ((Object.hasOwn(household, key) ? [undefined] : []) as Loose<Household[K]>)
}

function partsOf<T>(
  what: string,
  list: readonly (({ id?: string } & Loose<T>) | undefined)[],
  report: Report,
): Parts<T> {
  const byId = new Map<string, Loose<T>>()
  list.forEach((part, index) => {
    if (part?.id === undefined) return
    if (byId.has(part.id)) report([index, 'id'], `is also the id of another ${what} in this list; give each its own`)
    else byId.set(part.id, part)
  })
  return { what, byId, isComplete: list.every((part) => part?.id !== undefined) }
}

const MOST = { hdd65: 20_000, cdd65: 8000 } as const

/** Twelve months together keep the limits of a year. */
function climateRules(household: Loose<Household>, report: Report): void {
  if (household.climate?.kind !== 'monthly') return
  for (const key of ['hdd65', 'cdd65'] as const) {
    const months = household.climate[key]
    if (!Array.isArray(months)) continue
    const sum = months.reduce<number>((total, month) => total + (month ?? 0), 0)
    if (sum > MOST[key])
      report(['climate', key], `must come to ${MOST[key]} at most in a year, but its months come to ${sum}`)
  }
}
