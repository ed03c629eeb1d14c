import type { Act, Role } from '@/lib/core/viewer'
import { later } from '@/lib/data/instant'
import {
  type Accepted,
  findInvitation,
  type Invitation,
  type Offer,
  saveInvitation,
  takeInvitation,
} from '@/lib/data/invitations'
import type { Refusal } from '@/lib/data/scope'
import { publicUrl } from './public-url'
import { hashToken, newToken } from './tokens'

const WEEK_SECONDS = 7 * 24 * 60 * 60

/** To sign up here · to be a member of a household · of all homes that one owns, or those in a building · to take a household over. */
export type Invite =
  | { kind: 'sign-up' }
  | { kind: 'member'; householdId: string; role: Exclude<Role, 'owner'> }
  | { kind: 'member'; role: 'manager' | 'technician'; building?: string }
  | { kind: 'hand-over'; householdId: string }

/** Makes an invitation link: for one use, within a week. The link is given once and cannot be asked for again. */
export async function createInvitation(
  act: Act,
  invite: Invite,
): Promise<{ ok: true; link: string; token: string; invitation: Invitation } | Refusal> {
  const token = newToken()
  const saved = await saveInvitation(act, {
    ...invite,
    tokenHash: hashToken(token),
    expiresAt: later(act.at, WEEK_SECONDS),
  })
  return saved.ok
    ? { ok: true, link: `${publicUrl()}/invitation/${token}`, token, invitation: saved.invitation }
    : saved
}

/** What a link offers, or null: unknown, used, revoked and expired ones look alike. */
export function findOffer(token: string, at: Act['at']): Promise<Offer | null> {
  return findInvitation(hashToken(token), at)
}

/** Accepts a link for whoever is signed in. */
export function acceptInvitation(act: Act, token: string): Promise<Accepted> {
  return takeInvitation(act, hashToken(token))
}
