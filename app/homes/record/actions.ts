'use server'

import { refresh } from 'next/cache'
import { action } from '@/lib/access/action'
import { plural } from '@/lib/core/day-words'
import { undoTogether } from '@/lib/data/record-together'
import { parseEntries, parseTicked, type TickedForm } from '@/lib/forms/ticked-form'
import { recordTheTicked } from './record-the-ticked'
import { entriesText, type Recorded, type TakenBack } from './said'

/** Records everything that was ticked, in however many homes, as one. */
export const recordTicked = action<TickedForm, Recorded>({
  name: 'record-ticked',
  needs: 'account',
  parse: parseTicked,
  run: async (sent) => {
    const recorded = await recordTheTicked(sent)
    if (recorded.ok) refresh()
    return recorded
  },
})

/** Takes back what one press recorded. */
export const undoTicked = action<{ householdId: string; entryId: string }[], TakenBack>({
  name: 'undo-ticked',
  needs: 'account',
  parse: parseEntries,
  run: async ({ input, act }) => {
    const undone = await undoTogether(act, input)
    if (!undone.ok) return undone
    refresh()
    const say = `${plural(undone.outcomes.length, 'record')} taken back. The log keeps both.`
    return { ok: true, done: { say, entries: entriesText(undone.outcomes) } }
  },
})
