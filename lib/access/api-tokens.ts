import { today } from '@/lib/clock'
import type { Act, Viewer } from '@/lib/core/viewer'
import { findApiToken, noteTokenUse, saveApiToken } from '@/lib/data/api-tokens'
import type { Refusal } from '@/lib/data/scope'
import { mayProgramAsk, mayTry } from './limits'
import { addressOf } from './public-url'
import { hashToken, newToken } from './tokens'

/** Ours, so that a token that lies about somewhere is known for what it is. */
export const TOKEN_PREFIX = 'plenum_'

/** Makes a token for a program; it is given once and cannot be asked for again. */
export async function createApiToken(
  act: Act,
  name: string,
): Promise<{ ok: true; token: string } | Refusal | { ok: false; because: 'too-many' }> {
  const token = `${TOKEN_PREFIX}${newToken()}`
  const saved = await saveApiToken(act, { tokenHash: hashToken(token), name })
  return saved.ok ? { ok: true, token } : saved
}

/** The token in an `Authorization` header, or null where it holds nothing that could be one (RFC 6750, 2.1). */
export function bearerIn(header: string): string | null {
  return /^bearer +(plenum_[\w-]{43})$/i.exec(header)?.[1] ?? null
}

export type TokenRefusal = 'no-token' | 'wrong-token' | 'too-many'

/**
 * Who a program asks for. Only the header counts, never a cookie. Revoked, unknown and malformed tokens take the same
 * way and get the same answer; many wrong ones from one address have to wait, and so does a program that never rests.
 */
export async function viewerByToken(
  headers: Headers,
): Promise<{ ok: true; viewer: Viewer } | { ok: false; because: TokenRefusal }> {
  const header = headers.get('authorization')
  if (header === null) return { ok: false, because: 'no-token' }
  const found = await findApiToken(hashToken(bearerIn(header) ?? ''))
  if (!found) {
    const may = await mayTry('token', headers, addressOf(headers))
    return { ok: false, because: may ? 'wrong-token' : 'too-many' }
  }
  if (!(await mayProgramAsk(found.id))) return { ok: false, because: 'too-many' }
  const day = today('UTC')
  if (found.lastUsedOn !== day) await noteTokenUse(found.id, day)
  return { ok: true, viewer: found.viewer }
}
