import Link from 'next/link'
import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import type { AccountViewer } from '@/lib/access/sign-in'
import type { Standing } from '@/lib/core/viewer'
import type { Offer } from '@/lib/data/invitations'
import { acceptInvitationHere } from './actions'

interface AnswerProps {
  token: string
  offer: Offer
  viewer: AccountViewer | null
  /** The viewer's part in the home already. */
  role: Standing | null
}

/** What whoever holds the link can do with it. Following a link never accepts it: a button does. */
export function Answer({ token, offer, viewer, role }: AnswerProps) {
  const address = `/home/${offer.householdId}`
  if (!viewer) return <FirstSignIn token={token} offer={offer} />
  if (offer.kind === 'sign-up')
    return <p>You have an account here already. The link is for somebody else: pass it on.</p>
  if (role === 'owner' || (role && offer.kind === 'member')) {
    return (
      <p>
        You are in this home already: <Link href={address}>open it</Link>. The link is for somebody else: pass it on.
      </p>
    )
  }
  return (
    <>
      <ActionForm action={acceptInvitationHere} hidden={{ token }}>
        <SubmitButton kind="main">{offer.kind === 'member' ? 'Accept' : 'Take the home over'}</SubmitButton>
      </ActionForm>
      <p className="hint">You are signed in as {viewer.name}. Not you? Sign out above, then follow the link again.</p>
    </>
  )
}

function FirstSignIn({ token, offer }: { token: string; offer: Offer }) {
  const signUp = `/sign-up?invitation=${encodeURIComponent(token)}`
  const signIn = `/sign-in?next=${encodeURIComponent(`/invitation/${token}`)}`
  return (
    <>
      <div className="buttons">
        <Link className="button main" href={signUp}>
          {offer.kind === 'sign-up' ? 'Make an account' : 'Make an account and accept'}
        </Link>
        <Link className="button" href={signIn}>
          I have an account
        </Link>
      </div>
      <p className="hint after-form">Nothing is accepted before you say so there.</p>
    </>
  )
}
