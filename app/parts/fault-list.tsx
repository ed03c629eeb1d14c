'use client'

import { useEffect, useRef } from 'react'
import type { Fault } from '@/lib/core/fault'
import { ErrorSummary } from './error-summary'

/** Faults as an action answers them, at the top of their form; a path is the field's id. Comes into view when they come. */
export function FaultList({ faults }: { faults: Fault[] }) {
  const top = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (faults.length > 0) top.current?.focus()
  }, [faults])
  return (
    <div ref={top} tabIndex={-1} className="answer">
      <ErrorSummary faults={faults.map(({ path, say }) => ({ ...(path && { field: path }), say }))} />
    </div>
  )
}
