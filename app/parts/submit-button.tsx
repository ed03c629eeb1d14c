'use client'

import type { ReactNode } from 'react'
import { useAnswer } from './action-form'

/** Sends its `ActionForm`; while that goes on a second press does nothing. */
export function SubmitButton({ children, kind }: { children: ReactNode; kind?: 'main' | 'quiet' }) {
  const { pending } = useAnswer()
  return (
    <button
      type="submit"
      className={kind}
      aria-disabled={pending || undefined}
      onClick={(event) => pending && event.preventDefault()}
    >
      {children}
    </button>
  )
}
