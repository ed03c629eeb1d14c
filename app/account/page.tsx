import type { Metadata } from 'next'
import Link from 'next/link'
import { databasePage } from '@/app/database-page'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { PasswordField } from '@/app/parts/password-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { requireViewer } from '@/lib/access/page'
import { PASSWORD_MIN } from '@/lib/access/passwords'
import { findOwnAccount } from '@/lib/data/own-account'
import { mailSettings } from '@/lib/outbound/mailer'
import { changeAddress, saveName, savePassword, signOutEverywhere } from './actions'
import { DeleteAccount } from './delete-account'

export const metadata: Metadata = { title: 'Account' }

export default databasePage(async () => {
  const viewer = await requireViewer('/account')
  const account = await findOwnAccount(viewer)
  return (
    <main id="main" tabIndex={-1}>
      <h1>Account</h1>
      <p className="lead">You sign in as {account?.email}.</p>

      <h2>Reminders</h2>
      <p>
        <Link href="/account/reminders">Your calendar and your mails</Link>: what is due, where you look anyway.
      </p>

      <h2>Programs</h2>
      <p>
        <Link href="/account/programs">Tokens for a script or a wall display</Link> that reads what is due.
      </p>

      <h2>Your name</h2>
      <ActionForm action={saveName}>
        <FormField
          id="name"
          label="Name"
          hint="The people of your homes see it beside what you did. What the log says already stays as it is."
          autoComplete="name"
          maxLength={60}
          defaultValue={account?.name}
          required
        />
        <SubmitButton>Save the name</SubmitButton>
      </ActionForm>

      <h2>Another e-mail</h2>
      {mailSettings().ok ? (
        <ActionForm action={changeAddress}>
          <FormField
            id="email"
            label="New e-mail"
            hint="A mail with a link goes there. Until you follow it, everything stays as it is."
            type="email"
            autoComplete="email"
            inputMode="email"
            required
          />
          <PasswordField id="address-password" label="Your password" autoComplete="current-password" required />
          <SubmitButton>Send the link</SubmitButton>
        </ActionForm>
      ) : (
        <p>This installation sends no mail yet, so no link can show that another address is yours.</p>
      )}

      <h2>Another password</h2>
      <ActionForm action={savePassword}>
        <input type="hidden" name="username" autoComplete="username" value={account?.email} />
        <PasswordField id="current-password" label="Password now" autoComplete="current-password" required />
        <PasswordField
          id="new-password"
          label="New password"
          hint={`At least ${PASSWORD_MIN} characters. Wherever else you are signed in, you will be signed out.`}
          autoComplete="new-password"
          required
        />
        <SubmitButton>Change the password</SubmitButton>
      </ActionForm>

      <h2>A phone lost, or a shared computer?</h2>
      <ActionForm action={signOutEverywhere}>
        <p>Signs you out here and everywhere else; then sign in again where you want to be.</p>
        <SubmitButton>Sign out everywhere</SubmitButton>
      </ActionForm>

      {viewer.administrator && (
        <>
          <h2>This installation</h2>
          <p>
            You are its administrator: <Link href="/installation">who may have an account here</Link>.
          </p>
        </>
      )}

      <h2>Take everything with you</h2>
      <p>
        One household file with all your homes: what is there, what was done, what was measured. It can be brought back
        here or to another installation: on a page up to 9 MB, some sixteen hundred homes; a larger one by whoever hosts
        it. Photos are not in it, but in the archive of each home, under its Details.
      </p>
      <p>
        <a className="button" href="/account/export" download>
          Save the household file
        </a>
      </p>

      <DeleteAccount viewer={viewer} />
    </main>
  )
})
