import type { Day } from '@/lib/core/day'
import type { Task } from '@/lib/core/household'
import type * as Rows from '@/prisma/generated/sqlite/client'
import { Prisma, type Questions } from './connection'
import type { DatabaseKind } from './place'

interface PutOffRow {
  householdId: string
  task: Task
  subject: string
  until: Day
  byName: string
}

/** What belongs to households, table by table, each in its order. */
export interface HouseholdLists {
  DustEvent: Rows.DustEvent[]
  WeatherSpell: Rows.WeatherSpell[]
  System: Rows.System[]
  Filter: Rows.Filter[]
  Device: Rows.Device[]
  Entry: Rows.Entry[]
  Reading: Rows.Reading[]
  Contact: (Rows.Contact & { kind: 'technician' | 'landlord' | 'gas-company' | 'other' })[]
  PutOff: PutOffRow[]
}

type Table = keyof HouseholdLists

/** Which rows stand, and in which order. */
const TABLES: Record<Table, { standing?: string; order: string }> = {
  DustEvent: { order: 't."position"' },
  WeatherSpell: { order: 't."position"' },
  System: { order: 't."position"' },
  Filter: { order: 't."position"' },
  Device: { order: 't."position"' },
  // The ids make it one order in both kinds of database, whatever rows came to have one place.
  Entry: { standing: 't."undoneAt" IS NULL AND t."correctedBy" IS NULL', order: 't."position", t."id"' },
  Reading: { standing: 't."removedBy" IS NULL', order: 't."position"' },
  Contact: { order: 't."position"' },
  PutOff: { order: 't."until", t."task", t."subject"' },
}

const NAMES = Object.keys(TABLES) as Table[]

/** The rows of all these tables. `households` is the list of ids, or a statement that gives them. */
export async function readLists(tx: Questions, households: Prisma.Sql): Promise<HouseholdLists> {
  const lists: Record<string, unknown[]> = {}
  for (const table of NAMES) {
    lists[table] = await tx.$queryRaw<unknown[]>`SELECT t.* FROM ${from(table, households)}
      ORDER BY ${Prisma.raw(TABLES[table].order)}`
  }
  return lists as unknown as HouseholdLists
}

/**
 * The same for few households. Over a network every statement is a way there and back, which costs more than the few
 * rows: PostgreSQL is asked once for all of them.
 */
export async function readFewLists(tx: Questions, ids: readonly string[], kind: DatabaseKind): Promise<HouseholdLists> {
  const households = Prisma.join(ids)
  if (kind !== 'postgresql') return readLists(tx, households)
  const columns = NAMES.map((table) => {
    const order = Prisma.raw(TABLES[table].order)
    const rows = Prisma.sql`SELECT coalesce(json_agg(t ORDER BY ${order}), '[]') FROM ${from(table, households)}`
    return Prisma.sql`(${rows}) AS ${Prisma.raw(`"${table}"`)}`
  })
  const [lists] = await tx.$queryRaw<[HouseholdLists]>`SELECT ${Prisma.join(columns)}`
  return lists
}

/** A table's standing rows of these households. Table and column names are our own words. */
function from(table: Table, households: Prisma.Sql): Prisma.Sql {
  const { standing } = TABLES[table]
  const stands = Prisma.raw(standing === undefined ? '' : `AND ${standing}`)
  return Prisma.sql`${Prisma.raw(`"${table}"`)} t WHERE t."householdId" IN (${households}) ${stands}`
}
