import type { Household } from '@/lib/core/household'
import type { Units } from '@/lib/core/unit-words'
import { encodeWalk, type Walk } from './address'
import { eventsBeside, type KeyedEvent } from './booking'
import { type Episode, episodeOn } from './episode'
import { DEFAULT_EMERGENCY_NUMBER } from './export'
import { guideFacts } from './household-facts'
import { type Replay, replay } from './replay'
import type { Flow } from './types'

/** Whom the household has noted to call. */
export interface GuideContact {
  kind: 'technician' | 'landlord' | 'gas-company' | 'other'
  name: string | null
  phone: string | null
}

/** A filter that a check of the guide may have been about. */
export interface GuideFilter {
  id: string
  system: string
  /** `wall grille, 20 × 25 × 1` */
  name: string
}

/** What the guide knows of a home; a phone keeps it for when the network is gone. */
export interface GuideHome {
  id: string
  name: string
  timeZone: string
  units: Units
  filters: GuideFilter[]
  profile: Pick<Household, 'tenure' | 'vulnerable' | 'systems'>
  emergencyNumber: string
  contacts: GuideContact[]
}

/** Where the guide is being used: in a home that is known here, or anywhere. Plain values, for server and phone. */
export interface GuidePlace {
  home: GuideHome | null
  /** The system that has the trouble; null: not chosen. */
  systemId: string | null
  /** What the household, or without one the phone, remembers. */
  events: KeyedEvent[]
  today: string
  /** Minutes since 1970-01-01T00:00Z. */
  now: number
}

/** A home of which only the id is known: every fact is the cautious one, and what is answered is sent to it later. */
export function unknownHome(id: string, timeZone: string): GuideHome {
  const profile = { tenure: 'rent', vulnerable: false, systems: [] } satisfies GuideHome['profile']
  return {
    id,
    name: 'This home',
    timeZone,
    units: 'us',
    filters: [],
    profile,
    emergencyNumber: DEFAULT_EMERGENCY_NUMBER,
    contacts: [],
  }
}

/** `/check`, or `/home/<id>/check`: the pages of the guide lie under it. */
export function guideBase(homeId: string | null): string {
  return homeId === null ? '/check' : `/home/${homeId}/check`
}

/** The address of a walk as it stands. */
export function walkHref({ home, systemId }: Pick<GuidePlace, 'home' | 'systemId'>, walk: Walk): string {
  const system = systemId === null ? '' : `&system=${encodeURIComponent(systemId)}`
  return `${guideBase(home?.id ?? null)}/${walk.flow}${encodeWalk(walk)}${system}`
}

/** What is remembered here of the trouble. */
export function placeEpisode({ events, today }: GuidePlace): Episode {
  return episodeOn(events, today)
}

/**
 * The walk of an address in this place. A walk that only fails because something was recorded since says so: it
 * begins again at the hazards, now with what is known.
 */
export function replayIn(place: GuidePlace, flow: Flow, walk: Walk): Replay {
  const { home, systemId, events, today, now } = place
  const profile = home?.profile ?? null
  const remembered = (kept: readonly KeyedEvent[]) => guideFacts(profile, systemId, episodeOn(kept, today))
  const beside = eventsBeside(walk, events)
  const found = replay({ flow, facts: remembered(beside), walk, now })
  if (found.kind !== 'broken') return found
  const forgetful = replay({ flow, facts: remembered([]), walk, now })
  if (forgetful.kind === 'broken') return found
  return { ...found, because: 'Something was written down since: a start, a hazard or a visit.' }
}

/** The number for emergencies: 911 unless the household has another. */
export function emergencyNumber({ home }: { home: Pick<Household, 'emergencyNumber'> | null }): string {
  return home?.emergencyNumber ?? DEFAULT_EMERGENCY_NUMBER
}
