import { now } from '@/lib/clock'
import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import type { Act, Door } from '@/lib/core/viewer'
import { createAccount, signUpState } from '@/lib/data/accounts'
import { type Kept, photoWriter } from '@/lib/data/brought-photos'
import { importInto } from '@/lib/data/import'
import { instant } from '@/lib/data/instant'
import { findInvitation, take } from '@/lib/data/invitations'
import { newId } from '@/lib/data/new-id'
import { mayTry, TOO_MANY } from './limits'
import { hashPassword, passwordFault } from './passwords'
import { plainEmail, type SessionCookie, signIn } from './sign-in'
import { hashToken } from './tokens'

export interface SignUp {
  email: string
  password: string
  /** Shown in the log of a household; the e-mail's first part where it is left out. */
  name?: string
  /** The token of an invitation link. */
  token?: string
}

/**
 * `cookies` is null where the person signs in next: except for the first account, the answer is the same whether the
 * e-mail was free or not, so that nobody learns who has an account here.
 */
export type SignedUp =
  | { ok: true; cookies: SessionCookie[] | null /** The new account, for what follows unseen. */; made: string | null }
  | { ok: false; faults: Fault[] }

/** Makes an account: the first of the installation, with open sign-ups, or by an invitation. */
export async function signUp(headers: Headers, asked: SignUp): Promise<SignedUp> {
  const faults = signUpFaults(asked)
  if (faults.length > 0) return { ok: false, faults }
  if (!(await mayTry('sign-up', headers, plainEmail(asked.email)))) return refused(TOO_MANY)
  const { empty, open } = await signUpState()
  const tokenHash = asked.token ? hashToken(asked.token) : null
  const invited = tokenHash !== null && (await findInvitation(tokenHash, instant(now()))) !== null
  if (asked.token && !invited && !empty && !open)
    return refused('This invitation was used already or is over. Ask for a new one.')
  if (!empty && !open && !invited) return refused('Sign-ups are closed here. Ask whoever hosts this for an invitation.')
  const made = await newAccount(asked, 'page', async (tx, act, admitted, accountId) => {
    const taken = tokenHash === null ? null : await take(tx, act, tokenHash)
    return admitted || taken?.ok ? accountId : null
  })
  if (!empty) return { ok: true, cookies: null, made }
  const signedIn = await signIn(headers, asked)
  return { ok: true, cookies: signedIn.ok ? signedIn.cookies : null, made }
}

/** What is wrong with what a person asks for, all at once. */
export function signUpFaults({ email, password }: SignUp): Fault[] {
  const faults: Fault[] = []
  const plain = plainEmail(email)
  if (!/^[^\s\p{C}@<>",;:\\]{1,64}@[^\s\p{C}@<>",;:\\]+$/u.test(plain) || plain.length > 254) {
    faults.push({ path: 'email', say: 'Write an e-mail address, like name@example.org.' })
  }
  const fault = passwordFault(password)
  if (fault) faults.push({ path: 'password', say: fault })
  return faults
}

/** Makes an account for whoever hosts this, with households in it, and photos in the only one: all, or nothing. */
export async function createAccountWith(
  asked: SignUp,
  households: Household[],
  photos: readonly Kept[] = [],
): Promise<{ ok: true; accountId: string; ids: string[] } | { ok: false; faults: Fault[] }> {
  const faults = signUpFaults(asked)
  if (faults.length > 0) return { ok: false, faults }
  let refusal: Fault[] = [{ path: 'email', say: `There is an account for ${plainEmail(asked.email)} already.` }]
  const writing = photoWriter()
  const making = newAccount(asked, 'command', async (tx, act, _, accountId) => {
    const imported = await importInto(tx, act, households)
    if (imported.ok) {
      await writing.write(tx, act, imported.ids[0] ?? '', photos)
      return { ok: true as const, accountId, ids: imported.ids }
    }
    refusal = imported.faults
    return null
  })
  try {
    return (await making) ?? { ok: false, faults: refusal }
  } catch (error) {
    await writing.undo()
    throw error
  }
}

type Admit<T> = (
  tx: Parameters<Parameters<typeof createAccount>[1]>[0],
  act: Act,
  admitted: boolean,
  accountId: string,
) => Promise<T | null>

async function newAccount<T>({ email, password, name }: SignUp, door: Door, admit: Admit<T>): Promise<T | null> {
  const id = newId()
  const plain = plainEmail(email)
  const shown = name?.trim() || (plain.split('@')[0] ?? plain)
  const at = instant(now())
  // Hashed whether or not the e-mail is free: the answer takes as long either way.
  const passwordHash = await hashPassword(password)
  const act: Act = { viewer: { kind: 'account', accountId: id, name: shown, administrator: false }, at, door }
  return createAccount({ id, email: plain, name: shown, passwordHash, at }, (tx, admitted) =>
    admit(tx, act, admitted, id),
  )
}

function refused(say: string): SignedUp {
  return { ok: false, faults: [{ path: '', say }] }
}
