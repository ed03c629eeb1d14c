'use client'

import { useActionState } from 'react'
import { FaultList } from '@/app/parts/fault-list'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { takeBackMeasured, takeMeasuredOut } from './actions'

/** Takes back what was brought or taken out at once. */
export function UndoForm({ household, measuring, what }: { household: string; measuring: string; what: string }) {
  const [answer, send] = useActionState<Answer, FormData>(takeBackMeasured, NOT_SENT)
  return (
    <form action={send}>
      <FaultList faults={answer.faults} />
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="measuring" value={measuring} />
      <button type="submit" aria-label={`Take it back: ${what}`}>
        Take it back
      </button>
    </form>
  )
}

/** Takes one reading out; it can be taken back. */
export function OutForm({ household, reading, what }: { household: string; reading: string; what: string }) {
  const [answer, send] = useActionState<Answer, FormData>(takeMeasuredOut, NOT_SENT)
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
