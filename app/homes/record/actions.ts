'use server'

import { refresh } from 'next/cache'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { plural } from '@/lib/core/day-words'
import { listHomes } from '@/lib/data/households'
import { recordTogether, undoTogether } from '@/lib/data/record-together'
import { parseEntries, parseTicked, recordOfTick, type TickedForm } from '@/lib/forms/ticked-form'
import { entriesText, type Recorded, saidOf, type TakenBack } from './said'

/** Records everything that was ticked, in however many homes, as one. */
export const recordTicked = action<TickedForm, Recorded>({
  name: 'record-ticked',
  needs: 'account',
  parse: parseTicked,
  run: async ({ input: { on, ticked, once }, act, viewer }) => {
    const homes = new Map((await listHomes(viewer)).map((home) => [home.id, home]))
    const ahead = ticked.some(({ householdId }) => on > today(homes.get(householdId)?.timeZone ?? 'UTC'))
    if (ahead)
      return {
        ok: false,
        faults: [{ path: 'on', say: 'Choose today or an earlier day: only what has happened counts.' }],
      }
    const recorded = await recordTogether(
      act,
      ticked.map((tick) => ({
        householdId: tick.householdId,
        record: recordOfTick(tick, on),
        key: `${once} ${tick.task} ${tick.subject}`,
      })),
    )
    if (!recorded.ok) {
      const say = (path: string) => (homes.get(path) ? `${homes.get(path)?.name}: ` : '')
      return {
        ok: false,
        faults: recorded.faults.map((fault) => ({ path: '', say: `${say(fault.path)}${fault.say}` })),
      }
    }
    refresh()
    return { ok: true, done: saidOf(recorded.outcomes, (id) => homes.get(id)?.name ?? id) }
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
