'use server'

import { redirect } from 'next/navigation'
import { after } from 'next/server'
import type { Done } from '@/app/parts/action-form'
import { action } from '@/lib/access/action'
import { parseForgot, parseRecovery } from '@/lib/forms/outbound-forms'
import { askRecovery, recover, sendRecovery } from '@/lib/outbound/account-mail'

export const forgot = action<{ email: string }, Done>({
  name: 'forgot-password',
  needs: 'nobody',
  parse: parseForgot,
  run: async ({ input, headers }) => {
    const asked = await askRecovery(headers, input.email)
    if (!asked.ok) return asked
    // After the answer, so that its time does not tell whether there is such an account either.
    after(() => sendRecovery(input.email))
    const say = 'If there is an account with this e-mail, a mail with a link is on its way. The link works for an hour.'
    return { ok: true, done: { say } }
  },
})

export const setNewPassword = action<{ token: string; 'new-password': string }, Done>({
  name: 'recover-password',
  needs: 'nobody',
  parse: parseRecovery,
  run: async ({ input, headers }) => {
    const set = await recover(headers, input.token, input['new-password'])
    if (!set.ok) return set
    redirect('/sign-in')
  },
})
