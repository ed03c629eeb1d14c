'use server'

import { redirect } from 'next/navigation'
import { action, setCookies } from '@/lib/access/action'
import { signOut } from '@/lib/access/sign-in'
import { parseNothing } from '@/lib/forms/account-forms'

export const signOutHere = action({
  name: 'sign-out',
  needs: 'nobody',
  parse: parseNothing,
  run: async ({ headers }) => {
    await setCookies(await signOut(headers))
    redirect('/sign-in')
  },
})
