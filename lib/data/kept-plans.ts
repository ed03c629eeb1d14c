import type { Day } from '@/lib/core/day'
import type { Viewer } from '@/lib/core/viewer'
import { type Home, listHomes, listHouseholds, type StoredHousehold } from './households'

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
  const kept = new Map<string, { key: string; plan: P }>()

  function find(home: Home, on: Day): { plan: P } | undefined {
    const found = kept.get(home.id)
    if (found?.key !== keyOf(home, on)) return undefined
    // Set anew, it is the last that goes.
    kept.delete(home.id)
    kept.set(home.id, found)
    return { plan: found.plan }
  }

  function keyOf(home: Home, on: Day): string {
    return `${home.revision} ${on} ${version}`
  }

  function of(household: StoredHousehold, on: Day): P {
    const found = find(household, on)
    if (found) return found.plan
    const made = plan(household, on)
    kept.delete(household.id)
    kept.set(household.id, { key: keyOf(household, on), plan: made })
    for (const oldest of kept.keys()) {
      if (kept.size <= limit) break
      kept.delete(oldest)
    }
    return made
  }

  async function list(viewer: Viewer, today: (home: Home) => Day): Promise<Planned<P>[]> {
    const homes = await listHomes(viewer)
    const plans = new Map<string, Omit<Planned<P>, 'home'> | undefined>(
      homes.map((home) => [home.id, find(home, today(home))]),
    )
    const missing = homes.filter(({ id }) => !plans.get(id)).map(({ id }) => id)
    for (const household of missing.length > 0 ? await listHouseholds(viewer, missing) : []) {
      plans.set(household.id, { plan: of(household, today(household)), stored: household })
    }
    return homes.flatMap((home) => {
      const found = plans.get(home.id)
      return found ? [{ home, ...found }] : []
    })
  }

  return { of, list }
}
