import type { Day } from '@/lib/core/day'
import type { Act, Door, Instant, Viewer } from '@/lib/core/viewer'
import type { KeyedEvent } from '@/lib/guide/booking'
import type { EpisodeKind } from '@/lib/guide/episode'
import { ask, together } from './connection'
import { newId } from './new-id'
import { findRole, type Refusal, raise, signature } from './scope'

/** One event to be written down. `key` names the step of the walk it came from: sent twice, it is one event. */
export interface NewEpisodeEvent {
  kind: EpisodeKind
  on: Day
  /** Minutes since 1970-01-01T00:00Z. */
  minute: number
  key: string
  note?: string
}

/** An event as it stands in the log: by whom, and what they wrote beside it. */
export interface StoredEpisodeEvent extends KeyedEvent {
  byName: string
  note: string | null
  writtenAt: Instant
  door: Door
}

/**
 * Writes down what happened in a trouble, all of it or nothing; durable when it answers. A closed household takes it
 * too: a hazard met there is still one.
 */
export function recordEpisode(
  act: Act,
  householdId: string,
  events: readonly NewEpisodeEvent[],
): Promise<{ ok: true; written: number } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record', evenClosed: true })
    if (!raised.ok) return raised
    let written = 0
    for (const { kind, on, minute, key, note } of events) {
      const known = await tx.episodeEvent.findUnique({ where: { householdId_key: { householdId, key } } })
      if (known) continue
      const row = { id: newId(), householdId, kind, on, minute, key, note: note ?? null }
      await tx.episodeEvent.create({ data: { ...row, at: act.at, door: act.door, ...signature(act.viewer) } })
      written++
    }
    return { ok: true, written }
  })
}

/** Everything that was ever written down of a household's troubles, the oldest first; empty for someone else's. */
export function listEpisode(viewer: Viewer, householdId: string): Promise<StoredEpisodeEvent[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    const rows = await db.episodeEvent.findMany({
      where: { householdId },
      orderBy: [{ minute: 'asc' }, { at: 'asc' }, { key: 'asc' }],
    })
    return rows.map(({ kind, on, minute, key, byName, note, at, door }) => ({
      kind: kind as EpisodeKind,
      on,
      at: minute,
      key,
      byName,
      note,
      writtenAt: at,
      door: door as Door,
    }))
  })
}
