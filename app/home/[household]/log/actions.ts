'use server'

import { redirect } from 'next/navigation'
import { action, type Ran } from '@/lib/access/action'
import { today } from '@/lib/clock'
import { getHousehold } from '@/lib/data/households'
import { takeBackPause } from '@/lib/data/pauses'
import { correctRecord, undoRecord } from '@/lib/data/records'
import { logQueryText, parseLogQuery } from '@/lib/forms/log-filter'
import { parseRecordForm } from '@/lib/forms/record-form'

const GONE = 'This home is closed, or is no longer yours to record in. Go back to your homes.'

function refused(answer: { because: string; faults?: { path: string; say: string }[] }): Ran<null> {
  return { ok: false, faults: answer.faults ?? [{ path: '', say: GONE }] }
}

/** Takes an entry back, and comes back to the log as it was filtered. */
export const undoInLog = action<{ entry: string; back: string }>({
  name: 'log-undo',
  needs: 'member',
  parse: (form) => {
    // Read and written anew: whatever a form says, it leads nowhere but to this log.
    const { query } = parseLogQuery(new URLSearchParams(String(form.get('back') ?? '')))
    return { ok: true, value: { entry: String(form.get('entry') ?? ''), back: logQueryText(query) } }
  },
  run: async ({ input: { entry, back }, act, householdId }) => {
    const undone = await undoRecord(act, householdId, entry)
    if (!undone.ok) return refused(undone)
    redirect(`/home/${householdId}/log${back || '?'}${back ? '&' : ''}did=undone#entry-${entry}`)
  },
})

/** Takes back that something was put off, or that nobody is at home. */
export const takeBackInLog = action<{ pause: string; back: string }>({
  name: 'log-pause-undo',
  needs: 'member',
  parse: (form) => {
    const { query } = parseLogQuery(new URLSearchParams(String(form.get('back') ?? '')))
    return { ok: true, value: { pause: String(form.get('pause') ?? ''), back: logQueryText(query) } }
  },
  run: async ({ input: { pause, back }, act, householdId }) => {
    const undone = await takeBackPause(act, householdId, pause)
    if (!undone.ok) return refused(undone)
    redirect(`/home/${householdId}/log${back || '?'}${back ? '&' : ''}did=undone#entry-${pause}`)
  },
})

/** Puts a corrected entry in the place of an earlier one. */
export const correctEntry = action<FormData>({
  name: 'log-correct',
  needs: 'member',
  // What the form means depends on today in the home's own zone, which only its row knows; so it is read in `run`.
  parse: (form) => ({ ok: true, value: form }),
  run: async ({ input, act, viewer, householdId }) => {
    const { household } = await getHousehold(viewer, householdId)
    const parsed = parseRecordForm(input, today(household.timeZone))
    if (!parsed.ok) return parsed
    const corrected = await correctRecord(act, householdId, String(input.get('entry') ?? ''), parsed.value)
    if (!corrected.ok) return refused(corrected)
    redirect(`/home/${householdId}/log?did=corrected#entry-${corrected.entry.id}`)
  },
})
