import { homeInWords } from '@/lib/core/subject-words'
import type { Act, Instant, Role, Viewer } from '@/lib/core/viewer'
import { closeLinks, forgetNames } from './closing'
import { ask, type Questions, together } from './connection'
import { join, passOn } from './members'
import { newId } from './new-id'
import { findRole, holdAccount, type Refusal, raise } from './scope'

export type InvitationKind = 'sign-up' | 'member' | 'hand-over'

/** An open invitation, as a page shows it to who made it. */
export interface Invitation {
  id: string
  kind: InvitationKind
  householdId: string | null
  role: Role | null
  /** Of an invitation into many homes: only those in this building, null for all. */
  building: string | null
  createdAt: Instant
  expiresAt: Instant
}

/** What whoever holds the link may know before accepting it. */
export interface Offer extends Invitation {
  householdName: string | null
  from: string
}

export interface NewInvitation {
  kind: InvitationKind
  /** Left out for a member of many homes: all that the one who acts owns, or those in `building`. */
  householdId?: string
  building?: string
  role?: Role
  tokenHash: string
  expiresAt: Instant
}

export type Invited = { ok: true; invitation: Invitation } | Refusal

/** Keeps an invitation. Into a household only its owner invites; to sign up only the administrator. */
export function saveInvitation(
  act: Act,
  { kind, householdId, building, role, tokenHash, expiresAt }: NewInvitation,
): Promise<Invited> {
  return together(async (tx) => {
    if (kind === 'sign-up') {
      if (act.viewer.kind === 'sample' || (act.viewer.kind === 'account' && !act.viewer.administrator)) {
        return { ok: false, because: 'not-allowed' }
      }
    } else if (kind === 'member' && householdId === undefined) {
      if (act.viewer.kind !== 'account') return { ok: false, because: 'not-allowed' }
      const { accountId } = act.viewer
      await holdAccount(tx, accountId)
      if ((await tx.household.count({ where: ownedIn(accountId, building ?? null) })) === 0)
        return { ok: false, because: 'not-found' }
    } else {
      const raised = await raise(tx, act.viewer, householdId ?? '', { deed: 'own', evenClosed: kind === 'hand-over' })
      if (!raised.ok) return raised
    }
    const createdBy = act.viewer.kind === 'account' ? act.viewer.accountId : ''
    const place = {
      kind,
      householdId: kind === 'sign-up' ? null : (householdId ?? null),
      building: building ?? null,
      role: kind === 'member' ? (role ?? 'adult') : null,
    }
    const row = await tx.invitation.create({
      data: { id: newId(), tokenHash, createdBy, createdAt: act.at, expiresAt, ...place },
    })
    return { ok: true, invitation: invitation(row) }
  })
}

/** The open invitations of a household (its owner sees them), or without one those to sign up (the administrator). */
export function listInvitations(viewer: Viewer, at: Instant, householdId?: string): Promise<Invitation[]> {
  return ask(async (db) => {
    if (householdId && (await findRole(db, viewer, householdId)) !== 'owner') return []
    if (!householdId && !(viewer.kind === 'system' || (viewer.kind === 'account' && viewer.administrator))) return []
    const rows = await db.invitation.findMany({
      where: { ...open(at), ...(householdId ? { householdId } : { kind: 'sign-up' }) },
      orderBy: { createdAt: 'desc' },
    })
    return rows.map(invitation)
  })
}

/** The open invitations into many homes that the viewer made. */
export function listHomesInvitations(viewer: Viewer, at: Instant): Promise<Invitation[]> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return []
    const rows = await db.invitation.findMany({
      where: { ...open(at), kind: 'member', householdId: null, createdBy: viewer.accountId },
      orderBy: { createdAt: 'desc' },
    })
    return rows.map(invitation)
  })
}

/** Ends an invitation before it is used. */
export function revokeInvitation(act: Act, invitationId: string): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    const mine = act.viewer.kind === 'account' ? { createdBy: act.viewer.accountId } : {}
    if (act.viewer.kind === 'sample') return { ok: false, because: 'not-found' }
    const { count } = await tx.invitation.updateMany({
      where: { id: invitationId, usedAt: null, ...mine },
      data: { revokedAt: act.at },
    })
    return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
  })
}

/** What an open invitation offers, or null: unknown, used, revoked and expired look alike. */
export function findInvitation(tokenHash: string, at: Instant): Promise<Offer | null> {
  return ask(async (db) => {
    const row = await db.invitation.findFirst({ where: { tokenHash, ...open(at) }, include: { household: true } })
    if (!row) return null
    const from = await db.user.findUnique({ where: { id: row.createdBy } })
    return {
      ...invitation(row),
      householdName: row.household && homeInWords(row.household),
      from: from?.name ?? 'whoever hosts this',
    }
  })
}

export type Accepted = { ok: true; kind: InvitationKind; householdId: string | null } | { ok: false; because: 'gone' }

/** Takes an invitation for the account that acts, once: a member joins, a household changes hands. */
export function takeInvitation(act: Act, tokenHash: string): Promise<Accepted> {
  return together((tx) => take(tx, act, tokenHash))
}

/** The same inside a transaction that is already going on. */
export async function take(tx: Questions, act: Act, tokenHash: string): Promise<Accepted> {
  if (act.viewer.kind !== 'account') return { ok: false, because: 'gone' }
  const { accountId } = act.viewer
  // Of two who follow one link at once, one changes the row and the other finds it used.
  const { count } = await tx.invitation.updateMany({ where: { tokenHash, ...open(act.at) }, data: { usedAt: act.at } })
  if (count === 0) return { ok: false, because: 'gone' }
  const { kind, householdId, role, building, createdBy } = await tx.invitation.findUniqueOrThrow({
    where: { tokenHash },
  })
  // Which homes they are is settled now: what has been closed or handed over since is not given away.
  if (!householdId && kind === 'member') {
    const homes = await tx.household.findMany({ where: ownedIn(createdBy, building), select: { id: true } })
    for (const { id } of homes) await join(tx, id, accountId, (role ?? 'technician') as Role, act.at)
  }
  if (householdId && kind === 'member') await join(tx, householdId, accountId, (role ?? 'adult') as Role, act.at)
  if (householdId && kind === 'hand-over') {
    const { ownerId } = await tx.household.findUniqueOrThrow({ where: { id: householdId } })
    if (ownerId !== accountId) {
      await passOn(tx, householdId, accountId, { since: act.at })
      await tx.household.update({ where: { id: householdId }, data: { state: 'open', closedOn: null } })
      // Who lived here before is nobody's business after.
      await closeLinks(tx, householdId)
      await forgetNames(tx, householdId)
    }
  }
  return { ok: true, kind: kind as InvitationKind, householdId }
}

function ownedIn(ownerId: string, building: string | null) {
  return { ownerId, state: 'open', ...(building !== null && { building }) }
}

function open(at: Instant) {
  return { usedAt: null, revokedAt: null, expiresAt: { gt: at } }
}

function invitation(row: {
  id: string
  kind: string
  householdId: string | null
  role: string | null
  building: string | null
  createdAt: string
  expiresAt: string
}): Invitation {
  const { id, householdId, building, createdAt, expiresAt } = row
  const known = { kind: row.kind as InvitationKind, role: row.role as Role | null }
  return { id, householdId, building, createdAt, expiresAt, ...known }
}
