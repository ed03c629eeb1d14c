import type { Fault } from '@/lib/core/fault'
import type { LogRecord } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { type Questions, together } from './connection'
import type { LogEntry } from './log'
import { type Outcome, recordIn, undoIn } from './records'
import { type Refusal, raise } from './scope'

/** One of several records that are saved as one. `key` as in `addRecord`. */
export interface RecordOf {
  householdId: string
  record: LogRecord
  key: string | null
}

export interface OutcomeOf {
  householdId: string
  outcome: Outcome
  entry: LogEntry
}

/** All of it, each with its outcome in the order it was asked, or nothing and every reason why. */
export type RecordedTogether = { ok: true; outcomes: OutcomeOf[] } | { ok: false; faults: Fault[] }

/** Records in several homes as one: all of it is saved, or nothing. A household's faults have its id as their path. */
export function recordTogether(act: Act, records: readonly RecordOf[]): Promise<RecordedTogether> {
  return allOrNothing(act, records, (tx, { householdId, ...one }) => recordIn(tx, act, householdId, one))
}

/** Takes several entries back as one. */
export function undoTogether(
  act: Act,
  entries: readonly { householdId: string; entryId: string }[],
): Promise<RecordedTogether> {
  return allOrNothing(act, entries, (tx, { householdId, entryId }) => undoIn(tx, act, householdId, entryId))
}

class Refused extends Error {
  constructor(readonly faults: Fault[]) {
    super()
  }
}

const SAY: Record<Refusal['because'], string> = {
  'not-found': 'One of these homes is not yours to see any more. Nothing was recorded. Load the page again.',
  'not-allowed': 'Your part in one of these homes does not include recording. Nothing was recorded.',
  closed: 'One of these homes was closed meanwhile. Nothing was recorded. Load the page again.',
}

async function allOrNothing<T extends { householdId: string }>(
  act: Act,
  asked: readonly T[],
  deed: (tx: Questions, one: T) => Promise<{ outcome: Outcome; entry: LogEntry } | string>,
): Promise<RecordedTogether> {
  if (asked.length === 0) return { ok: false, faults: [{ path: '', say: 'Nothing was chosen.' }] }
  try {
    return await together(async (tx) => {
      const faults: Fault[] = []
      const outcomes: OutcomeOf[] = []
      const raised = new Set<string>()
      for (const one of asked) {
        const { householdId } = one
        if (!raised.has(householdId)) {
          raised.add(householdId)
          const done = await raise(tx, act.viewer, householdId, { deed: 'record' })
          if (!done.ok) faults.push({ path: householdId, say: SAY[done.because] })
        }
        // What is refused is not looked into: whether a subject exists there is nobody else's business.
        if (faults.some(({ path }) => path === householdId)) continue
        const done = await deed(tx, one)
        if (typeof done === 'string') faults.push({ path: householdId, say: done })
        else outcomes.push({ householdId, ...done })
      }
      // Thrown, so that what was written before it is taken back.
      if (faults.length > 0) throw new Refused(faults)
      return { ok: true as const, outcomes }
    })
  } catch (error) {
    if (error instanceof Refused) return { ok: false, faults: error.faults }
    throw error
  }
}
