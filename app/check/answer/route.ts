import { findFlow } from '@/content/guide/flows'
import { handler } from '@/lib/access/handler'
import { isSecure } from '@/lib/access/public-url'
import type { Act, Viewer } from '@/lib/core/viewer'
import { recordEpisode } from '@/lib/data/episodes'
import { findRoleIn } from '@/lib/data/members'
import { asUnavailable, DatabaseUnavailable } from '@/lib/data/unavailable'
import { type GuideAnswer, parseGuideAnswer } from '@/lib/forms/guide-answer-form'
import { CHANGED, type Walk } from '@/lib/guide/address'
import { bookedEvents, type KeyedEvent } from '@/lib/guide/booking'
import { dayAt, dayOfMinute, phoneCookie, phoneCookieIn } from '@/lib/guide/phone-memory'
import { type GuidePlace, replayIn, walkHref } from '@/lib/guide/place'
import { withAnswer } from '@/lib/guide/replay'
import { type Answer, findNode, type GuideNode } from '@/lib/guide/types'
import { minuteNow, phonePlace, placeOf } from '../load-place'
import { recordFilterAnswer } from './filter-answer'

/**
 * Takes an answer that must not be forgotten: a start, a trip, a hazard, a look at the filter. It books it and leads on
 * to the next address. Whatever goes wrong with the booking, the person is led on: a hazard text waits for no database.
 */
export const POST = handler({
  name: 'guide-answer',
  needs: 'nobody',
  run: async ({ request, viewer, act }) => {
    const form = await request.formData().catch(() => new FormData())
    const sent = parseGuideAnswer(form, minuteNow())
    const isQueued = sent.queuedAt !== null
    if (sent.walk.kind === 'broken') return isQueued ? new Response(null, { status: 204 }) : seeOther('/check')
    const { walk } = sent.walk
    const booked = await bookOffered({ viewer, act, sent, walk })
    if (booked.kind === 'not-offered')
      return isQueued ? new Response(null, { status: 204 }) : seeOther(walkHref(booked.place, walk))
    const { place, saved, events, chosen, minute, on } = booked
    const { node, answer } = chosen
    if (saved && answer !== CHANGED)
      await recordFilterAnswer(act, place, { node, answer: answer.id, named: sent.filter, on })
    const next = walkHref(place, withAnswer(walk, node, answer === CHANGED ? CHANGED : answer.id, minute))
    const response = isQueued
      ? new Response(null, { status: sent.homeId === null || saved ? 204 : 503 })
      : seeOther(sent.homeId !== null && !saved && events.some(isRemembered) ? `${next}&unsaved=1` : next)
    if (sent.homeId === null || !saved)
      response.headers.append('set-cookie', cookieFor(request, events.filter(isRemembered)))
    return response
  },
})

interface Sent {
  viewer: Viewer
  act: Act
  sent: GuideAnswer
  walk: Walk
}

/**
 * Books what an answer means, as long as it is offered. Where somebody else gave the home's one start at that moment,
 * it is asked again what is offered now: of two, one is booked.
 */
async function bookOffered({ viewer, act, sent, walk }: Sent) {
  const isQueued = sent.queuedAt !== null
  for (;;) {
    const { place, isHome } = await placeFor(viewer, sent)
    const minute = sent.queuedAt ?? place.now
    const chosen = isQueued ? named(walk, sent) : offered(place, walk, sent)
    if (chosen === null) return { kind: 'not-offered' as const, place }
    const on = place.home === null ? dayOfMinute(minute) : dayAt(minute, place.home.timeZone)
    const events = bookedEvents(walk, chosen.node, chosen.answer, { minute, on })
    // What a phone kept while it was offline did happen, whatever happened beside it.
    const seen = isQueued ? undefined : place.events.length
    const saved = isHome ? await book(act, sent.homeId as string, events, seen) : false
    if (saved !== 'changed') return { kind: 'booked' as const, place, saved, events, chosen, minute, on }
  }
}

// That a check was begun is for the log of a home only: it closes nothing.
function isRemembered({ kind }: KeyedEvent): boolean {
  return kind !== 'trouble-began'
}

async function placeFor(viewer: Viewer, sent: GuideAnswer): Promise<{ place: GuidePlace; isHome: boolean }> {
  const phone = await phonePlace()
  if (sent.homeId === null) return { place: phone, isHome: false }
  try {
    if (viewer.kind === 'account' && (await findRoleIn(viewer, sent.homeId)) !== null)
      return { place: await placeOf(viewer, sent.homeId, sent.systemId), isHome: true }
  } catch (error) {
    if (!(asUnavailable(error) instanceof DatabaseUnavailable)) throw error
  }
  return { place: phone, isHome: false }
}

/** The answer, if this walk really offers it now. */
function offered(
  place: GuidePlace,
  walk: Walk,
  sent: GuideAnswer,
): { node: GuideNode; answer: Answer | typeof CHANGED } | null {
  const flow = findFlow(walk.flow)
  if (!flow) return null
  const found = replayIn(place, flow, walk)
  if (found.kind === 'broken' || found.node.id !== sent.node) return null
  if (sent.answer === CHANGED) return { node: found.node, answer: CHANGED }
  const answer = found.answers.find(({ id }) => id === sent.answer)
  return answer ? { node: found.node, answer } : null
}

/** The answer as the flow names it. What a phone kept while it was offline is old by now, but it did happen. */
function named(walk: Walk, sent: GuideAnswer): { node: GuideNode; answer: Answer | typeof CHANGED } | null {
  const flow = findFlow(walk.flow)
  const node = flow && findNode(flow, sent.node)
  if (!node) return null
  if (sent.answer === CHANGED) return { node, answer: CHANGED }
  const answer = node.answers?.find(({ id }) => id === sent.answer)
  return answer ? { node, answer } : null
}

async function book(
  act: Act,
  homeId: string,
  events: KeyedEvent[],
  seen: number | undefined,
): Promise<boolean | 'changed'> {
  try {
    const rows = events.map(({ kind, on, at, key }) => ({ kind, on, minute: at, key }))
    const recorded = await recordEpisode(act, homeId, rows, { seen })
    return recorded.ok || (recorded.because === 'changed' && recorded.because)
  } catch (error) {
    if (asUnavailable(error) instanceof DatabaseUnavailable) return false
    throw error
  }
}

function cookieFor(request: Request, events: KeyedEvent[]): string {
  const before = phoneCookieIn(request.headers.get('cookie') ?? '')
  return phoneCookie(before, events, isSecure())
}

function seeOther(location: string): Response {
  return new Response(null, { status: 303, headers: { location, 'cache-control': 'no-store' } })
}
