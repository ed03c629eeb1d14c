'use client'

import { useActionState } from 'react'
import { FaultList } from '@/app/parts/fault-list'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { takeReadingOut } from './actions'

/** Takes one reading out again. */
export function TakeOutForm({ household, reading, what }: { household: string; reading: string; what: string }) {
  const [answer, send] = useActionState<Answer, FormData>(takeReadingOut, NOT_SENT)
  return (
    <form action={send}>
      <FaultList faults={answer.faults} />
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="reading" value={reading} />
      <button type="submit" className="quiet" aria-label={`Take it out: ${what}`}>
        Take it out
      </button>
    </form>
  )
}
