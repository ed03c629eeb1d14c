import { type Day, dayNumber } from './day'
import { systemLooks } from './filter'
import { historyOf } from './history'
import type { DustStart, Household } from './household'
import { type Evidence, evidenceOf } from './learning'
import { dustStart, type Pool, poolOf } from './pooling'
import { Profiles } from './profile'
import { systemDays } from './system-days'
import type { Tables } from './tables'

/** What looks at the filters of one system tell; null where there are none that tell. */
export interface SystemEvidence {
  system: string
  evidence: Evidence | null
}

/** What each system of a household can tell others of the dust in its home, on a day. */
export function evidenceAmong(
  home: Household,
  tables: Tables,
  on: Day,
  profiles = new Profiles(tables.figures),
): SystemEvidence[] {
  const isSeen = home.records.some((record) => record.kind !== 'service-done' && record.light !== undefined)
  const history = historyOf(home)
  const day = dayNumber(on)
  return home.systems.map((system) => {
    if (!isSeen) return { system: system.id, evidence: null }
    // A start told by others is not evidence: only what was seen here is.
    const looks = systemLooks(systemDays(home, system, day, tables, profiles), history.filter, day, tables)
    return { system: system.id, evidence: evidenceOf(looks, tables.figures) }
  })
}

/** Where each system of a household starts, told by the others of a pool; none where nobody else tells. */
export function startsFrom(pool: Pool, own: readonly SystemEvidence[]): Map<string, DustStart> {
  return new Map(
    own.flatMap(({ system, evidence }) => {
      const prior = pool.startFor(evidence)
      return prior ? [[system, dustStart(prior)] as const] : []
    }),
  )
}

/** Model 1.1: the same households, each system with the start that all the others of these households tell it. */
export function pooledHomes(
  homes: readonly Household[],
  tables: Tables,
  on: Day | ((home: Household) => Day),
): Household[] {
  const profiles = new Profiles(tables.figures)
  const all = homes.map((home) => ({
    home,
    own: evidenceAmong(home, tables, typeof on === 'string' ? on : on(home), profiles),
  }))
  const pool = poolOf(
    all.flatMap(({ own }) => own.flatMap(({ evidence }) => evidence ?? [])),
    tables.figures,
  )
  return all.map(({ home, own }) => withStarts(home, startsFrom(pool, own)))
}

/** A household with these starts and no others. */
export function withStarts(home: Household, starts: ReadonlyMap<string, DustStart>): Household {
  return {
    ...home,
    systems: home.systems.map(({ dustStart: _before, ...system }) => {
      const start = starts.get(system.id)
      return start ? { ...system, dustStart: start } : system
    }),
  }
}
