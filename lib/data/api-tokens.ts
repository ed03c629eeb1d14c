import type { Day } from '@/lib/core/day'
import type { Act, Instant, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { newId } from './new-id'
import { holdAccount, type Refusal } from './scope'

/** A token with which a program reads an account's plan, without its secret. */
export interface ApiToken {
  id: string
  name: string
  createdAt: Instant
  /** A day in UTC. */
  lastUsedOn: Day | null
  revokedAt: Instant | null
}

/** More than any house has programs: whoever makes more has lost sight of who holds them. */
export const MOST_TOKENS = 20

/** All tokens of an account, the latest first, revoked ones too. */
export function listApiTokens(viewer: Viewer): Promise<ApiToken[]> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return []
    return db.apiToken.findMany({
      where: { accountId: viewer.accountId },
      select: { id: true, name: true, createdAt: true, lastUsedOn: true, revokedAt: true },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    })
  })
}

/** Keeps a new token of the account that acts; `too-many` where that has enough. */
export function saveApiToken(
  act: Act,
  { tokenHash, name }: { tokenHash: string; name: string },
): Promise<{ ok: true; id: string } | Refusal | { ok: false; because: 'too-many' }> {
  return together(async (tx) => {
    if (act.viewer.kind !== 'account') return { ok: false, because: 'not-found' }
    const { accountId } = act.viewer
    // So that two at once cannot both be the last that is allowed.
    await holdAccount(tx, accountId)
    const open = await tx.apiToken.count({ where: { accountId, revokedAt: null } })
    if (open >= MOST_TOKENS) return { ok: false, because: 'too-many' }
    const { id } = await tx.apiToken.create({ data: { id: newId(), tokenHash, accountId, name, createdAt: act.at } })
    return { ok: true, id }
  })
}

/** Ends a token at once, for good. */
export async function revokeApiToken(act: Act, id: string): Promise<{ ok: true } | Refusal> {
  const accountId = act.viewer.kind === 'account' ? act.viewer.accountId : ''
  const { count } = await ask((db) =>
    db.apiToken.updateMany({ where: { id, accountId, revokedAt: null }, data: { revokedAt: act.at } }),
  )
  return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
}

/** Whose plan the token behind a hash opens, or null: for lib/access only. One that was revoked is null as well. */
export function findApiToken(
  tokenHash: string,
): Promise<{ id: string; lastUsedOn: Day | null; viewer: Extract<Viewer, { kind: 'account' }> } | null> {
  return ask(async (db) => {
    const row = await db.apiToken.findUnique({ where: { tokenHash }, include: { account: { select: { name: true } } } })
    if (!row || row.revokedAt !== null) return null
    const { id, lastUsedOn, accountId, account } = row
    return { id, lastUsedOn, viewer: { kind: 'account', accountId, name: account.name, administrator: false } }
  })
}

/** Notes the day on which a program asked with a token. */
export async function noteTokenUse(id: string, day: Day): Promise<void> {
  await ask((db) => db.apiToken.updateMany({ where: { id }, data: { lastUsedOn: day } }))
}
