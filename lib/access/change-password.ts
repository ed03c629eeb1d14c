import type { Fault } from '@/lib/core/fault'
import { findAccountByEmail, findPasswordHash, setPassword } from '@/lib/data/accounts'
import { forgetTries, mayTry, TOO_MANY } from './limits'
import { hashPassword, isPassword, passwordFault } from './passwords'
import { currentSession, plainEmail } from './sign-in'

type Changed = { ok: true } | { ok: false; faults: Fault[] }

/** Changes the password of whoever is signed in, and ends every other session. */
export async function changePassword(
  headers: Headers,
  { current, next }: { current: string; next: string },
): Promise<Changed> {
  const session = await currentSession(headers)
  if (!session) return refused('', 'You are signed out. Sign in first.')
  const fault = passwordFault(next)
  if (fault) return refused('next', fault)
  const checked = await checkPassword(headers, session.viewer.accountId, current)
  if (checked) return refused('current', checked)
  await setPassword(session.viewer.accountId, await hashPassword(next), { keepSession: session.token })
  return { ok: true }
}

/** Why a password does not prove who is signed in, or null where it does. Asked before what cannot be taken back. */
export async function checkPassword(headers: Headers, accountId: string, password: string): Promise<string | null> {
  if (!(await mayTry('password', headers, accountId))) return TOO_MANY
  const hash = await findPasswordHash(accountId)
  if (!hash || !(await isPassword(password, hash))) return 'This is not your password.'
  await forgetTries('password', accountId)
  return null
}

/** Sets another password for an account and ends all its sessions: for whoever hosts this. */
export async function resetPassword(email: string, next: string): Promise<Changed> {
  const fault = passwordFault(next)
  if (fault) return refused('password', fault)
  const account = await findAccountByEmail(plainEmail(email))
  if (!account) return refused('email', `There is no account for ${plainEmail(email)}.`)
  await setPassword(account.id, await hashPassword(next))
  return { ok: true }
}

function refused(path: string, say: string): Changed {
  return { ok: false, faults: [{ path, say }] }
}
