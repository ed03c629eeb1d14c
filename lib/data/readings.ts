import type { Reading } from '@/lib/core/household'
import { clashingReadings, spanOf } from '@/lib/core/reading-spans'
import type { Act, Viewer } from '@/lib/core/viewer'
import { ask, type Questions, together } from './connection'
import { readingRow } from './household-rows'
import { readingValue } from './household-values'
import { insertRows } from './insert'
import { newId } from './new-id'
import { findRole, type Refusal, raise, signature } from './scope'

export const MEASURING_KINDS = ['thermostat', 'hour-meter', 'bill', 'taken-out'] as const
export type MeasuringKind = (typeof MEASURING_KINDS)[number]

/** What was brought or taken out at once. */
export interface Measuring {
  id: string
  kind: MeasuringKind
  system: string
  from: string
  to: string
  byName: string
  at: string
  undone: { at: string; by: string } | null
}

/** `changed`: one of the readings is gone meanwhile, or another that measures the same came in between. */
export type Measured = { ok: true; id: string; revision: number } | Refusal | { ok: false; because: 'changed' }

class ChangedMeanwhile extends Error {}

/** The readings of a household that stand, with our ids, in their order; empty for someone else's. */
export function listReadings(viewer: Viewer, householdId: string): Promise<{ id: string; reading: Reading }[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    const rows = await db.reading.findMany({ where: { householdId, removedBy: null }, orderBy: { position: 'asc' } })
    return rows.map((row) => ({ id: row.id, reading: readingValue(row) }))
  })
}

/** What was brought and taken out, the latest first; empty for someone else's. */
export function listMeasurings(viewer: Viewer, householdId: string): Promise<Measuring[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    const rows = await db.measuring.findMany({ where: { householdId }, orderBy: [{ at: 'desc' }, { id: 'desc' }] })
    return rows.map(({ undoneAt, undoneBy, kind, ...row }) => ({
      ...{ id: row.id, kind: kind as MeasuringKind, system: row.system, from: row.from, to: row.to },
      ...{ byName: row.byName, at: row.at, undone: undoneAt === null ? null : { at: undoneAt, by: undoneBy ?? '' } },
    }))
  })
}

/** One thing that was brought or taken out, and the readings as they were without it; null where there is none. */
export function findMeasuring(
  viewer: Viewer,
  householdId: string,
  measuringId: string,
): Promise<{ kind: MeasuringKind; isUndone: boolean; before: Reading[] } | null> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return null
    const found = await db.measuring.findFirst({ where: { householdId, id: measuringId } })
    if (!found) return null
    const rows = await db.reading.findMany({ where: { householdId }, orderBy: { position: 'asc' } })
    const before = rows.filter(
      ({ addedBy, removedBy }) => addedBy !== measuringId && (removedBy === null || removedBy === measuringId),
    )
    return { kind: found.kind as MeasuringKind, isUndone: found.undoneAt !== null, before: before.map(readingValue) }
  })
}

/** Takes readings out and brings others, all of it or nothing, as one thing that can be taken back. */
export function changeReadings(
  act: Act,
  householdId: string,
  { kind, add, remove }: { kind: MeasuringKind; add: readonly Reading[]; remove: readonly string[] },
): Promise<Measured> {
  return changing(act, householdId, async (tx) => {
    const going = await tx.reading.findMany({ where: { householdId, id: { in: [...remove] }, removedBy: null } })
    if (going.length !== remove.length) throw new ChangedMeanwhile()
    const id = newId()
    const about = [...add, ...going]
    if (about.length === 0) throw new ChangedMeanwhile()
    await tx.measuring.create({
      data: {
        ...{ id, householdId, kind, system: about[0]?.system ?? '' },
        ...spanOf(about),
        ...{ ...signature(act.viewer), at: act.at, door: act.door },
      },
    })
    await tx.reading.updateMany({ where: { householdId, id: { in: [...remove] } }, data: { removedBy: id } })
    const last = await tx.reading.aggregate({ where: { householdId }, _max: { position: true } })
    const begin = (last._max.position ?? -1) + 1
    await insertRows(
      tx,
      'Reading',
      add.map((reading, i) => ({ id: newId(), householdId, position: begin + i, ...readingRow(reading), addedBy: id })),
    )
    return id
  })
}

/** Takes back what was brought or taken out at once. One that is taken back already is no fault. */
export function undoMeasuring(act: Act, householdId: string, measuringId: string): Promise<Measured> {
  return changing(act, householdId, async (tx) => {
    const found = await tx.measuring.findFirst({ where: { householdId, id: measuringId } })
    if (!found) throw new ChangedMeanwhile()
    if (found.undoneAt !== null) return measuringId
    const brought = await tx.reading.findMany({ where: { householdId, addedBy: measuringId } })
    // What it brought was replaced since: that has to be taken back first.
    if (brought.some(({ removedBy }) => removedBy !== null)) throw new ChangedMeanwhile()
    await tx.reading.updateMany({ where: { householdId, removedBy: measuringId }, data: { removedBy: null } })
    await tx.reading.updateMany({ where: { householdId, addedBy: measuringId }, data: { removedBy: measuringId } })
    const undone = { undoneAt: act.at, undoneBy: signature(act.viewer).byName }
    await tx.measuring.update({ where: { id: measuringId }, data: undone })
    return measuringId
  })
}

/** Takes one reading out; `changed` where it is gone already. */
export function removeReading(act: Act, householdId: string, readingId: string): Promise<Measured> {
  return changeReadings(act, householdId, { kind: 'taken-out', add: [], remove: [readingId] })
}

async function changing(act: Act, householdId: string, deed: (tx: Questions) => Promise<string>): Promise<Measured> {
  try {
    return await together(async (tx) => {
      const raised = await raise(tx, act.viewer, householdId, { deed: 'manage' })
      if (!raised.ok) return raised
      const id = await deed(tx)
      const standing = await tx.reading.findMany({ where: { householdId, removedBy: null } })
      // Thrown, so that nothing of it stays: no day is measured twice, whoever came in between.
      if (clashingReadings(standing.map(readingValue))) throw new ChangedMeanwhile()
      return { ok: true, id, revision: raised.revision }
    })
  } catch (error) {
    if (error instanceof ChangedMeanwhile) return { ok: false, because: 'changed' }
    throw error
  }
}
