'use client'

import { useActionState } from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { NOT_SENT } from '@/lib/core/answer'
import { writeMessage } from '../actions'

/** One message; `text` is what it begins with. */
export function WriteForm({ household, text }: { household: string; text: string }) {
  const [{ faults, typed }, write, isSending] = useActionState(writeMessage, NOT_SENT)
  const fault = faults.find(({ path }) => path === 'text')?.say
  return (
    <form action={write}>
      <ErrorSummary faults={faults.map(({ path, say }) => ({ field: path || undefined, say }))} />
      <input type="hidden" name="household" value={household} />
      <div className="field">
        <label className="label" htmlFor="text">
          What should they know?
        </label>
        <p className="hint" id="text-hint">
          What you saw, since when, how cold it is in the room, and when somebody may come. Your message keeps its date.
        </p>
        {fault && (
          <span className="fault" id="text-fault">
            {fault}
          </span>
        )}
        <textarea
          id="text"
          name="text"
          rows={6}
          required
          aria-describedby={fault ? 'text-hint text-fault' : 'text-hint'}
          aria-invalid={fault ? true : undefined}
          defaultValue={typed.text?.[0] ?? text}
        />
      </div>
      <button type="submit" className="main" disabled={isSending}>
        {isSending ? 'Sending…' : 'Send it'}
      </button>
    </form>
  )
}
