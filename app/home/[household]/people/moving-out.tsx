import { ActionForm } from '@/app/parts/action-form'
import { FormChoice, FormField } from '@/app/parts/form-field'
import { SubmitButton } from '@/app/parts/submit-button'
import { may } from '@/lib/core/viewer'
import type { StoredHousehold } from '@/lib/data/households'
import { closeHome, handOver, purgeHome, reopenHome } from './actions'

/** Handing a home over, closing it, opening it again, and removing what it says: its owner's. */
export function MovingOut({ home }: { home: StoredHousehold }) {
  if (!may(home.role, 'own')) return null
  const hidden = { household: home.id }
  return (
    <>
      <h2>Moving out</h2>
      <details>
        <summary>Hand it over to whoever comes next</summary>
        <ActionForm action={handOver} hidden={hidden}>
          <p>
            They get the equipment, its dates and what was done to it. You and everybody else here no longer see it, and
            all names leave its log. It happens when they accept.
          </p>
          <SubmitButton>Make a hand-over link</SubmitButton>
        </ActionForm>
      </details>
      {home.closedOn ? (
        <Closed home={home} />
      ) : (
        <details>
          <summary>Close it</summary>
          <ActionForm action={closeHome} hidden={hidden}>
            <p>It stays here to be read, and nothing is due any more. You can open it again at any time.</p>
            <SubmitButton>Close this home</SubmitButton>
          </ActionForm>
        </details>
      )}
    </>
  )
}

function Closed({ home }: { home: StoredHousehold }) {
  const hidden = { household: home.id }
  return (
    <>
      <details>
        <summary>Open it again</summary>
        <ActionForm action={reopenHome} hidden={hidden}>
          <p>Its dates are worked out anew from what it knows.</p>
          <SubmitButton>Open this home again</SubmitButton>
        </ActionForm>
      </details>
      <details>
        <summary>Remove what it says, for good</summary>
        <ActionForm action={purgeHome} hidden={hidden}>
          <p>This cannot be undone. Save the household file first.</p>
          <FormChoice
            name="purge-what"
            legend="What is to go?"
            choices={[
              {
                value: 'people',
                label: 'What it says about people',
                hint: 'Names in the log, contacts, notes, other people here, how many live there, pets. The equipment and what was done to it stay.',
              },
              { value: 'everything', label: 'Everything', hint: 'The whole home, its equipment, its log.' },
            ]}
          />
          <FormField
            id="purge-name"
            label="Type the home’s name"
            hint={`So that nothing goes by a slip: ${home.name}`}
            autoComplete="off"
            required
          />
          <SubmitButton kind="main">Remove it for good</SubmitButton>
        </ActionForm>
      </details>
    </>
  )
}
