'use client'

import type { ReactNode } from 'react'
import { useAnswer } from './action-form'

interface SubmitButtonProps {
  children: ReactNode
  kind?: 'main' | 'quiet'
  /** Of several buttons of one form, which was pressed. */
  name?: string
  value?: string
}

/** Sends its `ActionForm`; while that goes on a second press does nothing. */
export function SubmitButton({ children, kind, name, value }: SubmitButtonProps) {
  const { pending } = useAnswer()
  return (
    <button
      type="submit"
      className={kind}
      name={name}
      value={value}
      aria-disabled={pending || undefined}
      onClick={(event) => pending && event.preventDefault()}
    >
      {children}
    </button>
  )
}
