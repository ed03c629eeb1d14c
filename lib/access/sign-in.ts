import { APIError } from 'better-auth/api'
import { parseSetCookieHeader, toCookieOptions } from 'better-auth/cookies'
import type { Fault } from '@/lib/core/fault'
import type { Viewer } from '@/lib/core/viewer'
import { asUnavailable } from '@/lib/data/unavailable'
import { library } from './library'
import { forgetTries, mayTry, TOO_MANY } from './limits'
import { throwWhy } from './probe'

/** A cookie to be set on the answer. */
export interface SessionCookie {
  name: string
  value: string
  options: ReturnType<typeof toCookieOptions>
}

export type AccountViewer = Extract<Viewer, { kind: 'account' }>
export type SignedIn = { ok: true; accountId: string; cookies: SessionCookie[] } | { ok: false; faults: Fault[] }

/** An e-mail as it is kept: `" Ann@Example.ORG "` is `ann@example.org`. */
export function plainEmail(email: string): string {
  return email.trim().toLowerCase()
}

/** Signs in; the answer never says whether there is such an account. Limited by address and by e-mail. */
export async function signIn(
  headers: Headers,
  { email, password }: { email: string; password: string },
): Promise<SignedIn> {
  const plain = plainEmail(email)
  if (!(await mayTry('sign-in', headers, plain))) return refused(TOO_MANY)
  try {
    const answer = await library().api.signInEmail({ body: { email: plain, password }, headers, returnHeaders: true })
    await forgetTries('sign-in', plain)
    return { ok: true, accountId: answer.response.user.id, cookies: cookiesOf(answer.headers) }
  } catch (error) {
    if (error instanceof APIError && error.statusCode < 500)
      return refused('This e-mail and password do not go together.')
    return throwWhy(asUnavailable(error))
  }
}

function refused(say: string): SignedIn {
  return { ok: false, faults: [{ path: '', say }] }
}

/** Ends the session that the headers' cookie names; gives the cookies that clear it. */
export async function signOut(headers: Headers): Promise<SessionCookie[]> {
  try {
    return cookiesOf((await library().api.signOut({ headers, returnHeaders: true })).headers)
  } catch (error) {
    return throwWhy(asUnavailable(error))
  }
}

/** Who is signed in by the headers' cookie, with the session's own token; null for nobody. Writes nothing. */
export async function currentSession(headers: Headers): Promise<{ viewer: AccountViewer; token: string } | null> {
  if (!headers.get('cookie')?.includes('plenum.session_token=')) return null
  try {
    const found = await library().api.getSession({ headers, query: { disableRefresh: true } })
    if (!found) return null
    const { id, name, administrator } = found.user
    return {
      viewer: { kind: 'account', accountId: id, name, administrator: administrator === true },
      token: found.session.token,
    }
  } catch (error) {
    return throwWhy(asUnavailable(error))
  }
}

/** Who is signed in by the headers' cookie, or null. */
export async function currentViewer(headers: Headers): Promise<AccountViewer | null> {
  return (await currentSession(headers))?.viewer ?? null
}

function cookiesOf(headers: Headers): SessionCookie[] {
  return headers.getSetCookie().flatMap((line) =>
    [...parseSetCookieHeader(line)].map(([name, attributes]) => ({
      name,
      value: attributes.value,
      options: toCookieOptions(attributes),
    })),
  )
}
