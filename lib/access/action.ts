import { cookies, headers } from 'next/headers'
import { notFound } from 'next/navigation'
import { now } from '@/lib/clock'
import type { Answer } from '@/lib/core/answer'
import type { Fault } from '@/lib/core/fault'
import type { Act, Standing, Viewer } from '@/lib/core/viewer'
import { instant } from '@/lib/data/instant'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { authorise, type Barred } from './authorise'
import { type Need, register } from './registry'
import type { SessionCookie } from './sign-in'

/** What lib/forms makes of a form: the values, or everything that is wrong with it. */
export type Parse<I> = (form: FormData) => { ok: true; value: I } | { ok: false; faults: Fault[] }

/** What an action's own work is given. */
export interface Asked<I> {
  input: I
  viewer: Viewer
  act: Act
  /** The household that the form names, `''` where `needs` asks for none, and the viewer's role in it. */
  householdId: string
  role: Standing | null
  headers: Headers
}

export type Ran<T> = { ok: true; done: T } | { ok: false; faults: Fault[] }

export interface ActionOptions<I, T> {
  /** Unique; the access test names it. */
  name: string
  /** A token only reads. */
  needs: Exclude<Need, 'token'>
  parse: Parse<I>
  /** May also end in next's `redirect`. */
  run: (asked: Asked<I>) => Promise<Ran<T>>
}

const SAY: Record<Exclude<Barred, 'not-found'>, string> = {
  'signed-out':
    'You are signed out, or your renter’s link has ended. Sign in, or open a link that works, in another tab. Then send this again: nothing you typed is lost.',
  'not-allowed': 'Your part in this home does not include this. Ask whoever owns it here.',
  elsewhere: 'This was sent from another site, so nothing was done. Open the page here and send it again.',
}

/**
 * Wraps a server action. `export const recordDone = action({ name: 'record-done', needs: 'member', parse, run })` is
 * for `useActionState`; a form for a household has the hidden field `household` with its id. Every fault, and a
 * database that does not answer, comes back in the answer together with what was typed.
 */
export function action<I, T = null>({ name, needs, parse, run }: ActionOptions<I, T>) {
  register({ name, kind: 'action', needs })
  // The state before is React's to keep; what is answered depends on the form alone.
  return async function authorised(_before: Answer<T>, form: FormData): Promise<Answer<T>> {
    if (!(form instanceof FormData))
      return { faults: [{ path: '', say: 'Nothing was sent. Try again.' }], typed: {}, done: null }
    const typed = typedIn(form)
    try {
      const asked = await headers()
      const householdId = String(form.get('household') ?? '')
      const allowed = await authorise(asked, { needs, writes: true, householdId })
      if (!allowed.ok) {
        if (allowed.because === 'not-found') notFound()
        return { faults: [{ path: '', say: SAY[allowed.because] }], typed, done: null }
      }
      const parsed = parse(form)
      if (!parsed.ok) return { faults: parsed.faults, typed, done: null }
      const { viewer, role } = allowed
      const act: Act = { viewer, at: instant(now()), door: viewer.kind === 'link' ? 'link' : 'page' }
      const ran = await run({ input: parsed.value, viewer, act, householdId, role, headers: asked })
      return ran.ok ? { faults: [], typed: {}, done: ran.done } : { faults: ran.faults, typed, done: null }
    } catch (error) {
      const known = asUnavailable(error)
      if (known instanceof DatabaseUnavailable) return { faults: [{ path: '', say: known.message }], typed, done: null }
      throw error
    }
  }
}

function typedIn(form: FormData): Record<string, string[]> {
  // A field may be called `constructor`: only what was sent counts.
  const typed = new Map<string, string[]>()
  for (const [field, value] of form) {
    // Next's own fields begin with $; a password is never sent back.
    if (typeof value !== 'string' || field.startsWith('$') || /password/i.test(field)) continue
    typed.set(field, [...(typed.get(field) ?? []), value])
  }
  return Object.fromEntries(typed)
}

/** Sets a session's cookies on the answer to an action. */
export async function setCookies(list: SessionCookie[]): Promise<void> {
  const jar = await cookies()
  for (const { name, value, options } of list) jar.set(name, value, options)
}
