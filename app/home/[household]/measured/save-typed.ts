import { refused } from '@/app/refusal'
import type { Ran } from '@/lib/access/action'
import type { Day } from '@/lib/core/day'
import type { Household, Reading } from '@/lib/core/household'
import type { Quantity } from '@/lib/core/reading-spans'
import { readingInWords } from '@/lib/core/reading-words'
import type { Act } from '@/lib/core/viewer'
import { changeReadings, listReadings } from '@/lib/data/readings'
import type { Typed } from '@/lib/forms/describe/answers'
import type { TypedAnswer } from './typed-answer'
import { withReadings } from './with-readings'

interface ToSave {
  act: Act
  householdId: string
  home: Household
  on: Day
  fresh: Reading[]
  quantities: readonly Quantity[]
  typed: Typed
  /** Whether it is to be kept, or only to be shown. */
  keep: boolean
  lines?: string[]
  notes?: string[]
}

const MOST_FAULTS = 12

/** Shows what readings come to, or saves them; gives the id of what was saved where it was. */
export async function saveTyped(to: ToSave): Promise<Ran<TypedAnswer> | { saved: string }> {
  const { act, householdId, home, on, fresh, typed } = to
  const standing = await listReadings(act.viewer, householdId)
  const { replacement, changes, faults } = withReadings(home, standing, { fresh, quantities: to.quantities, on })
  if (faults.length > 0) return { ok: false, faults: faults.slice(0, MOST_FAULTS).map((say) => ({ path: '', say })) }
  const { gone, rest } = replacement
  if (!to.keep) {
    const replaced = gone.map(({ reading }) => `It takes the place of: ${readingInWords(home, reading)}.`)
    const left = rest.map((reading) => `Of that stays, by its share of the days: ${readingInWords(home, reading)}.`)
    const lines = to.lines ?? fresh.map((reading) => readingInWords(home, reading))
    const notes = [...(to.notes ?? []), ...replaced, ...left]
    return { ok: true, done: { kind: 'preview', more: 0, typed, lines, notes, changes } }
  }
  const kind = fresh[0]?.source ?? 'bill'
  const saved = await changeReadings(act, householdId, {
    kind,
    add: [...rest, ...fresh],
    remove: gone.map(({ id }) => id),
  })
  if (saved.ok) return { saved: saved.id }
  if (saved.because === 'changed')
    return {
      ok: false,
      faults: [{ path: '', say: 'The readings were changed meanwhile. Nothing is lost: send it again.' }],
    }
  return refused(saved.because)
}
