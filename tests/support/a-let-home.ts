import { expect } from 'vitest'
import type { Assumed, Filter, Household, LogRecord, System } from '@/lib/core/household'
import { mergeUnit } from '@/lib/core/unit-merge'
import type { SheetFilter, SheetUnit } from '@/lib/core/unit-sheet'

export const CLIMATE = { kind: 'annual', hdd65: 4500, cdd65: 1200, heatingDesignF: 15, coolingDesignF: 91 } as const

/** A row of a sheet that says nothing but what is given. */
export function row(says: Partial<SheetUnit> = {}): SheetUnit {
  return { building: 'Elm Row', unit: 'Flat 1', filters: [{}, {}, {}, {}], ...says }
}

/** What a sheet with room for four filters says of two. */
export function two(first: SheetFilter, second: SheetFilter = {}): SheetFilter[] {
  return [first, second, {}, {}]
}

export function size(widthIn: number, heightIn: number, depthIn: number) {
  return { widthIn, heightIn, depthIn }
}

export function changedOn(on: string, filter: string): LogRecord {
  return { on, kind: 'filter-changed', filter }
}

export function serviced(on: string, task: 'heating-service' | 'boiler-service' | 'cooling-service'): LogRecord {
  return { on, kind: 'service-done', task, subject: 'main' }
}

export const main: System = {
  id: 'main',
  name: 'Main system',
  delivery: 'ducted',
  heat: { source: 'gas-furnace', inputBtuh: 80_000, efficiency: 0.8 },
  cool: { source: 'central-ac', tons: 3 },
}
export const attic: System = { id: 'attic', name: 'Attic', delivery: 'ductless', heat: { source: 'heat-pump' } }
export const hall: Filter = {
  ...{ id: 'hall', system: 'main', place: 'wall-grille', nominal: size(16, 25, 1), medium: 'pleated', merv: 8 },
}
export const den: Filter = {
  ...{ id: 'den', system: 'main', place: 'ceiling-grille', nominal: size(20, 20, 1), medium: 'fiberglass' },
}
export const home: Household = {
  ...{ id: 'elm-1', name: 'Flat 1', building: 'Elm Row', tenure: 'let', since: '2026-01-01' },
  ...{ timeZone: 'America/Chicago', units: 'us', climate: CLIMATE, people: 3, pets: 1 },
  ...{ smoking: false, carpet: false, hardWater: true, vulnerable: false, dustEvents: [], devices: [], readings: [] },
  systems: [main, attic],
  filters: [hall, den],
  assumed: [
    { code: 'hard-water', subject: '' },
    { code: 'heat-source', subject: 'attic' },
    { code: 'filter-medium', subject: 'den' },
  ],
  records: [
    changedOn('2026-09-20', 'hall'),
    { on: '2026-09-21', kind: 'filter-looked', filter: 'den' },
    serviced('2026-10-01', 'heating-service'),
  ],
}
export const doubtful: Assumed[] = (['heat-source', 'cool-source'] as const).map((code) => ({ code, subject: 'main' }))
/** The home with something else about its main system. */
export function system(change: Partial<System>) {
  return { systems: [{ ...main, ...change }, attic] }
}

/** What a row says, and the whole that comes of it. */
export interface Case {
  says: Partial<SheetUnit>
  /** Beside the home above. */
  of?: Partial<Household>
  becomes?: Partial<Household>
  records?: LogRecord[]
  changes?: string[]
  clashes?: string[]
}

/** A row is laid over a home, and the whole outcome compared. */
export function expectCase({ says, of = {}, becomes = {}, records = [], changes = [], clashes = [] }: Case): void {
  const before = { ...home, ...of }
  const kept = structuredClone(before)
  expect(mergeUnit(before, row(says))).toEqual({ household: { ...before, ...becomes }, records, changes, clashes })
  expect(before, 'what stood is left as it was').toEqual(kept)
}
