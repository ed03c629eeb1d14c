import type { Day } from './day'
import { sizeInWords } from './filter-words'
import type { Assumed, Delivery, Household, LogRecord, System } from './household'
import { mergeFilters } from './unit-filters'
import type { SheetFilter, SheetUnit } from './unit-sheet'

/** What a new unit takes from where it stands. */
export type UnitPlace = Pick<Household, 'timeZone' | 'units' | 'climate'> &
  Partial<Pick<Household, 'elevationFt' | 'emergencyNumber'>>

/** A unit with what its row says laid over it. */
export interface MergedUnit {
  household: Household
  /** What was done that the log does not have yet; it is not in the household. */
  records: LogRecord[]
  /** What changes, in words; empty where the row says what stands already. */
  changes: string[]
  /** What in the row does not go with the rest. */
  clashes: string[]
}

/** Says that something is now this instead of that. */
export type Note = (what: string, was: string | number | undefined, is: string | number) => void

/** Marks as told what the row tells, and gives what was told before: nothing where that was only assumed. */
export type Tell = <T>(one: Assumed, was: T) => T | undefined

// The reference home of the model has two people and no pets.
const USUAL_PEOPLE = 2

/**
 * A home that stands nowhere yet, from its row. What the row does not say is taken as the cautious case and named as
 * assumed: a burner rather than none, somebody at risk, hard water.
 */
export function newUnit(row: SheetUnit, { id, on, place }: { id: string; on: Day; place: UnitPlace }): MergedUnit {
  const system = newSystem(row)
  const assumed: Assumed[] = [
    { code: 'hard-water', subject: '' },
    { code: 'vulnerable', subject: '' },
    ...guessesOf(system),
  ]
  const bare: Household = {
    ...{ id, name: row.unit, building: row.building, tenure: 'let', since: on },
    ...place,
    ...{ people: USUAL_PEOPLE, pets: 0, smoking: false, carpet: false, hardWater: true, vulnerable: true, assumed },
    ...{ dustEvents: [], systems: [system], filters: [], devices: [], records: [], readings: [] },
  }
  return mergeUnit(bare, row)
}

/** The system of a unit of which nothing is known but the row: only what the row leaves open is filled in. */
function newSystem({ heat, cool, filters }: SheetUnit): System {
  const delivery = deliveryOf({ heat, cool, filters })
  const pumps = delivery === 'ductless' || heat === 'heat-pump' || heat === 'dual-fuel'
  const cools = cool === undefined && (pumps || delivery === 'ducted')
  return {
    ...{ id: 'main', name: 'Main system', delivery },
    ...(heat === undefined && { heat: { source: delivery === 'ductless' ? 'heat-pump' : 'gas-furnace' } }),
    ...(cools && { cool: { source: pumps ? 'heat-pump' : 'central-ac' } }),
  }
}

/** What of a system made from its row is a guess. A ductless one is a heat pump, without asking. */
function guessesOf({ id, delivery, heat, cool }: System): Assumed[] {
  if (delivery === 'ductless') return []
  return [
    ...(heat ? [{ code: 'heat-source', subject: id } as const] : []),
    ...(cool ? [{ code: 'cool-source', subject: id } as const] : []),
  ]
}

function deliveryOf({ heat, cool, filters }: Pick<SheetUnit, 'filters'> & { heat: unknown; cool: unknown }): Delivery {
  if (filters.some(({ place }) => place === 'ductless-head')) return 'ductless'
  if (filters.some(saysAnything) || (cool !== undefined && cool !== 'none')) return 'ducted'
  if (typeof heat === 'string' && heat.endsWith('boiler')) return 'hydronic'
  return heat === 'wall-furnace' || heat === 'electric-baseboard' ? 'room' : 'ducted'
}

function saysAnything(filter: SheetFilter): boolean {
  return Object.keys(filter).length > 0
}

