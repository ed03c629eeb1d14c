'use server'

import { redirect } from 'next/navigation'
import { after } from 'next/server'
import type { Done } from '@/app/parts/action-form'
import { action, setCookies } from '@/lib/access/action'
import { signUp, signUpFaults } from '@/lib/access/sign-up'
import { parseSignUp, type SignUpForm } from '@/lib/forms/account-forms'
import { sendFirstConfirmation } from '@/lib/outbound/account-mail'

export const signUpHere = action<SignUpForm, Done>({
  name: 'sign-up',
  needs: 'nobody',
  parse: parseSignUp(signUpFaults),
  run: async ({ input, headers }) => {
    const { invitation, next, ...asked } = input
    const signedUp = await signUp(headers, { ...asked, ...(invitation && { token: invitation }) })
    if (!signedUp.ok) return signedUp
    // After the answer, so that its time does not tell whether the e-mail was free either.
    const { made } = signedUp
    if (made) after(() => sendFirstConfirmation(made))
    if (!signedUp.cookies) redirect(`/sign-in?new&next=${encodeURIComponent(next)}`)
    await setCookies(signedUp.cookies)
    redirect(next)
  },
})
