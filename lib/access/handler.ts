import { now } from '@/lib/clock'
import type { Act, Standing, Viewer } from '@/lib/core/viewer'
import { instant } from '@/lib/data/instant'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import type { TokenRefusal } from './api-tokens'
import { authorise, authoriseProgram, type Barred } from './authorise'
import { LIMIT_MINUTES, TOO_MANY } from './limits'
import { type Need, register } from './registry'

type Parameters = Record<string, string | string[] | undefined>

/** What a route's own work is given. */
export interface Requested {
  request: Request
  viewer: Viewer
  act: Act
  /** The part `[household]` of the address, `''` where there is none, and the viewer's role in it. */
  householdId: string
  role: Standing | null
  params: Parameters
}

const WRONG = 'Send a token of your account that was not revoked: Authorization: Bearer plenum_…'

const BARRED: Record<Barred | TokenRefusal, { status: number; say: string; headers?: Record<string, string> }> = {
  'signed-out': { status: 401, say: 'Sign in first.' },
  'not-found': { status: 404, say: 'There is nothing here.' },
  'not-allowed': { status: 403, say: 'Your part in this home does not include this.' },
  elsewhere: { status: 403, say: 'This was sent from another site.' },
  // RFC 6750, 3: no error code where nothing was sent that could be wrong.
  'no-token': { status: 401, say: WRONG, headers: { 'www-authenticate': 'Bearer realm="Plenum"' } },
  'wrong-token': {
    status: 401,
    say: WRONG,
    headers: { 'www-authenticate': 'Bearer realm="Plenum", error="invalid_token"' },
  },
  'too-many': { status: 429, say: TOO_MANY, headers: { 'retry-after': String(LIMIT_MINUTES * 60) } },
}

/**
 * Wraps a route handler: `export const GET = handler({ name: 'export', needs: 'account', run })`. A household's id is
 * the part `[household]` of the address. Everything but GET and HEAD must be sent by one of our own pages.
 */
export function handler({
  name,
  needs,
  run,
}: {
  name: string
  needs: Need
  run: (requested: Requested) => Promise<Response>
}) {
  register({ name, kind: 'handler', needs })
  return async function authorised(
    request: Request,
    context: { params: Promise<Parameters | undefined> },
  ): Promise<Response> {
    try {
      // Next gives none to a route without parts in its address.
      const params = (await context.params) ?? {}
      const householdId = String(params.household ?? '')
      const writes = request.method !== 'GET' && request.method !== 'HEAD'
      const allowed =
        needs === 'token'
          ? await authoriseProgram(request.headers, { writes })
          : await authorise(request.headers, { needs, writes, householdId })
      if (!allowed.ok) {
        const { status, say, headers } = BARRED[allowed.because]
        return answer(status, say, headers)
      }
      const { viewer, role } = allowed
      return await run({
        request,
        viewer,
        act: {
          viewer,
          at: instant(now()),
          door: needs === 'token' ? 'program' : viewer.kind === 'link' ? 'link' : 'page',
        },
        householdId,
        role,
        params,
      })
    } catch (error) {
      const known = asUnavailable(error)
      if (known instanceof DatabaseUnavailable) return answer(503, known.message)
      throw error
    }
  }
}

function answer(status: number, say: string, headers: Record<string, string> = {}): Response {
  return Response.json({ error: say }, { status, headers: { 'cache-control': 'no-store', ...headers } })
}
