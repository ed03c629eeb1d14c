'use server'

import { redirect } from 'next/navigation'
import type { Done } from '@/app/parts/action-form'
import { action } from '@/lib/access/action'
import { parseLink } from '@/lib/forms/outbound-forms'
import { actOn } from '@/lib/outbound/act'

/** Does what a button of a mail stands for. The link itself says who does it. */
export const actByMail = action<{ token: string }, Done>({
  name: 'act-by-mail',
  needs: 'nobody',
  parse: parseLink,
  run: async ({ input }) => {
    const done = await actOn(input.token)
    if (!done.ok) return done
    redirect(`/act/${input.token}`)
  },
})
