'use server'

import { refresh } from 'next/cache'
import { redirect } from 'next/navigation'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { createInvitation } from '@/lib/access/invite'
import { revokeInvitation } from '@/lib/data/invitations'
import { removeEverywhere } from '@/lib/data/looked-after'
import { parseInvitationId, parseMember } from '@/lib/forms/account-forms'
import { type InviteMany, parseInviteMany } from '@/lib/forms/invite-form'

export const inviteIntoHomes = action<InviteMany, Done>({
  name: 'invite-into-homes',
  needs: 'account',
  parse: parseInviteMany,
  run: async ({ input, act }) => {
    const made = await createInvitation(act, { kind: 'member', ...input })
    if (!made.ok)
      return { ok: false, faults: [{ path: 'building', say: 'You own no open home there. Choose another building.' }] }
    refresh()
    const say = 'Pass this link on. It is shown this once, works once, and is good for a week.'
    return { ok: true, done: { say, link: made.link } }
  },
})

export const revokeHomesInvitation = action<{ invitation: string }, Done>({
  name: 'revoke-homes-invitation',
  needs: 'account',
  parse: parseInvitationId,
  run: async ({ input, act }) => {
    const revoked = await revokeInvitation(act, input.invitation)
    if (!revoked.ok) return refused(revoked.because)
    refresh()
    return { ok: true, done: { say: 'The invitation is taken back.' } }
  },
})

export const endEverywhere = action<{ account: string }, Done>({
  name: 'end-everywhere',
  needs: 'account',
  parse: parseMember,
  run: async ({ input, act }) => {
    const ended = await removeEverywhere(act, input.account)
    if (!ended.ok) return refused(ended.because)
    // Their line, with the form in it, is gone from the page: the page itself says what was done.
    redirect(`/homes/people?${new URLSearchParams({ ended: String(ended.homes) })}`)
  },
})
