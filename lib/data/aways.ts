import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import { pauseFault } from '@/lib/core/pause'
import type { Act, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { endPauses, notePause } from './pauses'
import { findRole, type Refusal, raise, signature } from './scope'

/** Nobody is at home from one day until another, on which somebody is back. */
export interface Away {
  from: Day
  until: Day
  byName: string
}

/** Until when nobody is at home, or null; null too for someone else's home. */
export function findAway(viewer: Viewer, householdId: string): Promise<Away | null> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return null
    return db.away.findUnique({ where: { householdId }, select: { from: true, until: true, byName: true } })
  })
}

/** The same for many homes at once, by household: for a job that has asked which ones it may see. */
export async function listAways(householdIds: string[]): Promise<Map<string, Away>> {
  const rows = await ask((db) => db.away.findMany({ where: { householdId: { in: householdIds } } }))
  return new Map(rows.map(({ householdId, from, until, byName }) => [householdId, { from, until, byName }]))
}

type Done = { ok: true; revision: number } | Refusal | { ok: false; because: 'fault'; faults: Fault[] }

/** Says that nobody is at home until a day; a later word takes the place of an earlier one. */
export function saveAway(act: Act, householdId: string, { today, until }: { today: Day; until: Day }): Promise<Done> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const fault = pauseFault(until, today)
    if (fault) return { ok: false, because: 'fault', faults: [{ path: 'until', say: fault }] }
    const before = await tx.away.findUnique({ where: { householdId } })
    // Whoever stays away longer has been away since the first day.
    const from = before && before.until > today ? before.from : today
    const row = { from, until, at: act.at, ...signature(act.viewer) }
    await tx.away.upsert({ where: { householdId }, create: { householdId, ...row }, update: row })
    await notePause(tx, act, householdId, { kind: 'away', from, until })
    return { ok: true, revision: raised.revision }
  })
}

/** Says that somebody is at home again. */
export function clearAway(act: Act, householdId: string): Promise<Done> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    await tx.away.deleteMany({ where: { householdId } })
    await endPauses(tx, act, householdId, { kind: 'away' })
    return { ok: true, revision: raised.revision }
  })
}
