import type { Questions } from './connection'
import type { RecordRow } from './record-rows'
import { markProfile } from './scope'

interface Kept extends RecordRow {
  id: string
  position: number
  beforeMedium: string | null
  beforeMerv: number | null
}

/**
 * A change that says what went in is also what `filters` states from then on, unless a later change stands. Gives what
 * it took out, to be kept with the entry, or nulls.
 */
export async function putIn(
  tx: Questions,
  householdId: string,
  row: RecordRow,
): Promise<{ beforeMedium: string | null; beforeMerv: number | null }> {
  const nothing = { beforeMedium: null, beforeMerv: null }
  if (row.kind !== 'filter-changed' || row.fittedMedium === null) return nothing
  const later = await tx.entry.count({
    where: { householdId, kind: row.kind, subject: row.subject, on: { gt: row.on }, undoneAt: null, correctedBy: null },
  })
  const filter = await tx.filter.findUnique({ where: { householdId_id: { householdId, id: row.subject } } })
  if (later > 0 || !filter || (filter.medium === row.fittedMedium && filter.merv === row.fittedMerv)) return nothing
  await setFilter(tx, householdId, row.subject, row.fittedMedium, row.fittedMerv)
  return { beforeMedium: filter.medium, beforeMerv: filter.merv }
}

/** Puts back what an undone or corrected change had taken out, unless something else is in place by now. */
export async function takeOut(tx: Questions, householdId: string, entry: Kept): Promise<void> {
  if (entry.beforeMedium === null || entry.fittedMedium === null) return
  const before = { medium: entry.beforeMedium, merv: entry.beforeMerv }
  const filter = await tx.filter.findUnique({ where: { householdId_id: { householdId, id: entry.subject } } })
  if (filter?.medium === entry.fittedMedium && filter.merv === entry.fittedMerv) {
    await setFilter(tx, householdId, entry.subject, before.medium, before.merv)
  }
  // A later change that took this one out took, as it now turns out, what was there before.
  await tx.entry.updateMany({
    where: {
      ...{ householdId, subject: entry.subject, position: { gt: entry.position } },
      ...{ beforeMedium: entry.fittedMedium, beforeMerv: entry.fittedMerv },
    },
    data: { beforeMedium: before.medium, beforeMerv: before.merv },
  })
}

async function setFilter(tx: Questions, householdId: string, id: string, medium: string, merv: number | null) {
  await tx.filter.update({ where: { householdId_id: { householdId, id } }, data: { medium, merv } })
  await markProfile(tx, householdId)
}
