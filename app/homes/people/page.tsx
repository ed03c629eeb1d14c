import type { Metadata } from 'next'
import { databasePage } from '@/app/database-page'
import { HomesNav } from '@/app/homes-nav'
import { now } from '@/app/now'
import { OpenInvitations } from '@/app/open-invitations'
import type { PageProps } from '@/app/page-props'
import { ActionForm } from '@/app/parts/action-form'
import { FormChoice } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { requireViewer } from '@/lib/access/page'
import { plural } from '@/lib/core/day-words'
import { compareNames } from '@/lib/core/home-list'
import type { Role } from '@/lib/core/viewer'
import { listHomes } from '@/lib/data/households'
import { listHomesInvitations } from '@/lib/data/invitations'
import { type LooksAfter, listLookingAfter } from '@/lib/data/looked-after'
import { endEverywhere, inviteIntoHomes, revokeHomesInvitation } from './actions'
import { BuildingChoice } from './building-choice'

export const metadata: Metadata = { title: 'People of your homes' }

const ROLES: Record<Role, string> = {
  owner: 'owner',
  adult: 'second adult',
  manager: 'manager',
  technician: 'technician',
}

const MAY = [
  {
    value: 'manager',
    label: 'Manager',
    hint: 'Sees everything, plans rounds, records what was done, and changes what is described.',
  },
  {
    value: 'technician',
    label: 'Technician',
    hint: 'Sees what is due and the visits that are a technician’s. Changes nothing.',
  },
]

export default databasePage(async ({ searchParams }: PageProps) => {
  const ended = Number((await searchParams).ended)
  const viewer = await requireViewer('/homes/people')
  const at = await now()
  const owned = (await listHomes(viewer)).filter(({ role, state }) => role === 'owner' && state === 'open')
  const buildings = [...new Set(owned.flatMap(({ building }) => building ?? []))].sort(compareNames)
  return (
    <>
      <HomesNav current="Homes" />
      <main id="main" tabIndex={-1}>
        <h1>People of your homes</h1>
        {Number.isInteger(ended) && ended > 0 && (
          <p className="notice" role="status">
            Removed. They no longer see {plural(ended, 'home')} of yours.
          </p>
        )}
        <PeopleList people={await listLookingAfter(viewer)} />
        {owned.length > 0 && (
          <>
            <h2>Invite somebody into many homes</h2>
            <ActionForm action={inviteIntoHomes}>
              <FormChoice name="role" legend="What may they do?" choices={MAY} />
              <BuildingChoice buildings={buildings} homes={owned.length} />
              <SubmitButton kind="main">Make an invitation link</SubmitButton>
            </ActionForm>
            <p className="hint after-form">Homes that you describe later are not in it: invite again for those.</p>
          </>
        )}
        <OpenInvitations invitations={await listHomesInvitations(viewer, at)} at={at} revoke={revokeHomesInvitation} />
      </main>
    </>
  )
})

function PeopleList({ people }: { people: LooksAfter[] }) {
  if (people.length === 0) return <p className="lead">Nobody but you has a part in the homes that you own.</p>
  return (
    <ul className="lines">
      {people.map(({ accountId, name, email, role, homes, building }) => (
        <li key={`${accountId} ${role}`}>
          <p>
            <strong>{name}</strong>, {ROLES[role]} of {plural(homes, 'home')}
            {building !== null && ` in ${building}`}.
          </p>
          <p className="hint">{email}</p>
          <details>
            <summary>Remove {name}</summary>
            <ActionForm action={endEverywhere} hidden={{ account: accountId }}>
              <p>
                {name} no longer sees any home that you own. What {name} did stays in the logs.
              </p>
              <SubmitButton>Remove {name} from all my homes</SubmitButton>
            </ActionForm>
          </details>
        </li>
      ))}
    </ul>
  )
}
