import { DESCRIBE_TABLES } from '@/app/describe/tables'
import { today } from '@/lib/clock'
import { mergeUnit, newUnit, newUnitInWords, type UnitPlace } from '@/lib/core/unit-merge'
import type { SheetUnit } from '@/lib/core/unit-sheet'
import type { Viewer } from '@/lib/core/viewer'
import { type Home, listHomes, readInParts, type StoredHousehold } from '@/lib/data/households'
import type { ChangedUnit, FreshUnit } from '@/lib/data/save-units'
import { freshId } from '@/lib/forms/describe/answers'
import { householdRules } from '@/lib/forms/rules/household-rules'
import { type Matching, matchingFaults } from '@/lib/forms/unit-columns'
import { unitPlace } from '@/lib/forms/unit-place'
import { readUnitRow, slashOrder } from '@/lib/forms/unit-row'
import type { SheetTable } from '@/lib/forms/units-table'
import { type Findings, KnownUnits } from './known-units'

/** What a sheet comes to: what is new, what changes, what stands already, and everything that is wrong. */
export interface Prepared {
  fresh: FreshUnit[]
  changed: ChangedUnit[]
  same: number
  /** One line a unit that is new or changes, in the order of the file. */
  lines: { line: number; building: string; unit: string; says: string }[]
  /** By what is wrong: the lines where it is. */
  faults: Findings
  /** Some unit is new in a building of which nothing is known: its climate has to be told. */
  needsPlace: boolean
}

const A_BREATH = 200

/** Lets whoever else waits for this process have their turn. */
function breath(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve))
}

/** Reads every row of a sheet against the homes that stand. Writes nothing. */
export async function prepareUnits(
  viewer: Viewer,
  { headings, rows }: SheetTable,
  { matching, place, timeZone }: { matching: Matching; place: string; timeZone: string },
): Promise<Prepared> {
  const prepared: Prepared = { fresh: [], changed: [], same: 0, lines: [], faults: new Map(), needsPlace: false }
  const { faults } = prepared
  const fault = (say: string, line: number) => {
    const lines = faults.get(say)
    if (lines) lines.push(line)
    else faults.set(say, [line])
  }
  for (const say of matchingFaults(matching, headings)) faults.set(say, [])
  if (faults.size > 0) return prepared

  const homes = await listHomes(viewer)
  const known = new KnownUnits(homes)
  // The days of a file are those of one landlord: the earliest day of all zones refuses nothing wrongly for long.
  const on = today(homes[0]?.timeZone ?? 'America/New_York')
  const days = matching.flatMap((column, i) => (/chang|servic/i.test(column) ? [i] : []))
  const order = slashOrder(rows.flatMap(({ cells }) => days.map((i) => cells[i] ?? '')))
  const found: { line: number; row: SheetUnit; home: Home | null }[] = []
  for (const [i, { line, cells }] of rows.entries()) {
    if (i % A_BREATH === 0) await breath()
    const { unit: row, faults: wrong } = readUnitRow(cells, matching, { today: on, order })
    for (const say of wrong) fault(say, line)
    if (!row) continue
    const place = known.find(row, line)
    if (typeof place === 'string') fault(place, line)
    else found.push({ line, row, home: place.home })
  }
  const stored = await readById(viewer, [
    ...found.flatMap(({ home }) => home?.id ?? []),
    ...known.neighbours(found.flatMap(({ row, home }) => (home ? [] : row.building))),
  ])
  const told = unitPlace({ place, timeZone }, DESCRIBE_TABLES)
  const ids = new Set<string>()
  for (const [i, { line, row, home }] of found.entries()) {
    if (i % A_BREATH === 0) await breath()
    const before = home && stored.get(home.id)
    if (home && !before) fault('This home was taken from you while the file was read. Read it again.', line)
    else if (before) merge(prepared, before, { row, line, fault })
    else {
      const neighbour = stored.get(known.neighbours([row.building])[0] ?? '')
      const where = neighbour ? placeOf(neighbour) : told
      if (!where) prepared.needsPlace = true
      const id = freeOf(`${row.building} ${row.unit}`, ids)
      const unit = newUnit(row, { id, on, place: where ?? SOMEWHERE })
      for (const say of [...unit.clashes, ...rulesOf(unit.household)]) fault(`The row ${say}.`, line)
      const household = { ...unit.household, records: unit.records }
      prepared.fresh.push({ household, accessNote: row.accessNote ?? null })
      prepared.lines.push({ line, building: row.building, unit: row.unit, says: newUnitInWords(household) })
    }
  }
  return prepared
}

// Stands for a place that is still to be told, so that the rest of the row is checked all the same.
const SOMEWHERE: UnitPlace = {
  timeZone: 'America/Chicago',
  units: 'us',
  climate: { kind: 'annual', hdd65: 4500, cdd65: 1200, heatingDesignF: 15, coolingDesignF: 91 },
}

function placeOf({ household }: StoredHousehold): UnitPlace {
  const { timeZone, units, climate, elevationFt, emergencyNumber } = household
  return {
    ...{ timeZone, units, climate },
    ...(elevationFt !== undefined && { elevationFt }),
    ...(emergencyNumber !== undefined && { emergencyNumber }),
  }
}

function merge(
  prepared: Prepared,
  { id, revision, household: before, accessNote }: StoredHousehold,
  { row, line, fault }: { row: SheetUnit; line: number; fault: (say: string, line: number) => void },
): void {
  const { household, records, changes, clashes } = mergeUnit(before, row)
  const plain = (accessNote ?? '').replaceAll(/\s+/g, ' ').trim()
  const note = row.accessNote !== undefined && row.accessNote !== plain ? row.accessNote : accessNote
  if (note !== accessNote) changes.push('access note')
  if (changes.length > 0 || clashes.length > 0)
    for (const say of [...clashes, ...rulesOf({ ...household, records: [...household.records, ...records] })])
      fault(`The row ${say}.`, line)
  if (changes.length === 0) {
    prepared.same++
    return
  }
  prepared.changed.push({ id, revision, household, records, accessNote: note })
  prepared.lines.push({ line, building: row.building, unit: row.unit, says: changes.join(', ') })
}

/** What does not go together in a home, in words that name the part. */
function rulesOf(household: FreshUnit['household']): string[] {
  return householdRules([household], today).map(({ path, say }) => {
    const filter = /filters\[(\d+)\]/.exec(path)?.[1]
    return `makes ${filter === undefined ? 'a home' : `a filter ${Number(filter) + 1}`} that cannot be: it ${say}`
  })
}

function freeOf(name: string, taken: Set<string>): string {
  const base = freshId(name, [], 'unit')
  let id = base
  for (let number = 2; taken.has(id); number++) id = `${base}-${number}`
  taken.add(id)
  return id
}

async function readById(viewer: Viewer, ids: readonly string[]): Promise<Map<string, StoredHousehold>> {
  const stored = new Map<string, StoredHousehold>()
  for await (const part of readInParts(viewer, [...new Set(ids)])) for (const home of part) stored.set(home.id, home)
  return stored
}
