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
 * too: a hazard met there is still one. `seen` is how many events there were when the page was offered: a start that
 * somebody else may have given since is not booked, and `changed` says to look again.
 */
export function recordEpisode(
  act: Act,
  householdId: string,
  events: readonly NewEpisodeEvent[],
  { seen }: { seen?: number } = {},
): Promise<{ ok: true; written: number } | Refusal | { ok: false; because: 'changed' }> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record', evenClosed: true })
    if (!raised.ok) return raised
    const keys = events.map(({ key }) => key)
    const sent = await tx.episodeEvent.findMany({ where: { householdId, key: { in: keys } }, select: { key: true } })
    const known = new Set(sent.map(({ key }) => key))
    const fresh = events.filter(({ key }) => !known.has(key))
    // The household's row is held since `raise`: of two starts at one moment the second is counted after the first.
    if (seen !== undefined && fresh.some(({ kind }) => kind === 'start-spent')) {
      const all = await tx.episodeEvent.count({ where: { householdId } })
      if (all > seen) return { ok: false, because: 'changed' }
    }
    for (const { kind, on, minute, key, note } of fresh) {
      const row = { id: newId(), householdId, kind, on, minute, key, note: note ?? null }
      await tx.episodeEvent.create({ data: { ...row, at: act.at, door: act.door, ...signature(act.viewer) } })
    }
    return { ok: true, written: fresh.length }
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
