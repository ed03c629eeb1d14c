import { plans } from '@/app/plans'
import { tables } from '@/content/tables'
import type { Day } from '@/lib/core/day'
import type { DustStart } from '@/lib/core/household'
import type { Evidence, Theta } from '@/lib/core/learning'
import { evidenceAmong } from '@/lib/core/pooled-homes'
import { type PooledPrior, poolOf } from '@/lib/core/pooling'
import type { Viewer } from '@/lib/core/viewer'
import type { StoredHousehold } from '@/lib/data/households'
import { keepPlans } from '@/lib/data/kept-plans'

/** What one system's looks tell, and what is believed of its dust with everything taken together. */
export interface LearntSystem {
  home: string
  /** The home's name, with the system's where it has several. */
  name: string
  building: string | null
  evidence: Evidence | null
  start: DustStart | undefined
  /** Null where no filter of it has a loading model. */
  theta: Theta | null
}

const kept = keepPlans<LearntSystem[]>(digest, { version: tables.version })

function digest(stored: StoredHousehold, on: Day): LearntSystem[] {
  const { household } = stored
  const told = new Map(evidenceAmong(household, tables, on).map(({ system, evidence }) => [system, evidence]))
  const { workings } = plans.of(stored, on)
  return household.systems.map(({ id, name, dustStart }) => {
    const filters = household.filters.filter(({ system }) => system === id).map((filter) => filter.id)
    return {
      home: stored.id,
      name: household.systems.length > 1 ? `${stored.name}, ${name}` : stored.name,
      building: stored.building,
      evidence: told.get(id) ?? null,
      start: dustStart,
      theta: workings.find(({ filter, theta }) => theta !== null && filters.includes(filter))?.theta ?? null,
    }
  })
}

/** What the looks in all homes that a viewer owns tell together. */
export interface Learnt {
  systems: number
  /** Those whose looks tell something, the surest first. */
  seen: (LearntSystem & { evidence: Evidence })[]
  /** Where a system without looks would start; null where nobody tells anything. */
  start: PooledPrior | null
}

/** Everything learnt in the open homes that the viewer owns. */
export async function learntBy(viewer: Viewer, today: (timeZone: string) => Day): Promise<Learnt> {
  const homes = await kept.list(viewer, ({ timeZone }) => today(timeZone))
  const systems = homes
    .filter(({ home }) => home.role === 'owner' && home.state === 'open')
    .flatMap(({ plan }) => plan)
    .filter(({ theta }) => theta !== null)
  const seen = systems
    .flatMap((system) => (system.evidence ? [{ ...system, evidence: system.evidence }] : []))
    .sort((a, b) => a.evidence.variance - b.evidence.variance)
  const pool = poolOf(
    seen.map(({ evidence }) => evidence),
    tables.figures,
  )
  return { systems: systems.length, seen, start: pool.startFor(null) }
}
