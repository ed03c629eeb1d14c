'use client'

import { type ReactNode, useActionState } from 'react'
import { ErrorSummary } from '@/app/parts/error-summary'
import { type Answer, NOT_SENT } from '@/lib/core/answer'

interface OneButtonProps {
  action: (state: Answer, form: FormData) => Promise<Answer>
  fields: Record<string, string>
  children: ReactNode
}

/** A form that is one button; what goes wrong is said above it. */
export function OneButton({ action, fields, children }: OneButtonProps) {
  const [answer, send, isSending] = useActionState(action, NOT_SENT)
  return (
    <form action={send} className="one-button">
      <ErrorSummary faults={answer.faults} />
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" disabled={isSending}>
        {children}
      </button>
    </form>
  )
}
