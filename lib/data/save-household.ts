import type { Household } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { type Questions, together } from './connection'
import type { Contact, StoredHousehold } from './households'
import { readHouseholds } from './households'
import { insertRows } from './insert'
import { markProfile, type Raised, type Refusal, raise } from './scope'
import { writeDescription } from './write-description'

export type Saved =
  | { ok: true; revision: number }
  | Refusal
  | { ok: false; because: 'changed'; current: StoredHousehold }

class ChangedMeanwhile extends Error {}

/**
 * Saves what describes a home, as a whole. Its records and readings are left alone: they are added on their own, so
 * that nobody's entry is lost to somebody's edit. `expectedRevision` is the revision that the person saw: if the
 * description was changed since, nothing is saved and the answer holds what stands now.
 */
export async function saveHousehold(
  act: Act,
  householdId: string,
  household: Household,
  expectedRevision: number,
): Promise<Saved> {
  try {
    return await changing(act, householdId, async (tx, raised) => {
      // Thrown, so that the revision just raised is taken back as well.
      if (raised.profileAt > expectedRevision) throw new ChangedMeanwhile()
      await writeDescription(tx, householdId, household)
    })
  } catch (error) {
    if (!(error instanceof ChangedMeanwhile)) throw error
    const [current] = await together((tx) => readHouseholds(tx, act.viewer, [householdId]))
    return current ? { ok: false, because: 'changed', current } : { ok: false, because: 'not-found' }
  }
}

/** Saves notes in a person's own words: how to get in, and where each filter is. An empty one is removed. */
export function saveNotes(
  act: Act,
  householdId: string,
  { accessNote, placeNotes = {} }: { accessNote?: string; placeNotes?: Record<string, string> },
): Promise<Saved> {
  return changing(act, householdId, async (tx) => {
    if (accessNote !== undefined) {
      await tx.household.update({ where: { id: householdId }, data: { accessNote: accessNote || null } })
    }
    for (const [id, note] of Object.entries(placeNotes)) {
      await tx.filter.updateMany({ where: { householdId, id }, data: { placeNote: note || null } })
    }
  })
}

/** Saves whom to call, as a whole list. */
export function saveContacts(act: Act, householdId: string, contacts: Contact[]): Promise<Saved> {
  return changing(act, householdId, async (tx) => {
    await tx.contact.deleteMany({ where: { householdId } })
    await insertRows(
      tx,
      'Contact',
      contacts.map(({ id, kind, name, phone, email, note }, position) => ({
        householdId,
        position,
        id,
        kind,
        name,
        phone,
        email,
        note,
      })),
    )
  })
}

function changing(
  act: Act,
  householdId: string,
  deed: (tx: Questions, raised: Raised) => Promise<void>,
): Promise<Saved> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'manage' })
    if (!raised.ok) return raised
    await deed(tx, raised)
    await markProfile(tx, householdId)
    return { ok: true, revision: raised.revision }
  })
}
