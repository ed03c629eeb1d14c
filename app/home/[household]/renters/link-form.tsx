'use client'

import { useActionState } from 'react'
import { CopyLink } from '@/app/parts/copy-link'
import { ErrorSummary } from '@/app/parts/error-summary'
import { TextField } from '@/app/parts/text-field'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import type { Day } from '@/lib/core/day'
import { type MadeLink, makeLink } from './actions'

interface LinkFormProps {
  household: string
  today: Day
  /** The last day that is filled in. */
  until: Day
}

/** Makes a link and shows it this once. */
export function LinkForm({ household, today, until }: LinkFormProps) {
  const [{ faults, typed, done }, make, isSending] = useActionState<Answer<MadeLink>, FormData>(makeLink, NOT_SENT)
  const fault = (field: string) => faults.find(({ path }) => path === field)?.say
  return (
    <form action={make} key={done?.link}>
      {done && (
        <div className="notice" role="status">
          <p>
            <strong>The link for {done.name}.</strong> Copy it now and hand it over: it is shown this once and kept
            nowhere. Whoever has it sees this home.
          </p>
          <CopyLink link={done.link} />
        </div>
      )}
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      <input type="hidden" name="household" value={household} />
      <TextField
        id="name"
        label="Who gets it?"
        hint="The log and messages show this name, like “Unit 2” or “Jo, downstairs”."
        autoComplete="off"
        maxLength={60}
        required
        defaultValue={typed.name?.[0]}
        fault={fault('name')}
      />
      <TextField
        id="lastDay"
        type="date"
        label="Until which day, included?"
        min={today}
        required
        defaultValue={typed.lastDay?.[0] ?? until}
        fault={fault('lastDay')}
      />
      <button type="submit" className="main" disabled={isSending}>
        {isSending ? 'Making it…' : 'Make a link'}
      </button>
    </form>
  )
}
