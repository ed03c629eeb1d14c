'use server'

import { refresh } from 'next/cache'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { createInvitation } from '@/lib/access/invite'
import { setSignUps } from '@/lib/data/accounts'
import { revokeInvitation } from '@/lib/data/invitations'
import { parseInvitationId, parseNothing, parseSignUps } from '@/lib/forms/account-forms'

export const saveSignUps = action<{ open: 'yes' | 'no' }, Done>({
  name: 'save-sign-ups',
  needs: 'administrator',
  parse: parseSignUps,
  run: async ({ input, act }) => {
    const saved = await setSignUps(act, input.open === 'yes')
    if (!saved.ok) return refused(saved.because)
    refresh()
    return { ok: true, done: { say: input.open === 'yes' ? 'Sign-ups are open now.' : 'Sign-ups are closed now.' } }
  },
})

export const inviteToSignUp = action<null, Done>({
  name: 'invite-to-sign-up',
  needs: 'administrator',
  parse: parseNothing,
  run: async ({ act }) => {
    const made = await createInvitation(act, { kind: 'sign-up' })
    if (!made.ok) return refused(made.because)
    refresh()
    return {
      ok: true,
      done: { say: 'Pass this link on. It is shown this once, works once, and is good for a week.', link: made.link },
    }
  },
})

export const revokeSignUpInvitation = action<{ invitation: string }, Done>({
  name: 'revoke-sign-up-invitation',
  needs: 'administrator',
  parse: parseInvitationId,
  run: async ({ input, act }) => {
    const revoked = await revokeInvitation(act, input.invitation)
    if (!revoked.ok) return refused(revoked.because)
    refresh()
    return { ok: true, done: { say: 'The invitation is taken back.' } }
  },
})
