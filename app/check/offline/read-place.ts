import { findFlow } from '@/content/guide/flows'
import { CHANGED, parseWalk } from '@/lib/guide/address'
import { bookedEvents, type KeyedEvent } from '@/lib/guide/booking'
import { dayAt, dayOfMinute, phoneCookieIn, readPhoneMemory } from '@/lib/guide/phone-memory'
import { type GuidePlace, unknownHome } from '@/lib/guide/place'
import { findNode } from '@/lib/guide/types'
import { readKeptHome } from '../remember-home'

export interface PhonePlace extends GuidePlace {
  /** Whether this phone knows the home of the address; true for the guide of nobody's home. */
  isKnown: boolean
}

/** The place as this phone knows it: what it kept of the home, its own memory, and what waits to be sent. */
export async function readPlace(homeId: string | null, search: string): Promise<PhonePlace> {
  const now = Math.floor(Date.now() / 60_000)
  const kept = homeId === null ? null : readKeptHome(homeId)
  const cookie = phoneCookieIn(document.cookie)
  const known = kept?.events ?? readPhoneMemory(cookie)
  const zone = kept?.home.timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone
  // The phone's own memory counts days in UTC; a home counts them by its own clock.
  const dayOf = (minute: number) => (homeId === null ? dayOfMinute(minute) : dayAt(minute, zone))
  const waiting = (await queued(homeId, dayOf)).filter(({ key }) => !known.some((event) => event.key === key))
  const system = new URLSearchParams(search).get('system')
  return {
    // A home that this phone never saw: every fact is unknown, and the guide asks; what is answered is still sent there.
    home: homeId === null ? null : (kept?.home ?? unknownHome(homeId, zone)),
    isKnown: homeId === null || kept !== null,
    systemId: kept?.home.profile.systems.some(({ id }) => id === system) ? system : null,
    events: [...known, ...waiting],
    today: dayOf(now),
    now,
  }
}

/** The events of the answers that wait in the worker's queue for this home. */
async function queued(homeId: string | null, dayOf: (minute: number) => string): Promise<KeyedEvent[]> {
  if (!('caches' in window)) return []
  const queue = await caches.open('plenum-queue-1')
  const events: KeyedEvent[] = []
  for (const key of await queue.keys()) {
    const fields: Record<string, string> = await (await queue.match(key))?.json()
    const parsed = parseWalk(fields.walk ?? '')
    if ((fields.home || null) !== homeId || parsed.kind === 'broken') continue
    const { walk } = parsed
    const flow = findFlow(walk.flow)
    const node = flow && findNode(flow, fields.node ?? '')
    const answer = fields.answer === CHANGED ? CHANGED : node?.answers?.find(({ id }) => id === fields.answer)
    const minute = Number(fields.queued)
    if (node && answer) events.push(...bookedEvents(walk, node, answer, { minute, on: dayOf(minute) }))
  }
  return events.sort((a, b) => a.at - b.at)
}
