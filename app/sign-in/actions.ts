'use server'

import { redirect } from 'next/navigation'
import type { Done } from '@/app/parts/action-form'
import { action, setCookies } from '@/lib/access/action'
import { signIn } from '@/lib/access/sign-in'
import { parseSignIn, type SignIn } from '@/lib/forms/account-forms'

export const signInHere = action<SignIn, Done>({
  name: 'sign-in',
  needs: 'nobody',
  parse: parseSignIn,
  run: async ({ input, headers }) => {
    const signedIn = await signIn(headers, input)
    if (!signedIn.ok) return signedIn
    await setCookies(signedIn.cookies)
    redirect(input.next)
  },
})
