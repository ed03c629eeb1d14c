'use client'

import { useActionState } from 'react'
import { FaultList } from '@/app/parts/fault-list'
import { type Answer, NOT_SENT } from '@/lib/core/answer'

interface LineButtonProps {
  action: (state: Answer, form: FormData) => Promise<Answer>
  fields: Record<string, string>
  /** What the line is about, for those who hear the button alone. */
  about: string
  className?: string
  children: string
}

/** The button of one line of a list, a form of its own; what goes wrong is said above it. */
export function LineButton({ action, fields, about, className, children }: LineButtonProps) {
  const [answer, send] = useActionState(action, NOT_SENT)
  return (
    <form action={send}>
      <FaultList faults={answer.faults} />
      {Object.entries(fields).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <button type="submit" className={className} aria-label={`${children}: ${about}`}>
        {children}
      </button>
    </form>
  )
}
