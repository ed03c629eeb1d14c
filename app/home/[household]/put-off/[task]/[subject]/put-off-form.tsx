'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { ErrorSummary } from '@/app/parts/error-summary'
import { TextField } from '@/app/parts/text-field'
import { NOT_SENT } from '@/lib/core/answer'
import { putItemOff } from '../../../actions'

interface PutOffFormProps {
  household: string
  task: string
  subject: string
  isSafety: boolean
}

/** For how long an item is put off; an alarm's replacement by a month at most. */
export function PutOffForm({ household, task, subject, isSafety }: PutOffFormProps) {
  const [{ faults, typed }, send, isSending] = useActionState(putItemOff, NOT_SENT)
  const fault = (field: string) => faults.find(({ path }) => path === field)?.say
  return (
    <form action={send}>
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      {isSafety && (
        <p className="notice">An alarm past its life may not warn you. It can be put off by a month at most.</p>
      )}
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="task" value={task} />
      <input type="hidden" name="subject" value={subject} />
      <ChoiceRows
        name="days"
        legend="For how long?"
        choices={[
          { value: '7', label: 'A week' },
          { value: '14', label: 'Two weeks' },
          { value: '30', label: 'A month' },
          { value: 'until', label: 'Until the day below' },
        ]}
        chosen={typed.days?.[0] ?? '14'}
        fault={fault('days')}
      />
      <TextField id="until" type="date" label="Until" defaultValue={typed.until?.[0]} fault={fault('until')} />
      <div className="buttons">
        <button type="submit" className="main" disabled={isSending}>
          Put it off
        </button>
        <Link href={`/home/${household}`}>Back</Link>
      </div>
    </form>
  )
}
