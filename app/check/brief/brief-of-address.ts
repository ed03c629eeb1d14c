import { findFlow } from '@/content/guide/flows'
import { STARTUP } from '@/content/guide/startup'
import { degreesAsked, parseRoom } from '@/lib/forms/guide-brief-form'
import { encodeWalk, parseWalk, type Walk } from '@/lib/guide/address'
import { type Brief, type BriefParts, makeBrief } from '@/lib/guide/brief'
import { type GuidePlace, placeEpisode, replayIn } from '@/lib/guide/place'
import type { Replay } from '@/lib/guide/replay'
import { watchStartup } from '@/lib/guide/startup-watcher'
import type { Severity } from '@/lib/guide/types'
import { parseWatch } from '@/lib/guide/watch-address'

/** What only the server knows of a home; a phone without network leaves it out. */
export type BriefFacts = Pick<BriefParts, 'household' | 'system' | 'filters'>

export interface AddressedBrief {
  brief: Brief
  walk: Walk
  severity: Severity | null
  outcome: string | null
  roomF: number | null
  /** What is wrong with the typed temperature; the page is made without it. */
  roomFault: string | null
  /** Of this walk, with this temperature and these times: made twice, it is one page. */
  key: string
}

/** Every flow asks it under one mark; a profile that says yes is not asked again, and stands in the brief anyway. */
function saidVulnerable(found: Exclude<Replay, { kind: 'broken' }>): boolean | null {
  const asked = found.taken.some(({ node }) => node === 'vulnerable')
  return found.marks.vulnerable === 'yes' ? true : asked ? false : null
}

/** The page for the technician from an address of the guide, or null where the address is none. */
export function briefOfAddress(
  place: GuidePlace,
  search: string,
  facts: BriefFacts,
  startedAt: (minute: number) => string,
): AddressedBrief | null {
  const parsed = parseWalk(search)
  if (parsed.kind === 'broken') return null
  const { walk } = parsed
  const flow = findFlow(walk.flow)
  if (!flow) return null
  const found = replayIn(place, flow, walk)
  if (found.kind === 'broken') return null
  const asked = new URLSearchParams(search)
  // The address keeps its degrees: it says the same wherever it is opened, and after the home changed its units.
  const degrees = degreesAsked(asked.get('in'))
  const room = parseRoom(asked.get('room') ?? '', degrees)
  const watchedEvents = parseWatch(asked.get('w') ?? '') ?? []
  const outcome = found.kind === 'at' && found.node.kind === 'outcome' ? found.node : null
  const episode = placeEpisode(place)
  const roomF = room.ok ? room.value : null
  const brief = makeBrief({
    flow,
    startedAt: startedAt(walk.startedAt),
    ...facts,
    taken: found.taken,
    outcome,
    watched: watchedEvents.length === 0 ? null : watchStartup(watchedEvents, STARTUP),
    watchedEvents,
    episode: found.kind === 'at' && found.startSpent ? { ...episode, resetUsed: 'yes' } : episode,
    events: place.events,
    roomF,
    units: degrees === 'C' ? 'metric' : (place.home?.units ?? 'us'),
    vulnerable: saidVulnerable(found),
  })
  return {
    brief,
    walk,
    severity: outcome?.severity ?? null,
    outcome: outcome?.id ?? null,
    roomF,
    roomFault: room.ok ? null : room.say,
    key: `${encodeWalk(walk)}&room=${roomF}&w=${asked.get('w') ?? ''}`,
  }
}
