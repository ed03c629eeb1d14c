import { ActionForm } from '@/app/parts/action-form'
import { FormChoice } from '@/app/parts/form-field'
import { PasswordField } from '@/app/parts/password-field'
import { SubmitButton } from '@/app/parts/submit-button'
import type { AccountViewer } from '@/lib/access/sign-in'
import { listHomes } from '@/lib/data/households'
import { listMembers } from '@/lib/data/members'
import { deleteMyAccount } from './actions'

/** What goes with an account, home by home, and the form that deletes it. */
export async function DeleteAccount({ viewer }: { viewer: AccountViewer }) {
  const homes = await Promise.all(
    (await listHomes(viewer)).map(async (home) => ({ home, heir: await heirOf(viewer, home.id) })),
  )
  return (
    <details className="grave">
      <summary>Delete my account</summary>
      <p>This cannot be undone.</p>
      <ul>
        {homes.map(({ home, heir }) => (
          <li key={home.id}>
            <strong>{home.name}</strong>:{' '}
            {home.role !== 'owner'
              ? 'stays with its owner; your name leaves its log.'
              : heir
                ? `passes on to ${heir}; your name leaves its log.`
                : 'is deleted, with its log.'}
          </li>
        ))}
        <li>Your name, e-mail and password are deleted.</li>
      </ul>
      <p>
        <a href="/account/export" download>
          Save the household file
        </a>{' '}
        first: from it every home can be brought back. Names, contacts and notes are not in it.
      </p>
      <ActionForm action={deleteMyAccount}>
        <FormChoice
          name="delete-sure"
          legend="Is that what you want?"
          choices={[{ value: 'yes', label: 'Yes, everything listed here may go' }]}
          several
        />
        <PasswordField id="delete-password" label="Your password" autoComplete="current-password" required />
        <SubmitButton kind="main">Delete my account</SubmitButton>
      </ActionForm>
    </details>
  )
}

/** Who takes a home over: the other adult who has been there the longest, as lib/data decides it. */
async function heirOf(viewer: AccountViewer, householdId: string): Promise<string | null> {
  const others = (await listMembers(viewer, householdId)).filter(({ accountId }) => accountId !== viewer.accountId)
  return others.find(({ role }) => role === 'adult')?.name ?? null
}
