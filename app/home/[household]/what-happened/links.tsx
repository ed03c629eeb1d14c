import Link from 'next/link'
import type { Household } from '@/lib/core/household'

/** The way to what happened, a link for each system; nothing in a home without any. */
export function WhatHappenedLinks({ id, household }: { id: string; household: Household }) {
  if (household.systems.length === 0) return null
  const href = (system: string) => `/home/${id}/what-happened/${encodeURIComponent(system)}`
  return (
    <p className="no-print">
      What happened, in pictures:{' '}
      {household.systems.map((system, i) => (
        <span key={system.id}>
          {i > 0 && ', '}
          <Link href={href(system.id)}>{system.name}</Link>
        </span>
      ))}
    </p>
  )
}
