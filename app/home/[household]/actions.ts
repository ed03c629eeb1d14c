'use server'

import { redirect } from 'next/navigation'
import { action, type Ran } from '@/lib/access/action'
import { today } from '@/lib/clock'
import type { Day } from '@/lib/core/day'
import type { LogRecord, Task } from '@/lib/core/household'
import type { Viewer } from '@/lib/core/viewer'
import { getHousehold } from '@/lib/data/households'
import { clearPutOff, putOff } from '@/lib/data/put-offs'
import { addRecord, undoRecord } from '@/lib/data/records'
import { parsePutOffForm, parseRecordForm } from '@/lib/forms/record-form'

const GONE = 'This home is closed, or is no longer yours to record in. Go back to your homes.'

// What the form means depends on today in the home's own zone, which only its row knows; so it is read in `run`.
const asSent = (form: FormData) => ({ ok: true, value: form }) as const

const NOT_BY_LINK = { path: '', say: 'A renter’s link records filters only. Write to the landlord about the rest.' }

/** The page to come back to: a renter's link has one of its own. */
function homeOf(viewer: Viewer, householdId: string): string {
  return viewer.kind === 'link' ? '/r' : `/home/${householdId}`
}

async function todayOf(viewer: Viewer, householdId: string): Promise<Day> {
  const { household } = await getHousehold(viewer, householdId)
  return today(household.timeZone)
}

function refused(answer: { because: string; faults?: { path: string; say: string }[] }): Ran<null> {
  return { ok: false, faults: answer.faults ?? [{ path: '', say: GONE }] }
}

/** Records what was done with one item. */
export const recordDone = action<FormData>({
  name: 'record-done',
  needs: 'resident',
  parse: asSent,
  run: async ({ input, act, viewer, householdId }) => {
    const parsed = parseRecordForm(input, await todayOf(viewer, householdId))
    if (!parsed.ok) return parsed
    if (viewer.kind === 'link' && parsed.value.kind === 'service-done') return { ok: false, faults: [NOT_BY_LINK] }
    const recorded = await addRecord(act, householdId, parsed.value satisfies LogRecord)
    if (!recorded.ok) return refused(recorded)
    redirect(`${homeOf(viewer, householdId)}?did=${recorded.outcome}&entry=${recorded.entry.id}`)
  },
})

/** Takes back what was recorded. */
export const undo = action<string>({
  name: 'record-undo',
  needs: 'resident',
  parse: (form) => ({ ok: true, value: String(form.get('entry') ?? '') }),
  run: async ({ input: entry, act, viewer, householdId }) => {
    const undone = await undoRecord(act, householdId, entry)
    if (!undone.ok) return refused(undone)
    redirect(`${homeOf(viewer, householdId)}?did=undone`)
  },
})

/** Puts an item off until a day. */
export const putItemOff = action<FormData>({
  name: 'put-off',
  needs: 'member',
  parse: asSent,
  run: async ({ input, act, viewer, householdId }) => {
    const on = await todayOf(viewer, householdId)
    const parsed = parsePutOffForm(input, on)
    if (!parsed.ok) return parsed
    const done = await putOff(act, householdId, { ...parsed.value, today: on })
    if (!done.ok) return refused(done)
    redirect(`/home/${householdId}?did=put-off`)
  },
})

/** Lets an item that was put off be heard of again. */
export const bringBack = action<{ task: Task; subject: string }>({
  name: 'put-off-clear',
  needs: 'member',
  parse: (form) => ({
    ok: true,
    value: { task: String(form.get('task')) as Task, subject: String(form.get('subject')) },
  }),
  run: async ({ input, act, householdId }) => {
    const done = await clearPutOff(act, householdId, input)
    if (!done.ok) return refused(done)
    redirect(`/home/${householdId}?did=back`)
  },
})
