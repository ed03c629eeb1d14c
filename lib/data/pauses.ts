import type { Day } from '@/lib/core/day'
import type { Task } from '@/lib/core/household'
import type { Act, Door, Instant, Viewer } from '@/lib/core/viewer'
import { localDay } from '@/lib/core/zone'
import { ask, type Questions, together } from './connection'
import { newId } from './new-id'
import { findRole, type Refusal, raise, signature } from './scope'

/** What was paused: an item, put off; or the whole home, with nobody in it. */
export type Paused = { kind: 'put-off'; task: Task; subject: string } | { kind: 'away' }

/** A line of the log: something put off, or nobody at home, from the day on which it was said until another. */
export type PauseLine = Paused & {
  id: string
  from: Day
  until: Day
  by: { accountId: string | null; name: string }
  at: Instant
  door: Door
  /** Ended before its day, and by whom. */
  ended: { by: string; at: Instant } | null
  /** It counts now, and can be taken back. */
  running: boolean
}

/** Writes a pause into the log, in a transaction that is going on. */
export async function notePause(
  tx: Questions,
  act: Act,
  householdId: string,
  pause: Paused & { from: Day; until: Day },
): Promise<void> {
  const row = { id: newId(), householdId, ...pause, at: act.at, door: act.door, ...signature(act.viewer) }
  await tx.pause.create({ data: row })
}

/** Ends what still runs of a pause in the log: the item is heard of again, or somebody is back. */
export async function endPauses(tx: Questions, act: Act, householdId: string, paused: Paused): Promise<void> {
  const today = await todayIn(tx, householdId, act.at)
  const ended = { endedAt: act.at, endedBy: signature(act.viewer).byName }
  await tx.pause.updateMany({ where: { ...whose(householdId, paused), until: { gt: today } }, data: ended })
}

/** The pauses of a household, the latest first; empty for someone else's. */
export function listPauses(viewer: Viewer, householdId: string, at: Instant): Promise<PauseLine[]> {
  return ask(async (db) => {
    // They name people, as the whole log does.
    if (viewer.kind === 'link' || !(await findRole(db, viewer, householdId))) return []
    const today = await todayIn(db, householdId, at)
    const rows = await db.pause.findMany({ where: { householdId }, orderBy: [{ at: 'desc' }, { id: 'desc' }] })
    const counting = new Set<string>()
    return rows.map((row): PauseLine => {
      const { id, from, until, at, endedAt, endedBy } = row
      const paused = pausedOf(row)
      const key = JSON.stringify(paused)
      // A later one takes the place of an earlier.
      const isLatest = endedAt === null && !counting.has(key)
      if (isLatest) counting.add(key)
      return {
        ...paused,
        ...{ id, from, until, at, door: row.door as Door, by: { accountId: row.byAccount, name: row.byName } },
        ended: endedAt === null ? null : { by: endedBy ?? '', at: endedAt },
        running: isLatest && until > today,
      }
    })
  })
}

export type TakenBack =
  | { ok: true }
  | Refusal
  | { ok: false; because: 'fault'; faults: { path: string; say: string }[] }

/** Takes a pause back: what was said before it counts again, if its day has not come. It stays in the log, marked. */
export function takeBackPause(act: Act, householdId: string, id: string): Promise<TakenBack> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const row = await tx.pause.findFirst({ where: { householdId, id } })
    const today = await todayIn(tx, householdId, act.at)
    if (!row || row.endedAt !== null || row.until <= today) return over()
    const paused = pausedOf(row)
    const [latest, before] = await tx.pause.findMany({
      where: whose(householdId, paused),
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: 2,
    })
    if (latest?.id !== id) return over()
    await tx.pause.update({ where: { id }, data: { endedAt: act.at, endedBy: signature(act.viewer).byName } })
    await setCurrent(tx, householdId, paused, before && before.until > today ? before : null)
    return { ok: true }
  })
}

function over(): TakenBack {
  return {
    ok: false,
    because: 'fault',
    faults: [{ path: '', say: 'This is over or was changed meanwhile. Look at the log again.' }],
  }
}

type Row = Awaited<ReturnType<Questions['pause']['findFirstOrThrow']>>

async function setCurrent(tx: Questions, householdId: string, paused: Paused, row: Row | null): Promise<void> {
  const said = row && { until: row.until, at: row.at, byAccount: row.byAccount, byName: row.byName }
  if (paused.kind === 'away') {
    await tx.away.deleteMany({ where: { householdId } })
    if (row && said) await tx.away.create({ data: { householdId, from: row.from, ...said } })
    return
  }
  const { task, subject } = paused
  await tx.putOff.deleteMany({ where: { householdId, task, subject } })
  if (said) await tx.putOff.create({ data: { householdId, task, subject, ...said } })
}

function whose(householdId: string, paused: Paused) {
  return { householdId, ...paused, endedAt: null }
}

function pausedOf({ kind, task, subject }: Pick<Row, 'kind' | 'task' | 'subject'>): Paused {
  return kind === 'away' ? { kind } : { kind: 'put-off', task: task as Task, subject: subject ?? '' }
}

async function todayIn(tx: Questions, householdId: string, at: Instant): Promise<Day> {
  const found = await tx.household.findUniqueOrThrow({ where: { id: householdId }, select: { timeZone: true } })
  return localDay(at, found.timeZone)
}
