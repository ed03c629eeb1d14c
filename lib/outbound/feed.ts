import { mayTry } from '@/lib/access/limits'
import { addressOf, publicUrl } from '@/lib/access/public-url'
import { hashToken, newToken } from '@/lib/access/tokens'
import { today } from '@/lib/clock'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { homeInWords } from '@/lib/core/subject-words'
import type { Act, Viewer } from '@/lib/core/viewer'
import { findFeed, renewFeed, saveFeed } from '@/lib/data/feeds'
import { type Home, listHomes, readInParts } from '@/lib/data/households'
import type { KeptPlans } from '@/lib/data/kept-plans'
import { calendarText, type FeedEvent, feedEvents, feedTag, linesOfEvents } from './calendar'
import { hasAlready } from './if-none-match'

/** `/calendar/<secret>.ics`. */
export function calendarPath(secret: string): string {
  return `/calendar/${secret}.ics`
}

/** Makes a calendar address; it is given once and cannot be asked for again. */
export async function createFeed(act: Act, householdId: string | null = null): Promise<{ path: string } | null> {
  const secret = newToken()
  const saved = await saveFeed(act, { secretHash: hashToken(secret), householdId })
  return saved.ok ? { path: calendarPath(secret) } : null
}

/** Gives a calendar another address; whoever has the earlier one sees nothing from then on. */
export async function changeFeedAddress(act: Act, id: string): Promise<{ path: string } | null> {
  const secret = newToken()
  const renewed = await renewFeed(act, id, hashToken(secret))
  return renewed.ok ? { path: calendarPath(secret) } : null
}

interface Calendar {
  tag: string
  text: string
}

interface Kept {
  key: string
  /** Kept from the moment it is begun: who asks meanwhile waits for the same. */
  calendar: Promise<Calendar>
}

// Some hundred texts of a few kilobytes; the one not asked for the longest goes first.
const KEPT = 500
const kept = new Map<string, Kept>()

/** Answers a calendar program: 304 without reading or planning anything anew as long as nothing was written. */
export async function answerFeed(request: Request, file: string, plans: KeptPlans<HouseholdPlan>): Promise<Response> {
  const secret = /^([\w-]{20,100})\.ics$/.exec(file)?.[1]
  const feed = secret === undefined ? null : await findFeed(hashToken(secret), today('UTC'))
  if (!feed) return refuse(request)
  const homes = await listHomes(feed.viewer)
  const wanted = homes.filter(({ id }) => feed.householdId === null || id === feed.householdId)
  // A home that the account sees no more.
  if (feed.householdId !== null && wanted.length === 0) return refuse(request)
  const { tag, text } = await findCalendar(feed.id, feed.viewer, wanted, plans)
  const headers = { etag: tag, 'cache-control': 'private, no-cache', 'x-robots-tag': 'noindex' }
  if (hasAlready(request, tag)) return new Response(null, { status: 304, headers })
  return new Response(text, {
    headers: {
      ...headers,
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'inline; filename="plenum.ics"',
    },
  })
}

function findCalendar(id: string, viewer: Viewer, homes: Home[], plans: KeptPlans<HouseholdPlan>): Promise<Calendar> {
  const key = homes.map((home) => `${home.id} ${home.revision} ${today(home.timeZone)}`).join('\n')
  const found = kept.get(id)
  const calendar = found?.key === key ? found.calendar : makeCalendar(viewer, homes, plans)
  kept.delete(id)
  kept.set(id, { key, calendar })
  // What could not be made is tried again by the next who asks.
  calendar.catch(() => kept.get(id)?.calendar === calendar && kept.delete(id))
  for (const oldest of kept.keys()) {
    if (kept.size <= KEPT) break
    kept.delete(oldest)
  }
  return calendar
}

async function makeCalendar(viewer: Viewer, homes: Home[], plans: KeptPlans<HouseholdPlan>): Promise<Calendar> {
  const ids = homes.map(({ id }) => id)
  const options = { origin: publicUrl(), many: homes.length > 1 }
  const events: FeedEvent[] = []
  let lines = ''
  let name = 'Plenum'
  for await (const part of readInParts(viewer, ids)) {
    const planned = part.map((stored) => {
      const on = today(stored.timeZone)
      return { stored, on, plan: plans.of(stored, on) }
    })
    const some = feedEvents(planned, options)
    events.push(...some)
    lines += linesOfEvents(some)
    if (!options.many && part[0]) name = `Plenum: ${homeInWords(part[0].household)}`
  }
  return { tag: feedTag(events, name), text: calendarText(lines, { name }) }
}

// Only wrong addresses count, so that a calendar program for many people never waits because of one old address.
async function refuse({ headers }: Request): Promise<Response> {
  const may = await mayTry('calendar', headers, addressOf(headers))
  const say = may ? 'There is no calendar at this address.\n' : 'Too many wrong addresses. Try again in 15 minutes.\n'
  return new Response(say, {
    status: may ? 404 : 429,
    headers: { 'cache-control': 'no-store', 'content-type': 'text/plain', ...(!may && { 'retry-after': '900' }) },
  })
}
