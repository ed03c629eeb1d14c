import type { Day } from '@/lib/core/day'
import { localDay } from '@/lib/core/zone'
import type { KeyedEvent } from './booking'
import { EPISODE_KINDS } from './episode'

/** The cookie by which a phone remembers a trouble while nobody is signed in. It holds kinds and minutes, no more. */
export const PHONE_COOKIE = 'plenum-trouble'
export const PHONE_COOKIE_SECONDS = 400 * 24 * 60 * 60

const MAX_EVENTS = 30
const ENTRY = /^([a-z-]+)~(\d{1,9})~([a-z0-9.-]{1,160})$/

/** Reads the cookie's value; what can not be read is left out, since anyone may write a cookie. */
export function readPhoneMemory(value: string | undefined): KeyedEvent[] {
  if (!value) return []
  return value.split('_').flatMap((entry) => {
    const [, said, minute, key = ''] = ENTRY.exec(entry) ?? []
    const kind = EPISODE_KINDS.find((each) => each === said)
    return kind ? [{ kind, on: dayOfMinute(Number(minute)), at: Number(minute), key }] : []
  })
}

/**
 * The cookie's value with more events; the same step twice is one. Of a run of one kind the first and the last are
 * kept: they say when it began, and from when twelve months count.
 */
export function rememberOnPhone(value: string | undefined, events: readonly KeyedEvent[]): string {
  const kept = readPhoneMemory(value)
  for (const event of events) if (!kept.some(({ key }) => key === event.key)) kept.push(event)
  return kept
    .filter(({ kind }, i) => kept[i - 1]?.kind !== kind || kept[i + 1]?.kind !== kind)
    .slice(-MAX_EVENTS)
    .map(({ kind, at, key }) => `${kind}~${at}~${key}`)
    .join('_')
}

/** The day that a home's own clock shows. */
export function dayAt(minute: number, timeZone: string): Day {
  return localDay(new Date(minute * 60_000).toISOString(), timeZone)
}

/** The day in UTC: what is remembered for a year needs no zone. */
export function dayOfMinute(minute: number): string {
  return new Date(minute * 60_000).toISOString().slice(0, 10)
}

/** The whole cookie, as a header or a page sets it: not HttpOnly, since without network the page itself reads it. */
export function phoneCookie(value: string | undefined, events: readonly KeyedEvent[], secure: boolean): string {
  const kept = rememberOnPhone(value, events)
  return `${PHONE_COOKIE}=${kept}; Path=/; Max-Age=${PHONE_COOKIE_SECONDS}; SameSite=Lax${secure ? '; Secure' : ''}`
}

/** The cookie's value among all that a browser keeps or sends; undefined where it is not there. */
export function phoneCookieIn(cookies: string): string | undefined {
  return new RegExp(`(?:^|; )${PHONE_COOKIE}=([^;]*)`).exec(cookies)?.[1]
}
