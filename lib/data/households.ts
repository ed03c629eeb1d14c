import type { Day } from '@/lib/core/day'
import type { Household, Task } from '@/lib/core/household'
import type { Standing, Viewer } from '@/lib/core/viewer'
import type * as Rows from '@/prisma/generated/sqlite/client'
import { ask, Prisma, type Questions, together } from './connection'
import { readFewLists, readLists } from './household-lists'
import * as values from './household-values'
import { databaseKind } from './place'
import { recordValue } from './record-rows'
import { roleOf, within } from './scope'

/** What a page of all homes needs to know before any plan: nothing but the household's own row. */
export interface Home {
  /** Ours, for addresses; the file's own id is `household.id`. */
  id: string
  name: string
  building: string | null
  timeZone: string
  /** Raised by every write. */
  revision: number
  state: 'open' | 'closed'
  /** The viewer's role in it. */
  role: Standing
}

export interface Contact {
  id: string
  kind: 'technician' | 'landlord' | 'gas-company' | 'other'
  name: string | null
  phone: string | null
  email: string | null
  note: string | null
}

/** An item that somebody does not want to hear of until a day. */
export interface PutOff {
  task: Task
  subject: string
  until: Day
  byName: string
}

/** A household as kept here: what the file states, and what belongs to it without standing in the file. */
export interface StoredHousehold extends Home {
  household: Household
  closedOn: Day | null
  accessNote: string | null
  /** By filter id: where it is, in a person's own words. */
  placeNotes: Record<string, string>
  contacts: Contact[]
  putOffs: PutOff[]
}

/** Thrown by `getHousehold`: there is none, or it is someone else's. */
export class HouseholdNotFound extends Error {
  override name = 'HouseholdNotFound'
}

const SEEN = Prisma.sql`h."id"`

/** All homes that the viewer may see, by building and name, without what stands in them. */
export function listHomes(viewer: Viewer): Promise<Home[]> {
  return ask(
    (db) => db.$queryRaw<Home[]>`
      SELECT h."id", h."name", h."building", h."timeZone", h."revision", h."state", ${roleOf(viewer)} AS "role"
      FROM "Household" h WHERE ${within(viewer, 'see', SEEN)} ORDER BY h."building" NULLS FIRST, h."name", h."id"`,
  )
}

/** All households that the viewer may see, or those of the given ids among them, in the order they were brought. */
export function listHouseholds(viewer: Viewer, ids?: string[]): Promise<StoredHousehold[]> {
  return together((tx) => readHouseholds(tx, viewer, ids))
}

// Few enough to be read by their ids, and to be read, planned and told in some tenths of a second.
const FEW = 200

/**
 * Those of the given ids that the viewer may see, some hundred at a time. Between two parts whoever else asks has their
 * turn: someone without heat must not wait for the plans of a thousand homes.
 */
export async function* readInParts(viewer: Viewer, ids: readonly string[]): AsyncGenerator<StoredHousehold[]> {
  for (let start = 0; start < ids.length; start += FEW) {
    if (start > 0) await new Promise(setImmediate)
    yield await listHouseholds(viewer, ids.slice(start, start + FEW))
  }
}

/** One household, or null: one that does not exist and someone else's look alike. */
export async function findHousehold(viewer: Viewer, id: string): Promise<StoredHousehold | null> {
  const [found] = await listHouseholds(viewer, [id])
  return found ?? null
}

/** One household. Throws `HouseholdNotFound`. */
export async function getHousehold(viewer: Viewer, id: string): Promise<StoredHousehold> {
  const found = await findHousehold(viewer, id)
  if (!found) throw new HouseholdNotFound()
  return found
}

/** Households as the file states them. Where two of different owners have one id, the later gets a number behind it. */
export async function exportHouseholds(viewer: Viewer, ids?: string[]): Promise<Household[]> {
  const taken = new Set<string>()
  return (await listHouseholds(viewer, ids)).map(({ household }) => {
    const id = freeId(household.id, taken)
    taken.add(id)
    return { ...household, id }
  })
}

