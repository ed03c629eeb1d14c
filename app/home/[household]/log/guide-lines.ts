import { findFlow } from '@/content/guide/flows'
import type { Day } from '@/lib/core/day'
import type { Door, Instant, Viewer } from '@/lib/core/viewer'
import { listBriefs } from '@/lib/data/briefs'
import { listEpisode, type StoredEpisodeEvent } from '@/lib/data/episodes'
import type { LogQuery } from '@/lib/forms/log-filter'
import type { EpisodeKind } from '@/lib/guide/episode'
import { HAZARD_WORDS } from '@/lib/guide/hazard-words'
import { findNode, HAZARDS } from '@/lib/guide/types'

/** Something that the guide wrote down: a check begun, the one start, a trip, a hazard, a visit, a brief. */
export interface GuideLine {
  id: string
  on: Day
  /** Orders the lines of one day. */
  minute: number
  what: string
  details: string | null
  by: string
  at: Instant
  door: Door
  /** The page of a brief. */
  href: string | null
}

const WHAT: Record<EpisodeKind, string> = {
  'trouble-began': 'Self-check begun',
  'start-spent': 'The one start was used',
  trip: 'It tripped or stopped again',
  'hazard-leave': 'Hazard: the home is to be left',
  'hazard-stop': 'Hazard: every check stops',
  'technician-visit': 'A technician worked on it',
  clearance: 'A professional cleared the hazard',
  imported: 'Brought here from a file',
}

/** What the guide wrote down in a home, as its log asks for it; everything, so that people can be chosen from it. */
export async function listGuideLines(viewer: Viewer, householdId: string): Promise<GuideLine[]> {
  const [events, briefs] = await Promise.all([listEpisode(viewer, householdId), listBriefs(viewer, householdId)])
  return [
    ...events.map(eventLine),
    ...briefs.map((brief) => ({
      ...{ id: brief.id, on: brief.on, minute: Math.floor(Date.parse(brief.at) / 60_000), at: brief.at },
      ...{ what: 'Brief made', details: brief.page.title, by: brief.byName, door: brief.door },
      href: `/home/${householdId}/brief/${brief.id}`,
    })),
  ].sort((a, b) => b.minute - a.minute || (a.at < b.at ? 1 : -1))
}

/** Whether a query asks for a line; a line of the guide is about no filter, system or device. */
export function isGuideLineAsked({ on, by, door }: GuideLine, query: LogQuery): boolean {
  if (query.kind !== undefined && query.kind !== 'checked') return false
  if (query.subject !== undefined) return false
  if (query.who !== undefined && query.who !== by) return false
  if (query.door !== undefined && query.door !== door) return false
  return (query.from === undefined || on >= query.from) && (query.to === undefined || on <= query.to)
}

function eventLine({ kind, on, at, key, note, byName, writtenAt, door }: StoredEpisodeEvent): GuideLine {
  return {
    ...{ id: key, on, minute: at, what: WHAT[kind], details: detailsOf(kind, key, note) },
    ...{ by: byName, at: writtenAt, door, href: null },
  }
}

/** Which trouble it was, and what was met: the key of an event names the step of the walk that it came from. */
function detailsOf(kind: EpisodeKind, key: string, note: string | null): string | null {
  if (kind === 'imported') return 'what was tried before is not known, so the one start counts as used'
  const [flowId, , , nodeId] = key.split('.')
  const flow = findFlow(flowId)
  const node = flow && findNode(flow, nodeId ?? '')
  const hazard = HAZARDS.find((each) => each === node?.hazard)
  const met = kind === 'hazard-leave' || kind === 'hazard-stop'
  const parts = [met && hazard ? HAZARD_WORDS[hazard] : null, note, flow ? `trouble: ${flow.title}` : null]
  const said = parts.filter((part) => part !== null)
  return said.length === 0 ? null : said.join('; ')
}
