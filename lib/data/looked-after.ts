import type { Act, Role, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import type { Refusal } from './scope'

/** Somebody who has a part in homes that the viewer owns. */
export interface LooksAfter {
  accountId: string
  name: string
  email: string
  role: Role
  /** In how many of them. */
  homes: number
  /** The building that all of them stand in, null for several or none. */
  building: string | null
}

/** Everybody else who has a part in homes that the viewer owns, by name; empty for whoever owns none. */
export function listLookingAfter(viewer: Viewer): Promise<LooksAfter[]> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return []
    // Counted by the database: ten thousand homes with two people each are not read for two lines.
    const rows = await db.$queryRaw<
      (Omit<LooksAfter, 'homes'> & { homes: number | bigint; buildings: number | bigint })[]
    >`
      SELECT u."id" AS "accountId", u."name", u."email", m."role", COUNT(*) AS "homes",
        COUNT(DISTINCT COALESCE(h."building", '')) AS "buildings", MIN(h."building") AS "building"
      FROM "Membership" m JOIN "Household" h ON h."id" = m."householdId" JOIN "User" u ON u."id" = m."accountId"
      WHERE h."ownerId" = ${viewer.accountId} AND m."accountId" <> ${viewer.accountId}
      GROUP BY u."id", u."name", u."email", m."role" ORDER BY u."name", u."id", m."role"`
    return rows.map(({ homes, buildings, building, ...who }) => ({
      ...who,
      homes: Number(homes),
      building: Number(buildings) === 1 ? building : null,
    }))
  })
}

/** Ends an account's part in every home that the one who acts owns. */
export function removeEverywhere(act: Act, accountId: string): Promise<{ ok: true; homes: number } | Refusal> {
  return together(async (tx) => {
    if (act.viewer.kind !== 'account' || act.viewer.accountId === accountId)
      return { ok: false, because: 'not-allowed' }
    const owner = act.viewer.accountId
    await tx.$executeRaw`UPDATE "Household" SET "revision" = "revision" + 1 WHERE "ownerId" = ${owner} AND "id" IN
      (SELECT m."householdId" FROM "Membership" m WHERE m."accountId" = ${accountId})`
    const homes = await tx.$executeRaw`DELETE FROM "Membership" WHERE "accountId" = ${accountId} AND "householdId" IN
      (SELECT h."id" FROM "Household" h WHERE h."ownerId" = ${owner})`
    return homes === 0 ? { ok: false, because: 'not-found' } : { ok: true, homes }
  })
}