/** `freeId('hall', taken)` is `hall`, or `hall-2` where that is taken, and so on. */
export function freeId(id: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number++) {
    const candidate = number === 1 ? id : `${id}-${number}`
    if (!taken.has(candidate)) return candidate
  }
}

// SQLite takes 32,766 values a statement, PostgreSQL somewhat more.
const IDS_A_STATEMENT = 20_000

/**
 * The same inside a transaction, where all tables are read at one moment. `kind` is that of the database asked, which
 * is another than the program's own where two are compared.
 */
export async function readHouseholds(
  tx: Questions,
  viewer: Viewer,
  ids?: string[],
  kind = databaseKind(),
): Promise<StoredHousehold[]> {
  if (ids && ids.length > IDS_A_STATEMENT) {
    const first = await readHouseholds(tx, viewer, ids.slice(0, IDS_A_STATEMENT), kind)
    return [...first, ...(await readHouseholds(tx, viewer, ids.slice(IDS_A_STATEMENT), kind))]
  }
  if (ids?.length === 0) return []
  const among = ids ? Prisma.sql`h."id" IN (${Prisma.join(ids)})` : Prisma.sql`1 = 1`
  const wanted = Prisma.sql`${among} AND ${within(viewer, 'see', SEEN)}`
  const households = await tx.$queryRaw<(Rows.Household & Home)[]>`
    SELECT h.*, ${roleOf(viewer)} AS "role" FROM "Household" h WHERE ${wanted} ORDER BY h."ownerId", h."position"`
  if (households.length === 0) return []
  // Of few homes their ids: who may see them is settled at this moment, and asking it again costs more than the rows.
  const rows =
    households.length <= FEW
      ? await readFewLists(
          tx,
          households.map(({ id }) => id),
          kind,
        )
      : await readLists(tx, Prisma.sql`SELECT h."id" FROM "Household" h WHERE ${wanted}`)
  const dustEvents = byHousehold(rows.DustEvent)
  const spells = byHousehold(rows.WeatherSpell)
  const systems = byHousehold(rows.System)
  const filters = byHousehold(rows.Filter)
  const devices = byHousehold(rows.Device)
  const entries = byHousehold(rows.Entry)
  const readings = byHousehold(rows.Reading)
  const contacts = byHousehold(rows.Contact)
  const putOffs = byHousehold(rows.PutOff)

  // Where it is, whom to call, and how to get in, are not shown by a renter's link: it may be passed on.
  const isLink = viewer.kind === 'link'
  return households.map((stored) => {
    const row = isLink ? { ...stored, building: null } : stored
    const { id, name, building, timeZone, revision, state, role, closedOn } = row
    const accessNote = isLink ? null : row.accessNote
    return {
      ...{ id, name, building, timeZone, revision, state, role, closedOn, accessNote },
      household: values.householdValue(row, {
        dustEvents: dustEvents(id).map(values.dustEventValue),
        weather: spells(id).map(values.weatherSpellValue),
        systems: systems(id).map(values.systemValue),
        filters: filters(id).map(values.filterValue),
        devices: devices(id).map(values.deviceValue),
        records: entries(id).map(recordValue),
        readings: readings(id).map(values.readingValue),
      }),
      placeNotes: Object.fromEntries(
        filters(id).flatMap((filter) => (filter.placeNote === null ? [] : [[filter.id, filter.placeNote]])),
      ),
      contacts: (isLink ? [] : contacts(id)).map(({ id, kind, name, phone, email, note }) => ({
        id,
        kind,
        name,
        phone,
        email,
        note,
      })),
      putOffs: putOffs(id).map(({ task, subject, until, byName }) => ({ task, subject, until, byName })),
    }
  })
}

function byHousehold<R extends { householdId: string }>(rows: R[]): (id: string) => R[] {
  const lists = new Map<string, R[]>()
  for (const row of rows) {
    const list = lists.get(row.householdId)
    if (list) list.push(row)
    else lists.set(row.householdId, [row])
  }
  return (id) => lists.get(id) ?? []
}
