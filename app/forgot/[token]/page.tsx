import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { PasswordField } from '@/app/parts/password-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { PASSWORD_MIN } from '@/lib/access/passwords'
import { isRecoveryOpen } from '@/lib/outbound/account-mail'
import { setNewPassword } from '../actions'

export const metadata: Metadata = { title: 'Choose a new password', robots: { index: false } }

export default databasePage(async ({ params }: PageProps<{ token: string }>) => {
  await now()
  const { token } = await params
  const isOpen = await isRecoveryOpen(token)
  return (
    <main id="main" tabIndex={-1}>
      <h1>{isOpen ? 'Choose a new password' : 'This link is over'}</h1>
      {isOpen ? (
        <ActionForm action={setNewPassword} hidden={{ token }}>
          <PasswordField
            id="new-password"
            label="New password"
            hint={`At least ${PASSWORD_MIN} characters. Wherever you are signed in, you will be signed out.`}
            autoComplete="new-password"
            required
          />
          <SubmitButton kind="main">Set it</SubmitButton>
        </ActionForm>
      ) : (
        <p className="lead">
          It was used already, or is older than an hour. <Link href="/forgot">Ask for a new one</Link>.
        </p>
      )}
    </main>
  )
})
