import { homeInWords } from '@/lib/core/subject-words'
import type { Act, Instant, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { newId } from './new-id'
import { findRole, holdAccount, type Refusal } from './scope'

/** A private calendar address, without its secret. */
export interface Feed {
  id: string
  /** One home only, or null for all that the account sees. */
  householdId: string | null
  householdName: string | null
  createdAt: Instant
  fetchedOn: string | null
}

const WITH_NAME = { include: { household: { select: { name: true, building: true } } } } as const

/** The calendar addresses of an account, the oldest first. */
export function listFeeds(viewer: Viewer): Promise<Feed[]> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return []
    const rows = await db.feed.findMany({
      where: { accountId: viewer.accountId },
      ...WITH_NAME,
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    })
    return rows.map(({ id, householdId, household, createdAt, fetchedOn }) => {
      return { id, householdId, householdName: household && homeInWords(household), createdAt, fetchedOn }
    })
  })
}

/** Keeps a new address, for all homes of the account that acts or for one that it sees. */
export function saveFeed(
  act: Act,
  { secretHash, householdId }: { secretHash: string; householdId: string | null },
): Promise<{ ok: true; id: string } | Refusal> {
  return together(async (tx) => {
    if (act.viewer.kind !== 'account') return { ok: false, because: 'not-found' }
    const { accountId } = act.viewer
    await holdAccount(tx, accountId)
    if (householdId !== null && !(await findRole(tx, act.viewer, householdId)))
      return { ok: false, because: 'not-found' }
    const { id } = await tx.feed.create({
      data: { id: newId(), secretHash, accountId, householdId, createdAt: act.at },
    })
    return { ok: true, id }
  })
}

/** Gives an address another secret: from then on the earlier one leads nowhere. */
export async function renewFeed(act: Act, id: string, secretHash: string): Promise<{ ok: true } | Refusal> {
  const accountId = act.viewer.kind === 'account' ? act.viewer.accountId : ''
  const { count } = await ask((db) =>
    db.feed.updateMany({ where: { id, accountId }, data: { secretHash, createdAt: act.at, fetchedOn: null } }),
  )
  return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
}

/** Ends an address. */
export async function endFeed(act: Act, id: string): Promise<{ ok: true } | Refusal> {
  const accountId = act.viewer.kind === 'account' ? act.viewer.accountId : ''
  const { count } = await ask((db) => db.feed.deleteMany({ where: { id, accountId } }))
  return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
}

/** Whose calendar a secret opens, or null; notes once a day that somebody asked. */
export function findFeed(
  secretHash: string,
  day: string,
): Promise<{ id: string; householdId: string | null; viewer: Extract<Viewer, { kind: 'account' }> } | null> {
  return ask(async (db) => {
    const row = await db.feed.findUnique({ where: { secretHash }, include: { account: { select: { name: true } } } })
    if (!row) return null
    if (row.fetchedOn !== day) await db.feed.updateMany({ where: { id: row.id }, data: { fetchedOn: day } })
    const { id, householdId, accountId, account } = row
    return { id, householdId, viewer: { kind: 'account', accountId, name: account.name, administrator: false } }
  })
}
