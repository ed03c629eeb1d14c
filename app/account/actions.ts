'use server'

import { refresh } from 'next/cache'
import { redirect } from 'next/navigation'
import { after } from 'next/server'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action, setCookies } from '@/lib/access/action'
import { changePassword, checkPassword } from '@/lib/access/change-password'
import { passwordFault } from '@/lib/access/passwords'
import { signOut } from '@/lib/access/sign-in'
import { deleteAccount } from '@/lib/data/accounts'
import { endSessions, renameAccount } from '@/lib/data/own-account'
import { parseAddressChange, parseDeletion, parseName, parseNewPassword, parseNothing } from '@/lib/forms/account-forms'
import { askNewAddress, sendNewAddress } from '@/lib/outbound/address-change'

export const saveName = action<{ name: string }, Done>({
  name: 'save-name',
  needs: 'account',
  parse: parseName,
  run: async ({ input, act }) => {
    if (!(await renameAccount(act, input.name))) return refused('not-found')
    refresh()
    return { ok: true, done: { say: `Saved. From now on the log says “${input.name}”.` } }
  },
})

export const savePassword = action<{ 'current-password': string; 'new-password': string }, Done>({
  name: 'save-password',
  needs: 'account',
  parse: parseNewPassword(passwordFault),
  run: async ({ input, headers }) => {
    const changed = await changePassword(headers, { current: input['current-password'], next: input['new-password'] })
    if (changed.ok)
      return {
        ok: true,
        done: { say: 'Your password is changed. Wherever else you were signed in, you are signed out.' },
      }
    const fields: Record<string, string> = { current: 'current-password', next: 'new-password' }
    return { ok: false, faults: changed.faults.map(({ path, say }) => ({ path: fields[path] ?? '', say })) }
  },
})

export const changeAddress = action<{ email: string; 'address-password': string }, Done>({
  name: 'change-address',
  needs: 'account',
  parse: parseAddressChange,
  run: async ({ input, viewer, headers }) => {
    if (viewer.kind !== 'account') return refused('not-found')
    const { email, 'address-password': password } = input
    const asked = await askNewAddress(headers, viewer.accountId, { email, password })
    if (!asked.ok) return asked
    // After the answer, so that its time does not tell who has an account here either.
    after(() => sendNewAddress(viewer.accountId, email))
    const say = `If ${email} can be used here, a mail with a link is on its way to it. Follow it within three days.`
    return { ok: true, done: { say } }
  },
})

export const signOutEverywhere = action<null, Done>({
  name: 'sign-out-everywhere',
  needs: 'account',
  parse: parseNothing,
  run: async ({ act, headers }) => {
    await endSessions(act)
    await setCookies(await signOut(headers))
    redirect('/sign-in')
  },
})

export const deleteMyAccount = action<{ 'delete-password': string }, Done>({
  name: 'delete-account',
  needs: 'account',
  parse: parseDeletion,
  run: async ({ input, act, viewer, headers }) => {
    if (viewer.kind !== 'account') return refused('not-found')
    const say = await checkPassword(headers, viewer.accountId, input['delete-password'])
    if (say) return { ok: false, faults: [{ path: 'delete-password', say }] }
    const deleted = await deleteAccount(act, viewer.accountId)
    if (!deleted.ok) return refused(deleted.because)
    await setCookies(await signOut(headers))
    redirect('/account/deleted')
  },
})
