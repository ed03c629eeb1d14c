'use server'

import { redirect } from 'next/navigation'
import { learnToday } from '@/app/learn-from-each-other'
import type { Done } from '@/app/parts/action-form'
import { action } from '@/lib/access/action'
import { endPooling, startPooling } from '@/lib/data/pooled-dust'

// Neither has anything to read: the button is the whole form.
const nothing = () => ({ ok: true as const, value: null })

export const learnTogether = action<null, Done>({
  name: 'learn-together',
  needs: 'account',
  parse: nothing,
  run: async ({ viewer }) => {
    if (viewer.kind === 'account') {
      await startPooling(viewer.accountId)
      await learnToday(viewer.accountId)
    }
    redirect('/homes/learning?now=together')
  },
})

export const learnApart = action<null, Done>({
  name: 'learn-apart',
  needs: 'account',
  parse: nothing,
  run: async ({ viewer }) => {
    if (viewer.kind === 'account') await endPooling(viewer.accountId)
    redirect('/homes/learning?now=apart')
  },
})
