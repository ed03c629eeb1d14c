import { ActionForm } from '@/app/parts/action-form'
import { SubmitButton } from '@/app/parts/submit-button'
import type { AccountViewer } from '@/lib/access/sign-in'
import { may, type Role } from '@/lib/core/viewer'
import type { Home } from '@/lib/data/households'
import type { Member } from '@/lib/data/members'
import { endMembership, leaveHome } from './actions'

const ROLES: Record<Role, string> = {
  owner: 'owner: decides about people, handing over and closing',
  adult: 'second adult: sees, records and changes everything else',
  manager: 'manager: sees, records and changes everything else',
  technician: 'technician: sees it, and changes nothing',
}

/** Who sees a home, in which part, and the way out of it. */
export function MemberList({ members, viewer, home }: { members: Member[]; viewer: AccountViewer; home: Home }) {
  const owns = may(home.role, 'own')
  return (
    <ul className="lines">
      {members.map(({ accountId, name, email, role }) => {
        const own = accountId === viewer.accountId
        return (
          <li key={accountId}>
            <p>
              <strong>{name}</strong>
              {own && ' (you)'}, {ROLES[role]}.
            </p>
            {!own && may(home.role, 'record') && <p className="hint">{email}</p>}
            {!own && owns && (
              <details>
                <summary>Remove {name}</summary>
                <ActionForm action={endMembership} hidden={{ household: home.id, account: accountId }}>
                  <p>
                    {name} no longer sees this home. What {name} did stays in the log. You can invite them again.
                  </p>
                  <SubmitButton>Remove {name}</SubmitButton>
                </ActionForm>
              </details>
            )}
            {own && !owns && (
              <details>
                <summary>Leave this home</summary>
                <ActionForm action={leaveHome} hidden={{ household: home.id }}>
                  <p>You no longer see it. What you did stays in its log. The owner can invite you again.</p>
                  <SubmitButton>Leave this home</SubmitButton>
                </ActionForm>
              </details>
            )}
          </li>
        )
      })}
    </ul>
  )
}
