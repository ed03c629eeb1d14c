import type { Act, Instant, Role, Standing, Viewer } from '@/lib/core/viewer'
import { ask, type Questions, together } from './connection'
import { freeId } from './households'
import { findRole, holdAccount, type Refusal, raise } from './scope'

export interface Member {
  accountId: string
  name: string
  email: string
  role: Role
  since: Instant
}

/** Everybody who may see a household, the longest-standing first; empty for someone else's. */
export function listMembers(viewer: Viewer, householdId: string): Promise<Member[]> {
  return ask(async (db) => {
    // A renter's link shows nobody's account.
    if (viewer.kind === 'link' || !(await findRole(db, viewer, householdId))) return []
    const rows = await db.membership.findMany({
      where: { householdId },
      include: { account: true },
      orderBy: { since: 'asc' },
    })
    return rows.map(({ accountId, role, since, account }) => {
      return { accountId, name: account.name, email: account.email, role: role as Role, since }
    })
  })
}

/** Who takes over which of an account's own homes when it goes: the other adult who has been there the longest. */
export async function heirsOf(tx: Questions, accountId: string): Promise<Map<string, { id: string; name: string }>> {
  const adults = await tx.membership.findMany({
    where: { role: 'adult', accountId: { not: accountId }, household: { ownerId: accountId } },
    include: { account: { select: { id: true, name: true } } },
    orderBy: [{ since: 'desc' }, { accountId: 'desc' }],
  })
  // Of several in one home the last one written stays: the first who came.
  return new Map(adults.map(({ householdId, account }) => [householdId, account]))
}

/** The names of those heirs by home, for whoever is asked whether the account may go. */
export function listHeirs(viewer: Viewer): Promise<Map<string, string>> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return new Map()
    const heirs = await heirsOf(db, viewer.accountId)
    return new Map([...heirs].map(([householdId, { name }]) => [householdId, name]))
  })
}

/** The viewer's role in a household, or null where it has none: what a page and the wrapper ask first. */
export function findRoleIn(viewer: Viewer, householdId: string): Promise<Standing | null> {
  return ask((db) => findRole(db, viewer, householdId))
}

/** Ends a membership: the owner ends anybody's but the own, everybody the own. */
export function removeMember(act: Act, householdId: string, accountId: string): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    const own = act.viewer.kind === 'account' && act.viewer.accountId === accountId
    const raised = await raise(tx, act.viewer, householdId, { deed: own ? 'see' : 'own', evenClosed: true })
    if (!raised.ok) return raised
    if (accountId === raised.ownerId) return { ok: false, because: 'not-allowed' }
    await tx.membership.deleteMany({ where: { householdId, accountId } })
    return { ok: true }
  })
}

/** Lets an account be a member, and never less than it is already. */
export async function join(
  tx: Questions,
  householdId: string,
  accountId: string,
  role: Role,
  since: Instant,
): Promise<void> {
  await tx.$executeRaw`UPDATE "Household" SET "revision" = "revision" + 1 WHERE "id" = ${householdId}`
  const member = await tx.membership.findUnique({ where: { accountId_householdId: { accountId, householdId } } })
  if (!member) await tx.membership.create({ data: { householdId, accountId, role, since } })
}

/** Makes an account the owner; everybody else's membership ends, except those who `stay`. */
export async function passOn(
  tx: Questions,
  householdId: string,
  accountId: string,
  { since, stay = [] }: { since: Instant; stay?: string[] },
): Promise<void> {
  await holdAccount(tx, accountId)
  const owned = await tx.household.findMany({ where: { ownerId: accountId }, select: { fileId: true, position: true } })
  const household = await tx.household.findUniqueOrThrow({ where: { id: householdId }, select: { fileId: true } })
  const fileId = freeId(household.fileId, new Set(owned.map((home) => home.fileId)))
  const position = Math.max(-1, ...owned.map((home) => home.position)) + 1
  await tx.household.update({
    where: { id: householdId },
    data: { ownerId: accountId, fileId, position, revision: { increment: 1 } },
  })
  await tx.membership.deleteMany({ where: { householdId, accountId: { notIn: stay } } })
  await tx.membership.create({ data: { householdId, accountId, role: 'owner', since } })
}
