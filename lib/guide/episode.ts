import { addYears, type Day } from '@/lib/core/day'
import type { Facts } from './replay'

/**
 * What is remembered of a trouble, per household or on the phone. `technician-visit` and `clearance` are recorded
 * by a person: a technician came and looked; a crew or technician said that the home or the unit is safe.
 */
export const EPISODE_KINDS = [
  'trouble-began',
  'start-spent',
  'trip',
  'hazard-leave',
  'hazard-stop',
  'technician-visit',
  'clearance',
  'imported',
] as const
export type EpisodeKind = (typeof EPISODE_KINDS)[number]

export interface EpisodeEvent {
  kind: EpisodeKind
  on: Day
  /** Minutes since 1970-01-01T00:00Z; orders events of one day. */
  at: number
}

export interface Episode {
  /** unknown: nothing is recorded, so it is asked. */
  resetUsed: 'no' | 'yes' | 'unknown'
  tripped: 'no' | 'yes'
  closedByHazard: 'no' | 'leave' | 'stop'
  /** When the budget fills again by itself, if it is spent and no new fault comes. */
  refillsOn: Day | null
}

const FAULTS: EpisodeKind[] = ['trouble-began', 'start-spent', 'trip', 'hazard-leave', 'hazard-stop', 'imported']

/** The day of the last thing that a professional's visit must come after; null: there was none. */
export function lastMetOn(events: readonly EpisodeEvent[]): Day | null {
  const met: EpisodeKind[] = ['start-spent', 'trip', 'hazard-leave', 'hazard-stop', 'imported']
  return events.findLast(({ kind }) => met.includes(kind))?.on ?? null
}

/**
 * One start for a trouble. It is refilled only by a recorded technician's visit, or twelve months after the last
 * fault. A hazard stays until a clearance is recorded: time alone never clears it, and a visit alone does not.
 * An import brings no memory, so that the start counts as used. A trip counts as a second one once a start was spent.
 */
export function episodeOn(events: readonly EpisodeEvent[], today: Day): Episode {
  const sorted = events.filter((event) => event.on <= today).sort((a, b) => a.at - b.at)
  let spent: 'no' | 'yes' | 'unknown' = 'unknown'
  let tripped = false
  let hazard: Episode['closedByHazard'] = 'no'
  let lastFault: Day | null = null
  for (const event of sorted) {
    if (lastFault !== null && addYears(lastFault, 1) <= event.on) {
      spent = 'unknown'
      tripped = false
    }
    if (FAULTS.includes(event.kind)) lastFault = event.on
    switch (event.kind) {
      case 'start-spent':
      case 'imported':
        spent = 'yes'
        break
      case 'trip':
        // The first trip is why the start is given; one after it ends the guide.
        if (spent === 'yes') tripped = true
        break
      case 'hazard-leave':
        hazard = 'leave'
        break
      case 'hazard-stop':
        if (hazard === 'no') hazard = 'stop'
        break
      case 'technician-visit':
        spent = 'no'
        tripped = false
        break
      case 'clearance':
        hazard = 'no'
        break
      case 'trouble-began':
        break
    }
  }
  const refillsOn = spent === 'yes' && lastFault !== null ? addYears(lastFault, 1) : null
  if (refillsOn !== null && refillsOn <= today)
    return { resetUsed: 'unknown', tripped: 'no', closedByHazard: hazard, refillsOn: null }
  return { resetUsed: spent, tripped: tripped ? 'yes' : 'no', closedByHazard: hazard, refillsOn }
}

/** The facts that a walk takes from the episode. "No" never spares a question: the guide asks all the same. */
export function episodeFacts(episode: Episode): Facts {
  return { resetUsed: episode.resetUsed, tripped: episode.tripped, hazardSeen: episode.closedByHazard }
}
