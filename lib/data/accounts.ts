import type { Act, Instant, Viewer } from '@/lib/core/viewer'
import { forgetNames } from './closing'
import { ask, type Questions, together } from './connection'
import { heirsOf, passOn } from './members'
import { holdAccount, type Refusal } from './scope'

/** An account, as whoever hosts this sees it. */
export interface AccountRow {
  id: string
  email: string
  name: string
  administrator: boolean
  households: number
}

/** All accounts by e-mail: for the administrator and the command line, empty for others. */
export function listAccounts(viewer: Viewer): Promise<AccountRow[]> {
  return ask(async (db) => {
    if (!isAdministrator(viewer)) return []
    const rows = await db.user.findMany({ include: { _count: { select: { owned: true } } }, orderBy: { email: 'asc' } })
    return rows.map(({ id, email, name, administrator, _count }) => ({
      id,
      email,
      name,
      administrator,
      households: _count.owned,
    }))
  })
}

/** Whether anybody has an account yet, and whether anybody may make one. */
export function signUpState(): Promise<{ empty: boolean; open: boolean }> {
  return ask(async (db) => {
    const installation = await db.installation.findUnique({ where: { id: 1 } })
    return { empty: (await db.user.count()) === 0, open: installation?.open ?? false }
  })
}

/** Opens or closes sign-ups: the administrator's. */
export function setSignUps(act: Act, open: boolean): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    if (!isAdministrator(act.viewer)) return { ok: false, because: 'not-allowed' }
    await tx.installation.upsert({ where: { id: 1 }, create: { id: 1, open }, update: { open } })
    return { ok: true }
  })
}

/** The account with an e-mail, or null: for lib/access only, which says it to nobody. */
export function findAccountByEmail(
  email: string,
): Promise<{ id: string; name: string; administrator: boolean } | null> {
  return ask((db) => db.user.findUnique({ where: { email }, select: { id: true, name: true, administrator: true } }))
}

export interface NewAccount {
  id: string
  email: string
  name: string
  passwordHash: string
  at: Instant
}

/**
 * Makes an account and whatever belongs to it as one. The first of the installation is its administrator. Without
 * open sign-ups `admit` decides. Gives null where it is refused or the e-mail is taken.
 */
export function createAccount<T>(
  account: NewAccount,
  admit: (tx: Questions, admitted: boolean) => Promise<T | null>,
): Promise<T | null> {
  return together(async (tx) => {
    // Two first accounts at once would otherwise both be administrators.
    await tx.$executeRaw`INSERT INTO "Installation" ("id", "touched") VALUES (1, 1) ON CONFLICT ("id") DO UPDATE SET "touched" = 1`
    const { id, email, name, passwordHash, at } = account
    if (await tx.user.findUnique({ where: { email } })) return null
    const administrator = (await tx.user.count()) === 0
    const { open } = await tx.installation.findUniqueOrThrow({ where: { id: 1 } })
    const now = new Date(at)
    const stamps = { createdAt: now, updatedAt: now }
    await tx.user.create({ data: { id, email, name, administrator, ...stamps } })
    await tx.account.create({
      data: {
        id: `${id}-password`,
        accountId: id,
        userId: id,
        providerId: 'credential',
        password: passwordHash,
        ...stamps,
      },
    })
    const admitted = await admit(tx, administrator || open)
    if (admitted === null) throw new NotAdmitted()
    return admitted
  }).catch((error) => {
    if (error instanceof NotAdmitted) return null
    throw error
  })
}

class NotAdmitted extends Error {}

/** Sets another password and ends all sessions, or all but one. Gives false where there is no such account. */
export function setPassword(
  accountId: string,
  passwordHash: string,
  { keepSession }: { keepSession?: string } = {},
): Promise<boolean> {
  return together(async (tx) => {
    const { count } = await tx.account.updateMany({
      where: { userId: accountId, providerId: 'credential' },
      data: { password: passwordHash },
    })
    await tx.session.deleteMany({ where: { userId: accountId, ...(keepSession && { token: { not: keepSession } }) } })
    return count === 1
  })
}

/** The hash of an account's password, or null. For lib/access only. */
export function findPasswordHash(accountId: string): Promise<string | null> {
  return ask(
    async (db) =>
      (await db.account.findFirst({ where: { userId: accountId, providerId: 'credential' } }))?.password ?? null,
  )
}

/**
 * Deletes an account and everything in it. A household where another adult lives passes on to the one who has been a
 * member the longest; in households of others the log keeps what was done, without the name. Where the administrator
 * goes, the oldest account takes over.
 */
export function deleteAccount(act: Act, accountId: string): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    const own = act.viewer.kind === 'account' && act.viewer.accountId === accountId
    if (!own && act.viewer.kind !== 'system') return { ok: false, because: 'not-allowed' }
    if (!(await holdAccount(tx, accountId))) return { ok: false, because: 'not-found' }
    // Whatever this account is writing in a home meanwhile hangs on that home: it comes before this, or is refused after.
    await tx.$executeRaw`UPDATE "Household" SET "revision" = "revision" + 1 WHERE "id" IN
      (SELECT m."householdId" FROM "Membership" m WHERE m."accountId" = ${accountId})`
    const places = await signedPlaces(tx, accountId)
    for (const [householdId, heir] of await heirsOf(tx, accountId)) {
      const members = await tx.membership.findMany({ where: { householdId } })
      const stay = members.map((member) => member.accountId).filter((id) => id !== accountId && id !== heir.id)
      await passOn(tx, householdId, heir.id, { since: act.at, stay })
    }
    // What is left goes with the account, names and all: of thousands of homes that is most of the work.
    for (const { id } of await tx.household.findMany({ where: { ownerId: accountId }, select: { id: true } }))
      places.delete(id)
    for (const householdId of places) await forgetNames(tx, householdId, accountId)
    await tx.invitation.deleteMany({ where: { createdBy: accountId } })
    await tx.user.delete({ where: { id: accountId } })
    if ((await tx.user.count({ where: { administrator: true } })) === 0) await passAdministration(tx)
    return { ok: true }
  })
}

/** The homes in which an account's name may stand: whoever only took back what others wrote has signed no row there. */
async function signedPlaces(tx: Questions, accountId: string): Promise<Set<string>> {
  const by = { where: { byAccount: accountId }, distinct: ['householdId' as const], select: { householdId: true } }
  const places = [
    await tx.membership.findMany({ where: { accountId }, select: { householdId: true } }),
    ...[await tx.entry.findMany(by), await tx.measuring.findMany(by)],
    ...[await tx.putOff.findMany(by), await tx.away.findMany(by), await tx.pause.findMany(by)],
    ...[await tx.photo.findMany(by), await tx.message.findMany(by)],
    ...[await tx.episodeEvent.findMany(by), await tx.brief.findMany(by)],
    await tx.reminded.findMany({ ...by, where: { accountId } }),
    await tx.renterLink.findMany({ ...by, where: { createdBy: accountId } }),
  ]
  return new Set(places.flat().map(({ householdId }) => householdId))
}

async function passAdministration(tx: Questions): Promise<void> {
  const oldest = await tx.user.findFirst({ orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] })
  if (oldest) await tx.user.update({ where: { id: oldest.id }, data: { administrator: true } })
}

function isAdministrator(viewer: Viewer): boolean {
  return viewer.kind === 'system' || (viewer.kind === 'account' && viewer.administrator)
}
