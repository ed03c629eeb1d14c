'use server'

import type { Done } from '@/app/parts/action-form'
import { action } from '@/lib/access/action'
import { parseLink } from '@/lib/forms/outbound-forms'
import { confirm } from '@/lib/outbound/account-mail'

export const confirmMyAddress = action<{ token: string }, Done>({
  name: 'confirm-address',
  needs: 'nobody',
  parse: parseLink,
  run: async ({ input, headers }) => {
    const confirmed = await confirm(headers, input.token)
    if (!confirmed.ok) return confirmed
    return {
      ok: true,
      done: { say: 'Thank you. Reminders come to this address from now on. You can close this page.' },
    }
  },
})
