import type { Metadata } from 'next'
import Link from 'next/link'
import { connection } from 'next/server'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { mailSettings } from '@/lib/outbound/mailer'
import { forgot } from './actions'

export const metadata: Metadata = { title: 'A new password' }

export default async function Page() {
  await connection()
  return (
    <main id="main" tabIndex={-1}>
      <h1>A new password</h1>
      {mailSettings().ok ? (
        <ActionForm action={forgot}>
          <FormField
            id="email"
            label="The e-mail you sign in with"
            hint="You get a link that works once, within an hour."
            type="email"
            autoComplete="username"
            inputMode="email"
            required
          />
          <SubmitButton kind="main">Send me the link</SubmitButton>
        </ActionForm>
      ) : (
        <p className="lead">This installation sends no mail. Whoever hosts it can set a new password for you.</p>
      )}
      <p>
        <Link href="/sign-in">Back to signing in</Link>
      </p>
    </main>
  )
}
