import type { Fault } from './fault'

/** What a form's action answers, and what the form starts with. */
export interface Answer<T = null> {
  /** Everything that is wrong at once; empty when it was done. */
  faults: Fault[]
  /** What was typed, by field, so that nothing has to be typed again. Passwords are not given back. */
  typed: Record<string, string[]>
  /** What the action gives when it was done, else null. */
  done: T | null
}

/** An answer before anything was sent. */
export const NOT_SENT: Answer<never> = { faults: [], typed: {}, done: null }
