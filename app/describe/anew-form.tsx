'use client'

import Link from 'next/link'
import { useActionState } from 'react'
import { FaultList } from '@/app/parts/fault-list'
import { NOT_SENT } from '@/lib/core/answer'
import { startAnew } from './actions'

/** Go on with what was kept, or throw it away. */
export function AnewForm({ goOn }: { goOn: string }) {
  const [answer, send] = useActionState(startAnew, NOT_SENT)
  return (
    <form action={send}>
      <FaultList faults={answer.faults} />
      <div className="buttons">
        <Link className="button main" href={goOn}>
          Go on where I was
        </Link>
        <button type="submit">Throw it away and begin anew</button>
      </div>
    </form>
  )
}
