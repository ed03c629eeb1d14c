import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import { offerInWords } from '@/app/offer-words'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { FormField } from '@/app/parts/form-field'
import { PasswordField } from '@/app/parts/password-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { findOffer } from '@/lib/access/invite'
import { findViewer } from '@/lib/access/page'
import { PASSWORD_MIN } from '@/lib/access/passwords'
import { signUpState } from '@/lib/data/accounts'
import { localPath } from '@/lib/forms/local-path'
import { signUpHere } from './actions'

export const metadata: Metadata = { title: 'Make an account' }

export default databasePage(async ({ searchParams }: PageProps) => {
  const { invitation: token, next: asked } = await searchParams
  const invitation = typeof token === 'string' ? token : ''
  const offered = `/invitation/${encodeURIComponent(invitation)}`
  const next = localPath(asked)
  if (await findViewer()) redirect(invitation ? offered : next)
  const { empty, open } = await signUpState()
  const offer = invitation ? await findOffer(invitation, await now()) : null
  if (!empty && !open && !offer) return <Closed wasInvited={invitation !== ''} />
  return (
    <main id="main" tabIndex={-1}>
      <h1>Make an account</h1>
      {empty && (
        <p className="lead">
          Nobody has an account here yet. Yours is the first, so you decide who else may have one: you are the
          administrator of this installation.
        </p>
      )}
      {offer && offer.kind !== 'sign-up' && (
        <p className="notice">{offerInWords(offer)} Making the account accepts it.</p>
      )}
      <ActionForm action={signUpHere} hidden={{ invitation, next }}>
        <FormField
          id="name"
          label="Your name"
          hint="The people of your home see it beside what you did. A first name is enough."
          autoComplete="name"
          maxLength={60}
          required
        />
        <FormField
          id="email"
          label="E-mail"
          hint="You sign in with it. It stays on this installation."
          type="email"
          autoComplete="username"
          inputMode="email"
          required
        />
        <PasswordField
          id="password"
          label="Password"
          hint={`At least ${PASSWORD_MIN} characters. A few words that only you would put together are easy to keep in mind.`}
          autoComplete="new-password"
          required
        />
        <SubmitButton kind="main">Make the account</SubmitButton>
      </ActionForm>
      <p className="after-form">
        You have one?{' '}
        <Link href={`/sign-in?next=${encodeURIComponent(invitation ? offered : next)}`}>Sign in with it</Link>.
      </p>
    </main>
  )
})

function Closed({ wasInvited }: { wasInvited: boolean }) {
  return (
    <main id="main" tabIndex={-1}>
      <h1>Sign-ups are closed here</h1>
      {wasInvited ? (
        <p className="lead">
          This invitation was used already, taken back, or is older than a week. Ask for a new one.
        </p>
      ) : (
        <p className="lead">Whoever hosts this lets people in by a link. Ask them for one.</p>
      )}
      <p>
        You have an account? <Link href="/sign-in">Sign in</Link>. Without one you can still{' '}
        <Link href="/sample" prefetch={false}>
          look around a sample home
        </Link>
        .
      </p>
    </main>
  )
}
