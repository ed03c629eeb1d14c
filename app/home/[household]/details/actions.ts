'use server'

import { redirect } from 'next/navigation'
import { DESCRIBE_TABLES } from '@/app/describe/tables'
import { refused } from '@/app/refusal'
import { tables } from '@/content/tables'
import { action } from '@/lib/access/action'
import { today } from '@/lib/clock'
import type { PlanChange } from '@/lib/core/plan-changes'
import { planChanges } from '@/lib/core/plan-changes'
import { getHousehold } from '@/lib/data/households'
import { saveContacts, saveHousehold, saveNotes } from '@/lib/data/save-household'
import { Answers, type Typed, typedOf } from '@/lib/forms/describe/answers'
import { applyPart } from '@/lib/forms/describe/apply'
import { readContacts } from '@/lib/forms/describe/contacts'
import { sizeSaid } from '@/lib/forms/describe/filter'
import { type Edit, parseEdit } from '@/lib/forms/describe/parse-edit'

/** What an edit answers before it is saved; `typed` is carried from one to the next. */
export interface Edited {
  kind: 'preview' | 'conflict' | 'again' | 'size' | 'more'
  typed: Typed
  remove: boolean
  revision: number
  changes: PlanChange[]
  /** `size`: the name of the size, and what is odd about it. */
  said: string[]
}

/** Shows what a change does to the dates, and saves it when that was seen. */
export const editDetails = action<Edit, Edited>({
  name: 'edit-details',
  needs: 'manage',
  parse: parseEdit,
  run: async ({ input, act, viewer, householdId }) => {
    const { part, button, typed, revision } = input
    const stored = await getHousehold(viewer, householdId)
    const edited: Edited = { kind: 'preview', typed, remove: part.remove, revision, changes: [], said: [] }
    if (button === 'again' || button === 'more') return { ok: true, done: { ...edited, kind: button, remove: false } }
    if (button === 'size') {
      const said = sizeSaid(typed, DESCRIBE_TABLES.commonSizes)
      return said.ok ? { ok: true, done: { ...edited, kind: 'size', said: said.value } } : said
    }
    const on = today(stored.household.timeZone)
    const applied = applyPart(stored.household, part, typed, { tables: DESCRIBE_TABLES, on })
    if (!applied.ok) return applied
    const home = applied.value
    const changes = () => planChanges(stored.household, home, tables, on)
    if (button !== 'save') return { ok: true, done: { ...edited, changes: changes() } }
    const saved = await saveHousehold(act, householdId, home, revision)
    if (saved.ok) redirect(`/home/${householdId}/details?saved=${part.group}`)
    if (saved.because === 'changed') {
      const now = saved.current
      const again = applyPart(now.household, part, typed, { tables: DESCRIBE_TABLES, on })
      if (!again.ok) return again
      const moved = planChanges(now.household, again.value, tables, on)
      return { ok: true, done: { ...edited, kind: 'conflict', revision: now.revision, changes: moved } }
    }
    return refused(saved.because)
  },
})

/** Saves whom to call, how to get in, and where each filter is. */
export const editContacts = action({
  name: 'edit-contacts',
  needs: 'manage',
  parse: (form) => {
    const typed = typedOf(form)
    const read = readContacts(typed)
    return read.ok ? { ok: true, value: { ...read.value, typed } } : read
  },
  run: async ({ input, act, viewer, householdId }) => {
    const stored = await getHousehold(viewer, householdId)
    if (stored.household.emergencyNumber !== input.emergencyNumber) {
      const { emergencyNumber: _, ...rest } = stored.household
      const home = input.emergencyNumber ? { ...rest, emergencyNumber: input.emergencyNumber } : rest
      const saved = await saveHousehold(act, householdId, home, stored.revision)
      if (!saved.ok) {
        if (saved.because !== 'changed') return refused(saved.because)
        return {
          ok: false,
          faults: [{ path: '', say: 'Somebody else changed this home at this moment. Nothing is lost: save again.' }],
        }
      }
    }
    // Further contacts of a kind, which the form has no room for, stay.
    const firsts = new Set(input.contacts.map(({ kind }) => stored.contacts.find((one) => one.kind === kind)?.id))
    const shown = new Set(
      stored.contacts
        .filter((one, at, all) => all.findIndex(({ kind }) => kind === one.kind) === at)
        .map(({ id }) => id),
    )
    const further = stored.contacts.filter(({ id }) => !firsts.has(id) && !shown.has(id))
    const contacts = await saveContacts(act, householdId, [...input.contacts, ...further])
    if (!contacts.ok && contacts.because !== 'changed') return refused(contacts.because)
    const answers = new Answers(input.typed)
    const placeNotes = Object.fromEntries(
      stored.household.filters.map(({ id }) => [id, answers.text(`note-${id}`).slice(0, 1000)]),
    )
    const notes = await saveNotes(act, householdId, { accessNote: input.accessNote, placeNotes })
    if (!notes.ok && notes.because !== 'changed') return refused(notes.because)
    redirect(`/home/${householdId}/details?saved=contacts`)
  },
})
