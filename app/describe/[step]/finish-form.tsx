'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { finishDescribing } from '@/app/describe/actions'
import { FaultList } from '@/app/parts/fault-list'
import { NOT_SENT } from '@/lib/core/answer'

/** Saves what stands above it. */
export function FinishForm({ back }: { back: string }) {
  const [answer, send, isSending] = useActionState(finishDescribing, NOT_SENT)
  return (
    <form action={send}>
      <FaultList faults={answer.faults.map(({ say }) => ({ path: '', say }))} />
      <p>All of it can be changed later.</p>
      <div className="buttons">
        <button type="submit" className="main" disabled={isSending}>
          Save, and show what is due
        </button>
        <Link className="button" href={back}>
          Back
        </Link>
      </div>
    </form>
  )
}
