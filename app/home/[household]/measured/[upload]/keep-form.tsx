'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { FaultList } from '@/app/parts/fault-list'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import { keepExport } from '../actions'

interface KeepFormProps {
  household: string
  upload: string
  /** How the file is read, as it stands in the address. */
  sent: (readonly [string, string])[]
}

/** Keeps what is shown above it. */
export function KeepForm({ household, upload, sent }: KeepFormProps) {
  const [answer, send, isSending] = useActionState<Answer, FormData>(keepExport, NOT_SENT)
  return (
    <form action={send}>
      <FaultList faults={answer.faults} />
      {sent
        .filter(([name]) => name !== 'household' && name !== 'upload')
        .map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
      <input type="hidden" name="household" value={household} />
      <input type="hidden" name="upload" value={upload} />
      <div className="buttons">
        <button type="submit" className="main" disabled={isSending}>
          {isSending ? 'Reading and keeping it…' : 'Keep these hours'}
        </button>
        <Link className="button" href={`/home/${household}/measured`}>
          Leave it
        </Link>
      </div>
      {isSending && <progress aria-label="Keeping it" />}
    </form>
  )
}
