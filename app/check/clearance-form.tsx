'use client'

import { useActionState } from 'react'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { ErrorSummary } from '@/app/parts/error-summary'
import { TextField } from '@/app/parts/text-field'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import type { Day } from '@/lib/core/day'

interface ClearanceFormProps {
  action: (state: Answer, form: FormData) => Promise<Answer>
  household: string
  today: Day
}

/** Records a professional's visit: it alone gives the start back, and a clearance alone opens the checks again. */
export function ClearanceForm({ action, household, today }: ClearanceFormProps) {
  const [{ faults, typed }, send, isSending] = useActionState(action, NOT_SENT)
  const fault = (field: string) => faults.find(({ path }) => path === field)?.say
  return (
    <form action={send} noValidate>
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      <input type="hidden" name="household" value={household} />
      <ChoiceRows
        name="what"
        legend="What did they do?"
        choices={[
          { value: 'cleared', label: 'Looked at the hazard, and said that it is safe' },
          { value: 'visited', label: 'Worked on the heating or cooling' },
          { value: 'both', label: 'Both' },
        ]}
        chosen={typed.what?.[0]}
        fault={fault('what')}
      />
      <TextField
        id="who"
        label="Who was it?"
        hint="The fire crew, the gas company, or a licensed technician."
        defaultValue={typed.who?.[0]}
        autoComplete="off"
        fault={fault('who')}
      />
      <TextField
        id="on"
        type="date"
        label="When?"
        max={today}
        defaultValue={typed.on?.[0] ?? today}
        fault={fault('on')}
      />
      <div className="field">
        {fault('professional') && (
          <span className="fault" id="professional-fault">
            {fault('professional')}
          </span>
        )}
        <label className="row" htmlFor="professional">
          <input
            id="professional"
            type="checkbox"
            name="professional"
            value="yes"
            defaultChecked={typed.professional?.[0] === 'yes'}
            aria-describedby={fault('professional') ? 'professional-fault' : undefined}
          />
          <span>It was a crew or a licensed technician, and they were here in person</span>
        </label>
      </div>
      <button type="submit" className="main" disabled={isSending}>
        Record it
      </button>
    </form>
  )
}
