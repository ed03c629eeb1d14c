import type { PlanChange } from '@/lib/core/plan-changes'

/** What a form of rows answers before it is saved. */
export interface TypedAnswer {
  kind: 'preview' | 'again'
  /** Rows to be shown beyond those that were typed. */
  more: number
  typed: Record<string, string[]>
  /** What each row comes to. */
  lines: string[]
  notes: string[]
  changes: PlanChange[]
}
