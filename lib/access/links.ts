import { now } from '@/lib/clock'
import type { Act, Viewer } from '@/lib/core/viewer'
import { instant } from '@/lib/data/instant'
import { findOpenLink, type NewLinkPlace, type RenterLink, saveRenterLink } from '@/lib/data/renter-links'
import type { Refusal } from '@/lib/data/scope'
import { mayTry } from './limits'
import { addressOf, isSecure, publicUrl } from './public-url'
import type { SessionCookie } from './sign-in'
import { hashToken, newToken } from './tokens'

export type LinkViewer = Extract<Viewer, { kind: 'link' }>

const COOKIE = 'plenum.renter'
const TOKEN = /^[A-Za-z0-9_-]{43}$/

/** Makes a renter's link for one household. The link is given once and cannot be asked for again. */
export async function createRenterLink(
  act: Act,
  place: NewLinkPlace,
): Promise<{ ok: true; link: string; token: string; renterLink: RenterLink } | Refusal> {
  const token = newToken()
  const saved = await saveRenterLink(act, { ...place, tokenHash: hashToken(token) })
  return saved.ok ? { ok: true, link: `${publicUrl()}/r/${token}`, token, renterLink: saved.link } : saved
}

/**
 * Opens a link: who comes by it, and the cookie that stands for it from now on, so that the secret does not stay in
 * the address. Unknown, revoked and ended links look alike, and only those that open nothing count as tries.
 */
export async function openLink(
  headers: Headers,
  token: string,
): Promise<{ ok: true; viewer: LinkViewer; cookie: SessionCookie } | { ok: false; because: 'gone' | 'too-many' }> {
  const at = instant(now())
  const found = TOKEN.test(token) ? await findOpenLink(hashToken(token), at) : null
  if (!found) {
    // There is no name to count by, only where it came from: both counts are of that.
    const tried = await mayTry('renter-link', headers, addressOf(headers))
    return { ok: false, because: tried ? 'gone' : 'too-many' }
  }
  const options = { httpOnly: true, sameSite: 'lax', path: '/', secure: isSecure(), expires: new Date(found.expiresAt) }
  return {
    ok: true,
    viewer: viewerOf(found),
    cookie: { name: COOKIE, value: token, options: options as SessionCookie['options'] },
  }
}

/** Who looks by the link whose cookie the headers hold, or null. The link's row is asked each time. */
export async function currentLink(headers: Headers): Promise<LinkViewer | null> {
  const token = cookieIn(headers)
  if (token === null || !TOKEN.test(token)) return null
  const found = await findOpenLink(hashToken(token), instant(now()))
  return found && viewerOf(found)
}

/** The same, for one household only. */
export async function findLinkFor(headers: Headers, householdId: string): Promise<LinkViewer | null> {
  const link = await currentLink(headers)
  return link?.householdId === householdId ? link : null
}

function viewerOf({ id, householdId, name }: RenterLink): LinkViewer {
  return { kind: 'link', linkId: id, householdId, name }
}

function cookieIn(headers: Headers): string | null {
  const parts = (headers.get('cookie') ?? '').split(';').map((part) => part.trim())
  return parts.find((part) => part.startsWith(`${COOKIE}=`))?.slice(COOKIE.length + 1) ?? null
}
