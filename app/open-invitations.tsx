import { ActionForm, type FormAction } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import type { Instant } from '@/lib/core/viewer'
import type { Invitation, InvitationKind } from '@/lib/data/invitations'
import { lastingInWords } from './offer-words'

const KINDS: Record<InvitationKind, string> = {
  'sign-up': 'To make an account',
  member: 'To look after this home together',
  'hand-over': 'To take this home over',
}

interface OpenInvitationsProps {
  invitations: Invitation[]
  at: Instant
  revoke: FormAction
  /** Sent along with what is revoked. */
  hidden?: Record<string, string>
}

/** The links that still work, each with a button that ends it. The links themselves cannot be shown again. */
export function OpenInvitations({ invitations, at, revoke, hidden }: OpenInvitationsProps) {
  if (invitations.length === 0) return null
  return (
    <>
      <h3>Links not used yet</h3>
      <ul className="lines">
        {invitations.map((invitation) => (
          <li key={invitation.id}>
            <p>
              {words(invitation)}. {lastingInWords(invitation, at)}
            </p>
            <ActionForm action={revoke} hidden={{ ...hidden, invitation: invitation.id }}>
              <SubmitButton kind="quiet">Take it back</SubmitButton>
            </ActionForm>
          </li>
        ))}
      </ul>
    </>
  )
}

function words({ kind, householdId, building, role }: Invitation): string {
  if (kind !== 'member' || householdId !== null) return KINDS[kind]
  return `As ${role} of ${building === null ? 'all your homes' : `your homes in ${building}`}`
}
