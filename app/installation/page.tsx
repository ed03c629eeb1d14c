import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { databasePage } from '@/app/database-page'
import { now } from '@/app/now'
import { OpenInvitations } from '@/app/open-invitations'
import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import { requireViewer } from '@/lib/access/page'
import { listAccounts, signUpState } from '@/lib/data/accounts'
import { listInvitations } from '@/lib/data/invitations'
import { AccountList } from './account-list'
import { inviteToSignUp, revokeSignUpInvitation, saveSignUps } from './actions'

export const metadata: Metadata = { title: 'Installation' }

export default databasePage(async () => {
  const viewer = await requireViewer('/installation')
  if (!viewer.administrator) notFound()
  const { open } = await signUpState()
  const at = await now()
  return (
    <main id="main" tabIndex={-1}>
      <h1>Installation</h1>
      <p className="lead">Who may have an account here. What stands in their homes is theirs; you do not see it.</p>

      <h2>Sign-ups are {open ? 'open' : 'closed'}</h2>
      <ActionForm action={saveSignUps} hidden={{ open: open ? 'no' : 'yes' }}>
        <p>
          {open
            ? 'Anybody who reaches this address may make an account.'
            : 'Only whoever has an invitation link may make an account.'}
        </p>
        <SubmitButton>{open ? 'Close sign-ups' : 'Open sign-ups'}</SubmitButton>
      </ActionForm>

      <h2>Invite someone</h2>
      <ActionForm action={inviteToSignUp}>
        <p>A link for one person, to make one account within a week. Send it by a way that only they read.</p>
        <SubmitButton>Make a link</SubmitButton>
      </ActionForm>
      <OpenInvitations invitations={await listInvitations(viewer, at)} at={at} revoke={revokeSignUpInvitation} />

      <h2>Accounts</h2>
      <AccountList accounts={await listAccounts(viewer)} />
      <p className="hint">
        A forgotten password is set anew on the machine itself:{' '}
        <code>npm run account -- reset-password --email name@example.org</code>
      </p>
    </main>
  )
})
