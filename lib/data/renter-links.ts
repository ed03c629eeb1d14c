import type { Day } from '@/lib/core/day'
import type { Act, Instant, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { newId } from './new-id'
import { findRole, type Refusal, raise, signature } from './scope'

/** A renter's link as its owner sees it; its secret is kept nowhere. */
export interface RenterLink {
  id: string
  householdId: string
  name: string
  createdName: string
  createdAt: Instant
  lastDay: Day
  expiresAt: Instant
  revokedAt: Instant | null
}

/** For which household, what the owner calls it, and until when. */
export interface NewLinkPlace {
  householdId: string
  name: string
  lastDay: Day
  expiresAt: Instant
}

// More than any home needs: whoever makes more has lost sight of who holds them.
const MOST_OPEN = 20

/** Keeps a link. Only the owner lets people in. */
export function saveRenterLink(
  act: Act,
  { householdId, tokenHash, ...given }: NewLinkPlace & { tokenHash: string },
): Promise<{ ok: true; link: RenterLink } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'own' })
    if (!raised.ok) return raised
    const open = await tx.renterLink.count({ where: { householdId, revokedAt: null, expiresAt: { gt: act.at } } })
    if (open >= MOST_OPEN) return { ok: false, because: 'not-allowed' }
    const { byAccount, byName } = signature(act.viewer)
    const row = { id: newId(), householdId, tokenHash, ...given }
    const link = await tx.renterLink.create({
      data: { ...row, createdBy: byAccount, createdName: byName, createdAt: act.at },
    })
    return { ok: true, link: linkValue(link) }
  })
}

/** All links of a household, the latest first, ended and revoked ones too: its owner's to see. */
export function listRenterLinks(viewer: Viewer, householdId: string): Promise<RenterLink[]> {
  return ask(async (db) => {
    if ((await findRole(db, viewer, householdId)) !== 'owner') return []
    const rows = await db.renterLink.findMany({ where: { householdId }, orderBy: { createdAt: 'desc' } })
    return rows.map(linkValue)
  })
}

/** Ends a link at once, for good. */
export function revokeRenterLink(act: Act, householdId: string, linkId: string): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'own', evenClosed: true })
    if (!raised.ok) return raised
    const { count } = await tx.renterLink.updateMany({
      where: { id: linkId, householdId, revokedAt: null },
      data: { revokedAt: act.at },
    })
    return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
  })
}

/** The link behind a hash, if it opens anything now: for lib/access only. A closed home lets nobody in by a link. */
export function findOpenLink(tokenHash: string, at: Instant): Promise<RenterLink | null> {
  return ask(async (db) => {
    const row = await db.renterLink.findFirst({
      where: { tokenHash, revokedAt: null, expiresAt: { gt: at }, household: { state: 'open' } },
    })
    return row && linkValue(row)
  })
}

function linkValue(row: RenterLink): RenterLink {
  const { id, householdId, name, createdName, createdAt, lastDay, expiresAt, revokedAt } = row
  return { id, householdId, name, createdName, createdAt, lastDay, expiresAt, revokedAt }
}
