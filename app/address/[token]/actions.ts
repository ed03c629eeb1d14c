'use server'

import type { Done } from '@/app/parts/action-form'
import { action } from '@/lib/access/action'
import { parseLink } from '@/lib/forms/outbound-forms'
import { changeAddressBy } from '@/lib/outbound/address-change'

export const takeAddress = action<{ token: string }, Done>({
  name: 'take-address',
  needs: 'nobody',
  parse: parseLink,
  run: async ({ input, headers }) => {
    const changed = await changeAddressBy(headers, input.token)
    if (!changed.ok) return changed
    return { ok: true, done: { say: 'Done. From now on you sign in with this address, and your mails come here.' } }
  },
})
