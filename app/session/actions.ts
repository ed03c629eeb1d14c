'use server'

import { redirect } from 'next/navigation'
import type { Done } from '@/app/parts/action-form'
import { action, setCookies } from '@/lib/access/action'
import { signOut } from '@/lib/access/sign-in'
import { parseNothing } from '@/lib/forms/account-forms'

export const signOutHere = action<null, Done>({
  name: 'sign-out',
  needs: 'nobody',
  parse: parseNothing,
  run: async ({ headers }) => {
    await setCookies(await signOut(headers))
    redirect('/sign-in')
  },
})
