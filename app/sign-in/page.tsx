import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { PasswordField } from '@/app/parts/password-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { findViewer } from '@/lib/access/page'
import { localPath } from '@/lib/forms/local-path'
import { signInHere } from './actions'

export const metadata: Metadata = { title: 'Sign in' }

export default databasePage(async ({ searchParams }: PageProps) => {
  const asked = await searchParams
  const next = localPath(asked.next)
  if (await findViewer()) redirect(next)
  return (
    <main id="main" tabIndex={-1}>
      <h1>Sign in</h1>
      {asked.new !== undefined && (
        <p className="notice">
          Your account is ready: sign in with it. If that does not work, there was an account with this e-mail before,
          and it has kept its own password.
        </p>
      )}
      {next !== '/' && asked.new === undefined && <p className="lead">Then you come back to where you were going.</p>}
      <ActionForm action={signInHere} hidden={{ next }}>
        <FormField id="email" label="E-mail" type="email" autoComplete="username" inputMode="email" required />
        <PasswordField id="password" label="Password" autoComplete="current-password" required />
        <SubmitButton kind="main">Sign in</SubmitButton>
      </ActionForm>
      <h2>No way in?</h2>
      <p>
        <Link href={`/sign-up?next=${encodeURIComponent(next)}`}>Make an account</Link>, if you have none yet.
      </p>
      <p>
        <Link href="/forgot">Set a new password</Link>, if you forgot yours.
      </p>
    </main>
  )
})
