'use server'

import { refresh } from 'next/cache'
import { redirect } from 'next/navigation'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { today } from '@/app/today'
import { action } from '@/lib/access/action'
import { createInvitation } from '@/lib/access/invite'
import { closeHousehold, purgeHousehold, reopenHousehold } from '@/lib/data/closing'
import { getHousehold } from '@/lib/data/households'
import { revokeInvitation } from '@/lib/data/invitations'
import { removeMember } from '@/lib/data/members'
import { parseInvitationId, parseMember, parseNothing, parsePurge } from '@/lib/forms/account-forms'
import { parseInvitee } from '@/lib/forms/outbound-forms'
import { mailInvitation } from '@/lib/outbound/account-mail'
import { mailSettings } from '@/lib/outbound/mailer'

const ONCE = 'It is shown this once, works once, and is good for a week.'

export const inviteAdult = action<{ email: string }, Done>({
  name: 'invite-adult',
  needs: 'owner',
  parse: parseInvitee,
  run: async ({ input, act, viewer, householdId }) => {
    const made = await createInvitation(act, { kind: 'member', householdId, role: 'adult' })
    if (!made.ok) return refused(made.because)
    refresh()
    if (input.email !== '' && mailSettings().ok) {
      const { name } = await getHousehold(viewer, householdId)
      const says = `to look after ${name} together`
      await mailInvitation(act, { to: input.email, link: made.link, says, invitationId: made.invitation.id })
      return {
        ok: true,
        done: { say: `The link is on its way to ${input.email}. Here it is too. ${ONCE}`, link: made.link },
      }
    }
    return {
      ok: true,
      done: { say: `Pass this link on to whoever looks after the home with you. ${ONCE}`, link: made.link },
    }
  },
})

export const handOver = action<null, Done>({
  name: 'hand-over',
  needs: 'owner',
  parse: parseNothing,
  run: async ({ act, householdId }) => {
    const made = await createInvitation(act, { kind: 'hand-over', householdId })
    if (!made.ok) return refused(made.because)
    refresh()
    return {
      ok: true,
      done: {
        say: `Pass this link on to whoever takes the home over. Until they accept, it stays yours. ${ONCE}`,
        link: made.link,
      },
    }
  },
})

export const revokeHomeInvitation = action<{ invitation: string }, Done>({
  name: 'revoke-home-invitation',
  needs: 'owner',
  parse: parseInvitationId,
  run: async ({ input, act }) => {
    const revoked = await revokeInvitation(act, input.invitation)
    if (!revoked.ok) return refused(revoked.because)
    refresh()
    return { ok: true, done: { say: 'The invitation is taken back.' } }
  },
})

export const endMembership = action<{ account: string }, Done>({
  name: 'end-membership',
  needs: 'owner',
  parse: parseMember,
  run: async ({ input, act, householdId }) => {
    const removed = await removeMember(act, householdId, input.account)
    if (!removed.ok) return refused(removed.because)
    refresh()
    return { ok: true, done: { say: 'They no longer see this home.' } }
  },
})

export const leaveHome = action<null, Done>({
  name: 'leave-home',
  needs: 'see',
  parse: parseNothing,
  run: async ({ act, viewer, householdId }) => {
    if (viewer.kind !== 'account') return refused('not-found')
    const left = await removeMember(act, householdId, viewer.accountId)
    if (!left.ok) return refused(left.because)
    redirect('/homes')
  },
})

export const closeHome = action<null, Done>({
  name: 'close-home',
  needs: 'owner',
  parse: parseNothing,
  run: async ({ act, viewer, householdId }) => {
    const { timeZone } = await getHousehold(viewer, householdId)
    const closed = await closeHousehold(act, householdId, await today(timeZone))
    if (!closed.ok) return refused(closed.because)
    refresh()
    return { ok: true, done: { say: 'The home is closed.' } }
  },
})

export const reopenHome = action<null, Done>({
  name: 'reopen-home',
  needs: 'owner',
  parse: parseNothing,
  run: async ({ act, householdId }) => {
    const opened = await reopenHousehold(act, householdId)
    if (!opened.ok) return refused(opened.because)
    refresh()
    return { ok: true, done: { say: 'The home is open again, and its dates are back.' } }
  },
})

export const purgeHome = action<{ 'purge-what': 'people' | 'everything'; 'purge-name': string }, Done>({
  name: 'purge-home',
  needs: 'owner',
  parse: parsePurge,
  run: async ({ input, act, viewer, householdId }) => {
    const { name } = await getHousehold(viewer, householdId)
    if (plain(input['purge-name']) !== plain(name))
      return { ok: false, faults: [{ path: 'purge-name', say: `Type “${name}”, as it stands above.` }] }
    const purged = await purgeHousehold(act, householdId, input['purge-what'])
    if (!purged.ok) return refused(purged.because)
    if (input['purge-what'] === 'everything') redirect('/homes')
    refresh()
    return { ok: true, done: { say: 'What was said about people is removed.' } }
  },
})

// A slip is what the typed name guards against, and that needs no capitals.
function plain(name: string): string {
  return name.trim().replace(/\s+/g, ' ').toLowerCase()
}
