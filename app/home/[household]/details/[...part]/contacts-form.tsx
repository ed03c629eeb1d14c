'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { fieldOf } from '@/app/describe/fields/group'
import { FaultList } from '@/app/parts/fault-list'
import { TextField } from '@/app/parts/text-field'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { editContacts } from '../actions'

const KINDS = [
  {
    kind: 'technician',
    name: 'The technician',
    hint: 'Who services the heating and cooling, licensed for gas and refrigerant.',
  },
  { kind: 'landlord', name: 'The landlord', hint: 'Whom a renter calls about repairs.' },
  {
    kind: 'gas-company',
    name: 'The gas company',
    hint: 'Its emergency line is on the bill. Write it down before you need it.',
  },
  { kind: 'other', name: 'Somebody else', hint: 'A neighbour with a key, the building’s office.' },
]

interface ContactsFormProps {
  household: string
  typed: Record<string, string[]>
  filters: { id: string; name: string }[]
}

/** Whom to call, how to get in, where things are. It moves no date, so it is saved at once. */
export function ContactsForm({ household, typed, filters }: ContactsFormProps) {
  const [answer, send, isSending] = useActionState<Answer, FormData>(editContacts, NOT_SENT)
  const group = answer.faults.length > 0 ? { typed: answer.typed, faults: answer.faults } : { typed, faults: [] }
  return (
    <form action={send} noValidate>
      <FaultList faults={answer.faults} />
      <input type="hidden" name="household" value={household} />
      <div key={JSON.stringify(answer)}>
        <TextField
          id="emergency"
          label="Emergency number"
          hint="911 unless you write another. The guide shows it first."
          className="short"
          inputMode="tel"
          {...fieldOf(group, 'emergency')}
        />
        {KINDS.map(({ kind, name, hint }) => (
          <fieldset key={kind} aria-describedby={`${kind}-why`}>
            <legend>{name}</legend>
            <p className="hint" id={`${kind}-why`}>
              {hint}
            </p>
            <TextField id={`${kind}-name`} label="Name" {...fieldOf(group, `${kind}-name`)} />
            <TextField id={`${kind}-phone`} label="Telephone" inputMode="tel" {...fieldOf(group, `${kind}-phone`)} />
            <TextField id={`${kind}-email`} label="E-mail" inputMode="email" {...fieldOf(group, `${kind}-email`)} />
            <TextField id={`${kind}-note`} label="Note" {...fieldOf(group, `${kind}-note`)} />
          </fieldset>
        ))}
        <TextField
          id="access"
          label="How to get in"
          hint="For whoever comes: the gate, the dog, where the shut-off is. Everyone who sees this home can read it, so write no code or hiding place."
          {...fieldOf(group, 'access')}
        />
        {filters.map(({ id, name }) => (
          <TextField
            key={id}
            id={`note-${id}`}
            label={`Where the filter is: ${name}`}
            hint="In your own words: “behind the coats”."
            {...fieldOf(group, `note-${id}`)}
          />
        ))}
      </div>
      <div className="buttons">
        <button type="submit" className="main" disabled={isSending}>
          Save
        </button>
        <Link className="button" href={`/home/${household}/details`}>
          Leave it as it was
        </Link>
      </div>
    </form>
  )
}
