import type { Deed, Standing, Viewer } from '@/lib/core/viewer'
import { may } from '@/lib/core/viewer'
import { findRoleIn } from '@/lib/data/members'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { type TokenRefusal, viewerByToken } from './api-tokens'
import { findLinkFor } from './links'
import { isSameOrigin } from './public-url'
import type { Need } from './registry'
import { currentViewer } from './sign-in'

/** Where a request may not do what it asks. `not-found` also stands for "not yours": nobody learns what exists. */
export type Barred = 'signed-out' | 'not-found' | 'not-allowed' | 'elsewhere'

export type Authorised = { ok: true; viewer: Viewer; role: Standing | null } | { ok: false; because: Barred }

const DEEDS: Partial<Record<Need, Deed>> = {
  see: 'see',
  visit: 'see',
  member: 'record',
  resident: 'record',
  manage: 'manage',
  owner: 'own',
}

// What a renter's link may open at all; everything else needs an account.
const BY_LINK: readonly Need[] = ['visit', 'resident']

/**
 * The one place that decides who may do what: every action and every route handler asks here, before its input is
 * looked at. `writes` asks also that one of our own pages sent it.
 */
export async function authorise(
  headers: Headers,
  { needs, writes, householdId }: { needs: Exclude<Need, 'token'>; writes: boolean; householdId: string | null },
): Promise<Authorised> {
  if (writes && !isSameOrigin(headers)) return { ok: false, because: 'elsewhere' }
  if (needs === 'nobody') return { ok: true, viewer: (await whoeverItIs(headers)) ?? { kind: 'sample' }, role: null }
  const viewer = await currentViewer(headers)
  if (BY_LINK.includes(needs) && householdId) {
    // An account's own part in the home comes first: it may do more, and signs with its own name.
    const own = viewer && (await findRoleIn(viewer, householdId))
    const link = own ? null : await findLinkFor(headers, householdId)
    if (link) return { ok: true, viewer: link, role: 'renter' }
  }
  if (!viewer) return { ok: false, because: 'signed-out' }
  if (needs === 'account') return { ok: true, viewer, role: null }
  if (needs === 'administrator') {
    return viewer.administrator ? { ok: true, viewer, role: null } : { ok: false, because: 'not-found' }
  }
  const role = householdId === null ? null : await findRoleIn(viewer, householdId)
  if (!role) return { ok: false, because: 'not-found' }
  const deed = DEEDS[needs]
  return deed && may(role, deed) ? { ok: true, viewer, role } : { ok: false, because: 'not-allowed' }
}

/** The same for a program with a token. It only reads, whatever route lets it in. */
export async function authoriseProgram(
  headers: Headers,
  { writes }: { writes: boolean },
): Promise<Extract<Authorised, { ok: true }> | { ok: false; because: TokenRefusal | 'not-allowed' }> {
  if (writes) return { ok: false, because: 'not-allowed' }
  const asked = await viewerByToken(headers)
  return asked.ok ? { ...asked, role: null } : asked
}

// What anybody may ask for is not refused because the database does not answer: the guide must lead on.
async function whoeverItIs(headers: Headers): Promise<Viewer | null> {
  try {
    return await currentViewer(headers)
  } catch (error) {
    if (asUnavailable(error) instanceof DatabaseUnavailable) return null
    throw error
  }
}
