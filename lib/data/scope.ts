import type { Day } from '@/lib/core/day'
import { type Deed, may, rolesThatMay, type Standing, type Viewer } from '@/lib/core/viewer'
import { Prisma, type Questions } from './connection'

/** The condition that a column of household ids must meet for this viewer to do this. */
export function within(viewer: Viewer, deed: Deed, column: Prisma.Sql): Prisma.Sql {
  if (viewer.kind === 'system') return Prisma.sql`1 = 1`
  if (viewer.kind === 'sample') return Prisma.sql`1 = 0`
  // Asked of the link's own row each time: one that was revoked a moment ago opens nothing any more.
  if (viewer.kind === 'link') {
    if (!may('renter', deed)) return Prisma.sql`1 = 0`
    return Prisma.sql`${column} IN (SELECT l."householdId" FROM "RenterLink" l
      WHERE l."id" = ${viewer.linkId} AND l."revokedAt" IS NULL)`
  }
  return Prisma.sql`${column} IN (SELECT m."householdId" FROM "Membership" m
    WHERE m."accountId" = ${viewer.accountId} AND m."role" IN (${Prisma.join(rolesThatMay(deed))}))`
}

/** The role of a viewer in a household, or null: someone else's, and one that does not exist, look alike. */
export async function findRole(tx: Questions, viewer: Viewer, householdId: string): Promise<Standing | null> {
  const rows = await tx.$queryRaw<{ role: Standing }[]>`SELECT ${roleOf(viewer)} AS "role" FROM "Household" h
    WHERE h."id" = ${householdId} AND ${within(viewer, 'see', Prisma.sql`h."id"`)}`
  return rows[0]?.role ?? null
}

/** The viewer's role in `h`, as an expression. Whoever hosts it stands in for the owner. */
export function roleOf(viewer: Viewer): Prisma.Sql {
  if (viewer.kind === 'link') return Prisma.sql`'renter'`
  if (viewer.kind !== 'account') return Prisma.sql`'owner'`
  return Prisma.sql`(SELECT m."role" FROM "Membership" m
    WHERE m."householdId" = h."id" AND m."accountId" = ${viewer.accountId})`
}

/** Why a write was not done. `changed`: someone else changed the same thing meanwhile. */
export type Refusal = { ok: false; because: 'not-found' | 'not-allowed' | 'closed' }

export interface Raised {
  ok: true
  revision: number
  profileAt: number
  ownerId: string
  closedOn: Day | null
}

/**
 * Raises the revision of a household that the viewer may write to. First in every write: it is the check of who asks,
 * the reason why no plan outlives a change, and where writers wait for each other, in one statement.
 */
export async function raise(
  tx: Questions,
  viewer: Viewer,
  householdId: string,
  { deed, evenClosed = false }: { deed: Deed; evenClosed?: boolean },
): Promise<Raised | Refusal> {
  const rows = await tx.$queryRaw<(Omit<Raised, 'ok'> & { state: string })[]>`
    UPDATE "Household" SET "revision" = "revision" + 1
    WHERE "id" = ${householdId} AND ${within(viewer, deed, Prisma.sql`"Household"."id"`)}
      AND ("state" = 'open' OR ${evenClosed ? 1 : 0} = 1)
    RETURNING "revision", "profileAt", "ownerId", "closedOn", "state"`
  const row = rows[0]
  if (row) return { ok: true, ...row }
  const role = await findRole(tx, viewer, householdId)
  if (!role) return { ok: false, because: 'not-found' }
  return { ok: false, because: may(role, deed) ? 'closed' : 'not-allowed' }
}

/**
 * The same for what hangs on an account: other writers of that account wait here. False where there is none. First in
 * every write that raises no household.
 */
export async function holdAccount(tx: Questions, accountId: string): Promise<boolean> {
  return (await tx.$executeRaw`UPDATE "User" SET "name" = "name" WHERE "id" = ${accountId}`) === 1
}

/** Says that the profile changed with the revision just raised. */
export async function markProfile(tx: Questions, householdId: string): Promise<void> {
  await tx.$executeRaw`UPDATE "Household" SET "profileAt" = "revision" WHERE "id" = ${householdId}`
}

/** Who did it, as the log keeps it. */
export function signature(viewer: Viewer): { byAccount: string | null; byName: string } {
  return viewer.kind === 'account'
    ? { byAccount: viewer.accountId, byName: viewer.name }
    : { byAccount: null, byName: viewer.kind === 'link' ? viewer.name : 'whoever hosts this' }
}
