import { createHash } from 'node:crypto'
import { now } from '@/lib/clock'
import { clearAttempts, countAttempt } from '@/lib/data/attempts'
import { instant } from '@/lib/data/instant'
import { addressOf } from './public-url'

export const LIMIT_MINUTES = 15
/**
 * By e-mail: enough for a person who tries what it may have been. By address: a house, an office. By token: once every
 * three seconds, for hours.
 */
export const LIMITS = { email: 10, address: 60, token: 300 } as const

export type Limited = keyof typeof LIMITS

/** Counts an attempt by address and by a name (an e-mail, an account), and says whether it may go on. */
export async function mayTry(what: string, headers: Headers, name: string): Promise<boolean> {
  const at = instant(now())
  const byAddress = await countAttempt(keyOf(what, 'address', addressOf(headers)), at, LIMIT_MINUTES * 60)
  const byName = await countAttempt(keyOf(what, 'email', name), at, LIMIT_MINUTES * 60)
  return byAddress <= LIMITS.address && byName <= LIMITS.email
}

/** Counts a program's question by its token, and says whether it may be answered. */
export async function mayProgramAsk(tokenId: string): Promise<boolean> {
  const count = await countAttempt(keyOf('program', 'token', tokenId), instant(now()), LIMIT_MINUTES * 60)
  return count <= LIMITS.token
}

/** It went well: the name starts anew. The address does not, or one account of one's own would open it. */
export function forgetTries(what: string, name: string): Promise<void> {
  return clearAttempts(keyOf(what, 'email', name))
}

// Hashed: the table shows nobody who tried to sign in here.
function keyOf(what: string, by: Limited, value: string): string {
  return createHash('sha256').update(`${what} ${by} ${value}`).digest('hex')
}

export const TOO_MANY = `Too many tries. Wait ${LIMIT_MINUTES} minutes, then try again.`