/** A home with what its row says laid over it. An empty cell changes nothing, and nothing is ever taken out. */
export function mergeUnit(before: Household, row: SheetUnit): MergedUnit {
  const changes: string[] = []
  const clashes: string[] = []
  const known: Assumed[] = []
  const tell: Tell = (one, was) => {
    known.push(one)
    return before.assumed?.some((other) => isSame(one, other)) ? undefined : was
  }
  const note: Note = (what, was, is) => {
    if (was !== is) changes.push(`${what} ${is}${was === undefined ? '' : ` instead of ${was}`}`)
  }
  const home = { ...before }
  for (const key of ['people', 'pets'] as const) {
    const value = row[key]
    if (value === undefined) continue
    note(key, before[key], value)
    home[key] = value
  }
  const [first, ...others] = before.systems
  if (!first && !asksForSystem(row)) return { household: home, records: [], changes, clashes }
  const system = mergeSystem(first ?? newSystem(row), row, { note, tell, clashes })
  const merged = mergeFilters(before.filters, row.filters, { system, note, tell, clashes })
  home.systems = [system, ...others]
  home.filters = merged.filters
  const guessed = [...(before.assumed ?? []), ...(first ? [] : guessesOf(system))]
  const assumed = [...guessed.filter((one) => !known.some((now) => isSame(now, one))), ...merged.assumed]
  if (assumed.length > 0) home.assumed = assumed
  else delete home.assumed
  const records = recordsOf(row, system, merged.ids).filter((record) => !stands(before.records, record))
  for (const record of records)
    changes.push(`${record.kind === 'service-done' ? record.task.replaceAll('-', ' ') : 'filter changed'} ${record.on}`)
  return { household: home, records, changes, clashes }
}

/** Whether a row says anything that only a system can have. */
function asksForSystem({ heat, cool, tons, inputBtuh, heatingServiced, coolingServiced, filters }: SheetUnit): boolean {
  const told = [heat, cool, tons, inputBtuh, heatingServiced, coolingServiced]
  return told.some((one) => one !== undefined) || filters.some(saysAnything)
}

function isSame(a: Assumed, b: Assumed): boolean {
  return a.code === b.code && a.subject === b.subject
}

export interface Merging {
  note: Note
  tell: Tell
  clashes: string[]
}

function mergeSystem(system: System, row: SheetUnit, { note, tell, clashes }: Merging): System {
  const next = { ...system }
  if (row.heat !== undefined) {
    const was = tell({ code: 'heat-source', subject: system.id }, system.heat?.source ?? 'none')
    note('heating', was, row.heat)
    // What another burner is rated for says nothing about this one.
    if (row.heat === 'none') delete next.heat
    else if (system.heat?.source !== row.heat) next.heat = { source: row.heat }
  }
  if (row.cool !== undefined) {
    const was = tell({ code: 'cool-source', subject: system.id }, system.cool?.source ?? 'none')
    note('cooling', was, row.cool)
    if (row.cool === 'none') delete next.cool
    else if (system.cool?.source !== row.cool) next.cool = { source: row.cool }
  }
  if (row.tons !== undefined) {
    if (!next.cool) clashes.push('has tons of cooling but no cooling: empty one, or say what cools')
    else {
      note('tons of cooling', next.cool.tons, row.tons)
      next.cool = { ...next.cool, tons: row.tons }
    }
  }
  if (row.inputBtuh !== undefined) {
    if (!next.heat) clashes.push('has a burner input but no heating: empty one, or say what heats')
    else {
      note('burner input', next.heat.inputBtuh, row.inputBtuh)
      next.heat = { ...next.heat, inputBtuh: row.inputBtuh }
    }
  }
  return next
}

function recordsOf(row: SheetUnit, system: System, filterIds: readonly (string | undefined)[]): LogRecord[] {
  const records: LogRecord[] = []
  const heating = system.heat?.source.endsWith('boiler') ? 'boiler-service' : 'heating-service'
  for (const [on, task] of [
    [row.heatingServiced, heating],
    [row.coolingServiced, 'cooling-service'],
  ] as const)
    if (on !== undefined) records.push({ on, kind: 'service-done', task, subject: system.id })
  for (const [i, { changed }] of row.filters.entries()) {
    const filter = filterIds[i]
    if (changed !== undefined && filter !== undefined) records.push({ on: changed, kind: 'filter-changed', filter })
  }
  return records
}

/** Whether the log has it; a boiler that was a furnace then was serviced as one. */
function stands(records: readonly LogRecord[], wanted: LogRecord): boolean {
  const subjectOf = (record: LogRecord) => (record.kind === 'service-done' ? record.subject : record.filter)
  const what = (record: LogRecord) =>
    record.kind === 'service-done' ? record.task.replace('boiler', 'heating') : record.kind
  return records.some(
    (record) => record.on === wanted.on && what(record) === what(wanted) && subjectOf(record) === subjectOf(wanted),
  )
}

/** What a preview says of a new unit: its filters, or that it has none. */
export function newUnitInWords({ filters }: Household): string {
  return filters.length === 0
    ? 'new, without filters'
    : `new, ${filters.map((one) => sizeInWords(one.nominal)).join(' and ')}`
}
