import type { Day } from '@/lib/core/day'
import type { DustStart, Household } from '@/lib/core/household'
import { ask, Prisma, together } from './connection'
import { readInParts, type StoredHousehold } from './households'

/** Households with the start that each system gets from the others: `pooledHomes` of lib/core, with its tables and day. */
export type Learn = (homes: readonly Household[]) => Household[]

/** Whether the homes that an account owns learn from each other, and the day (UTC) on which they last did. */
export async function findPooling(accountId: string): Promise<{ pools: boolean; on: Day | null }> {
  const user = await ask((db) =>
    db.user.findUnique({ where: { id: accountId }, select: { poolsDust: true, pooledOn: true } }),
  )
  return { pools: user?.poolsDust ?? false, on: user?.pooledOn ?? null }
}

/** Lets the homes that an account owns learn from each other from now on; `poolDust` does it. */
export async function startPooling(accountId: string): Promise<void> {
  await ask((db) => db.user.updateMany({ where: { id: accountId }, data: { poolsDust: true, pooledOn: null } }))
}

/** Ends it: every system of theirs starts from the world again. Gives how many homes that changed. */
export function endPooling(accountId: string): Promise<number> {
  return together(async (tx) => {
    await tx.$executeRaw`UPDATE "User" SET "poolsDust" = ${false}, "pooledOn" = NULL WHERE "id" = ${accountId}`
    const told = Prisma.sql`"ownerId" = ${accountId} AND "id" IN
      (SELECT s."householdId" FROM "System" s WHERE s."dustMedian" IS NOT NULL)`
    const homes = await tx.$executeRaw`UPDATE "Household" SET "revision" = "revision" + 1 WHERE ${told}`
    await tx.$executeRaw`UPDATE "System" SET "dustMedian" = NULL, "dustSpread" = NULL, "dustSystems" = NULL
      WHERE "dustMedian" IS NOT NULL
        AND "householdId" IN (SELECT h."id" FROM "Household" h WHERE h."ownerId" = ${accountId})`
    return homes
  })
}

/**
 * Accounts whose homes are to learn from each other and have not on this day (UTC). One that last did on a day still to
 * come was told so by a clock that was wrong, and is due too.
 */
export async function listPoolsDue(on: Day): Promise<string[]> {
  const users = await ask((db) =>
    db.user.findMany({
      where: { poolsDust: true, OR: [{ pooledOn: null }, { pooledOn: { not: on } }] },
      select: { id: true },
      orderBy: { id: 'asc' },
    }),
  )
  return users.map(({ id }) => id)
}

interface Told {
  householdId: string
  system: string
  start: DustStart | undefined
}

/**
 * Gives every system that an account owns its start from the others, once a day: of several processes one does it.
 * Only what moved is written, for it raises the home's revision. Gives how many homes changed.
 */
export async function poolDust(accountId: string, on: Day, learn: Learn): Promise<number> {
  const owned = await ask((db) =>
    db.household.findMany({ where: { ownerId: accountId, state: 'open' }, select: { id: true } }),
  )
  // Read before the transaction: that of a large portfolio would make every other writer wait. What is written to a
  // home meanwhile counts tomorrow.
  const ids = owned.map(({ id }) => id)
  const homes: StoredHousehold[] = []
  for await (const part of readInParts({ kind: 'system' }, ids)) homes.push(...part)
  const told = changedStarts(homes, learn(homes.map(({ household }) => household)))
  return together(async (tx) => {
    const taken = await tx.$executeRaw`UPDATE "User" SET "pooledOn" = ${on}
      WHERE "id" = ${accountId} AND "poolsDust" = ${true} AND ("pooledOn" IS NULL OR "pooledOn" <> ${on})`
    if (taken === 0) return 0
    const changed = [...new Set(told.map(({ householdId }) => householdId))]
    for (const some of parts(changed)) {
      await tx.$executeRaw`UPDATE "Household" SET "revision" = "revision" + 1 WHERE "id" IN (${Prisma.join(some)})`
    }
    for (const some of parts(told)) {
      const rows = some.map(
        ({ householdId, system, start }) => Prisma.sql`(${householdId}, ${system},
          CAST(${start?.median ?? null} AS DOUBLE PRECISION), CAST(${start?.spread ?? null} AS DOUBLE PRECISION),
          CAST(${start?.systems ?? null} AS INTEGER))`,
      )
      // Both databases name the columns of VALUES so.
      await tx.$executeRaw`UPDATE "System"
        SET "dustMedian" = v.column3, "dustSpread" = v.column4, "dustSystems" = v.column5
        FROM (VALUES ${Prisma.join(rows)}) AS v
        WHERE "System"."householdId" = v.column1 AND "System"."id" = v.column2`
    }
    return changed.length
  })
}

// Less than a hundredth moves no day, and would have every plan made again each night.
const LEAST_MOVE = 0.01

function changedStarts(homes: readonly StoredHousehold[], learnt: readonly Household[]): Told[] {
  return homes.flatMap(({ id, household }, i) =>
    household.systems.flatMap((system): Told[] => {
      const start = learnt[i]?.systems.find((other) => other.id === system.id)?.dustStart
      return isMoved(system.dustStart, start) ? [{ householdId: id, system: system.id, start }] : []
    }),
  )
}

function isMoved(before: DustStart | undefined, after: DustStart | undefined): boolean {
  if (!before || !after) return before !== after
  return (
    Math.abs(Math.log(after.median / before.median)) > LEAST_MOVE || Math.abs(after.spread - before.spread) > LEAST_MOVE
  )
}

// SQLite takes 32,766 values a statement; a row has five.
const ROWS_A_STATEMENT = 5000

function parts<T>(list: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(list.length / ROWS_A_STATEMENT) }, (_, i) =>
    list.slice(i * ROWS_A_STATEMENT, (i + 1) * ROWS_A_STATEMENT),
  )
}
