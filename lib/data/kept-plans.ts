import type { Day } from '@/lib/core/day'
import type { Viewer } from '@/lib/core/viewer'
import { type Home, listHomes, readInParts, type StoredHousehold } from './households'

/** A home with its plan, and everything about it where that had to be read. */
export interface Planned<P> {
  home: Home
  plan: P
  stored?: StoredHousehold
}

/** Plans kept by household, revision, day and model version. */
export interface KeptPlans<P> {
  /** The plan of a household already at hand. */
  of(household: StoredHousehold, on: Day): P
  /**
   * Every home that the viewer sees with its plan; only those that changed since are read and planned, and come with
   * what was read.
   */
  list(viewer: Viewer, today: (home: Home) => Day): Promise<Planned<P>[]>
}

/**
 * Keeps what `plan` made for up to `limit` households in this process; the one not asked for the longest goes first.
 * A write raises the revision, a new day and a new model have other keys: nothing has to be thrown away by hand.
 */
export function keepPlans<P>(
  plan: (household: StoredHousehold, on: Day) => P,
  { version, limit = 20_000 }: { version: string | number; limit?: number },
): KeptPlans<P> {
  const kept = new Map<string, { revision: number; on: Day; version: string | number; plan: P }>()

  function find({ id, revision }: Home, on: Day): { plan: P } | undefined {
    const found = kept.get(id)
    if (found?.revision !== revision || found.on !== on || found.version !== version) return undefined
    // Set anew, it is the last that goes; while there is room for all, that would only cost time.
    if (kept.size > limit / 2) {
      kept.delete(id)
      kept.set(id, found)
    }
    return found
  }

  function of(household: StoredHousehold, on: Day): P {
    const found = find(household, on)
    if (found) return found.plan
    const made = plan(household, on)
    kept.delete(household.id)
    kept.set(household.id, { revision: household.revision, on, version, plan: made })
    for (const oldest of kept.keys()) {
      if (kept.size <= limit) break
      kept.delete(oldest)
    }
    return made
  }

  async function list(viewer: Viewer, today: (home: Home) => Day): Promise<Planned<P>[]> {
    const homes = await listHomes(viewer)
    const found = homes.map((home): Omit<Planned<P>, 'home'> | undefined => find(home, today(home)))
    const missing = homes.filter((_, i) => !found[i]).map(({ id }) => id)
    const made = new Map<string, Omit<Planned<P>, 'home'>>()
    for await (const part of readInParts(viewer, missing))
      for (const household of part) made.set(household.id, { plan: of(household, today(household)), stored: household })
    // A home that is gone since the list was read has neither.
    return homes.flatMap((home, i) => {
      const planned = found[i] ?? made.get(home.id)
      return planned ? [{ home, plan: planned.plan, ...(planned.stored && { stored: planned.stored }) }] : []
    })
  }

  return { of, list }
}
