import type { State } from '@/lib/core/plan-types'

/** A state's shape: filled, half filled, open, a dot. Its words stand beside it. */
export function StateSign({ state }: { state: State }) {
  return (
    <svg className="state-sign" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {state === 'later' ? (
        <circle cx="10" cy="10" r="3" fill="currentColor" />
      ) : (
        <rect x="2" y="2" width="16" height="16" fill="none" stroke="currentColor" strokeWidth="2.4" />
      )}
      {state === 'overdue' && <rect x="2" y="2" width="16" height="16" fill="currentColor" />}
      {state === 'due' && <rect x="2" y="10" width="16" height="8" fill="currentColor" />}
    </svg>
  )
}
