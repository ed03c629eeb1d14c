import { ActionForm } from '@/app/parts/action-form'
import { FormChoice } from '@/app/parts/form-field'
import { PasswordField } from '@/app/parts/password-field'
import { SubmitButton } from '@/app/parts/submit-button'
import type { AccountViewer } from '@/lib/access/sign-in'
import { homeInWords } from '@/lib/core/subject-words'
import type { Standing } from '@/lib/core/viewer'
import { type Home, listHomes } from '@/lib/data/households'
import { listHeirs } from '@/lib/data/members'
import { deleteMyAccount } from './actions'

// Whoever has more of them is told how many, and reads all in the household file.
const NAMED = 50

/** What goes with an account, home by home, and the form that deletes it. */
export async function DeleteAccount({ viewer }: { viewer: AccountViewer }) {
  const [homes, heirs] = await Promise.all([listHomes(viewer), listHeirs(viewer)])
  const isDeleted = ({ id, role }: Home) => role === 'owner' && !heirs.has(id)
  const gone = homes.filter(isDeleted)
  // What is deleted stands first.
  const named = [...gone, ...homes.filter((home) => !isDeleted(home))].slice(0, NAMED)
  return (
    <details className="grave">
      <summary>Delete my account</summary>
      <p>This cannot be undone.</p>
      {homes.length > NAMED && (
        <p>
          Of your {homes.length} homes {gone.length} {gone.length === 1 ? 'is' : 'are'} deleted, and{' '}
          {homes.length - gone.length} {homes.length - gone.length === 1 ? 'stays' : 'stay'} with others. The first{' '}
          {NAMED} of them:
        </p>
      )}
      <ul>
        {named.map((home) => (
          <li key={home.id}>
            <strong>{homeInWords(home)}</strong>: {fateOf(home.role, heirs.get(home.id))}
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

function fateOf(role: Standing, heir: string | undefined): string {
  if (role !== 'owner') return 'stays with its owner; your name leaves its log.'
  return heir ? `passes on to ${heir}; your name leaves its log.` : 'is deleted, with its log.'
}
