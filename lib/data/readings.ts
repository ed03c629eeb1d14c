import type { Reading } from '@/lib/core/household'
import type { Act, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { readingRow } from './household-rows'
import { readingValue } from './household-values'
import { insertRows } from './insert'
import { newId } from './new-id'
import { findRole, type Refusal, raise } from './scope'

/** The readings of a household with our ids, in their order; empty for someone else's. */
export function listReadings(viewer: Viewer, householdId: string): Promise<{ id: string; reading: Reading }[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    const rows = await db.reading.findMany({ where: { householdId }, orderBy: { position: 'asc' } })
    return rows.map((row) => ({ id: row.id, reading: readingValue(row) }))
  })
}

/** Adds one reading at the end. */
export function addReading(
  act: Act,
  householdId: string,
  reading: Reading,
): Promise<{ ok: true; id: string; revision: number } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const last = await tx.reading.aggregate({ where: { householdId }, _max: { position: true } })
    const id = newId()
    await insertRows(tx, 'Reading', [
      { id, householdId, position: (last._max.position ?? -1) + 1, ...readingRow(reading) },
    ])
    return { ok: true, id, revision: raised.revision }
  })
}

/** Takes one reading out; one that is gone already is no fault. */
export function removeReading(
  act: Act,
  householdId: string,
  readingId: string,
): Promise<{ ok: true; revision: number } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'manage' })
    if (!raised.ok) return raised
    await tx.reading.deleteMany({ where: { householdId, id: readingId } })
    return { ok: true, revision: raised.revision }
  })
}
