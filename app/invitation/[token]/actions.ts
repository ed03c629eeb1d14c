'use server'

import { redirect } from 'next/navigation'
import type { Done } from '@/app/parts/action-form'
import { refused } from '@/app/refusal'
import { action } from '@/lib/access/action'
import { acceptInvitation } from '@/lib/access/invite'
import { parseToken } from '@/lib/forms/account-forms'

export const acceptInvitationHere = action<{ token: string }, Done>({
  name: 'accept-invitation',
  needs: 'account',
  parse: parseToken,
  run: async ({ input, act }) => {
    const accepted = await acceptInvitation(act, input.token)
    if (!accepted.ok) return refused(accepted.because)
    redirect(accepted.householdId ? `/home/${accepted.householdId}` : '/')
  },
})
