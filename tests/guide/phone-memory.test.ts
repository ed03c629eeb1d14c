import { describe, expect, it } from 'vitest'
import type { KeyedEvent } from '@/lib/guide/booking'
import { finderStart } from '@/lib/guide/finder-start'
import { guideFacts } from '@/lib/guide/household-facts'
import {
  dayAt,
  dayOfMinute,
  phoneCookie,
  phoneCookieIn,
  readPhoneMemory,
  rememberOnPhone,
} from '@/lib/guide/phone-memory'
import { encodeWatch, parseWatch } from '@/lib/guide/watch-address'

/** 25 November 2026, 00:30 UTC. */
const MINUTE = Date.UTC(2026, 10, 25, 0, 30) / 60_000

function event(kind: KeyedEvent['kind'], at = MINUTE, key = `k.${at}`): KeyedEvent {
  return { kind, at, on: dayOfMinute(at), key }
}

describe('the cookie of a phone', () => {
  it('holds a step once, and of a run of one kind the first and the last', () => {
    const kept = (...events: KeyedEvent[]) =>
      readPhoneMemory(rememberOnPhone(undefined, events)).map(({ kind, at }) => [kind, at - MINUTE])
    const trips = [0, 1, 2, 3].map((more) => event('trip', MINUTE + more))
    expect(kept(...trips)).toEqual([
      ['trip', 0],
      ['trip', 3],
    ])
    expect(kept(trips[0] as KeyedEvent, event('start-spent', MINUTE + 9), trips[1] as KeyedEvent)).toHaveLength(3)
    expect(kept(trips[0] as KeyedEvent, { ...(trips[0] as KeyedEvent), at: MINUTE + 5 })).toEqual([['trip', 0]])
  })

  it('holds the last thirty', () => {
    const many = Array.from({ length: 40 }, (_, i) => event(i % 2 === 0 ? 'trip' : 'start-spent', MINUTE + i))
    const kept = readPhoneMemory(rememberOnPhone(undefined, many))
    expect(kept.map(({ at }) => at - MINUTE)).toEqual(Array.from({ length: 30 }, (_, i) => i + 10))
  })

  it('lasts 400 days, for all pages, and goes over a safe line only where there is one', () => {
    const value = `trip~${MINUTE}~k.${MINUTE}`
    expect(phoneCookie(undefined, [event('trip')], false)).toBe(
      `plenum-trouble=${value}; Path=/; Max-Age=34560000; SameSite=Lax`,
    )
    expect(phoneCookie(undefined, [event('trip')], true)).toMatch(/; SameSite=Lax; Secure$/)
    expect(phoneCookie(value, [], false)).toContain(`=${value};`)
  })

  it('is found among others, and only by its whole name', () => {
    expect(phoneCookieIn('a=1; plenum-trouble=x~1~y; b=2')).toBe('x~1~y')
    expect(phoneCookieIn('plenum-trouble=x')).toBe('x')
    expect(phoneCookieIn('not-plenum-trouble=x')).toBeUndefined()
    expect(phoneCookieIn('a=plenum-trouble=x')).toBeUndefined()
    expect(phoneCookieIn('')).toBeUndefined()
  })

  it('with anything else in it is read as far as it can be', () => {
    expect(readPhoneMemory(undefined)).toEqual([])
    expect(readPhoneMemory('')).toEqual([])
    for (const bad of [
      'trip~1',
      'trip~x~k',
      'trip~1~K',
      'unheard~1~k',
      'trip~1~k~more',
      '-trip~1~k!',
      'trip~1234567890~k',
    ])
      expect(readPhoneMemory(`${bad}_trip~${MINUTE}~k`)).toEqual([event('trip', MINUTE, 'k')])
  })

  it('counts its days in UTC, a home in its own zone', () => {
    expect(dayOfMinute(MINUTE)).toBe('2026-11-25')
    expect(dayOfMinute(MINUTE - 31)).toBe('2026-11-24')
    expect(dayAt(MINUTE, 'America/Chicago')).toBe('2026-11-24')
    expect(dayAt(MINUTE, 'UTC')).toBe('2026-11-25')
  })
})

describe('the address of a timed start', () => {
  it('of sixty events is read, of sixty-one not; an empty one is none', () => {
    const events = Array.from({ length: 61 }, (_, second) => ({ event: 'hum' as const, second }))
    expect(parseWatch(encodeWatch(events.slice(1)))).toEqual(events.slice(1))
    expect(parseWatch(encodeWatch(events))).toBeNull()
    expect(parseWatch('')).toEqual([])
    for (const bad of ['hum', 'hum.', 'xhum.1', 'hum.12345', 'hum.1x', 'x.hum.1', ' hum.1'])
      expect(parseWatch(`calls.0_${bad}`)).toBeNull()
  })
})

describe('what the profile says to the guide', () => {
  const home = (...systems: NonNullable<Parameters<typeof guideFacts>[0]>['systems']) => ({
    tenure: 'own' as const,
    vulnerable: false,
    systems,
  })
  const floor = { id: 'floor', name: 'Floors', delivery: 'hydronic' as const, heat: { source: 'gas-boiler' as const } }
  const attic = { id: 'attic', name: 'Attic', delivery: 'ducted' as const }

  it('is of the one system where there is one, named or not', () => {
    const facts = { tenure: 'own', vulnerable: 'no', systems: 'one', heatSource: 'gas', delivery: 'hydronic' }
    expect(guideFacts(home(floor), null, null)).toEqual(facts)
    expect(guideFacts(home(floor), 'floor', null)).toEqual(facts)
    expect(guideFacts(home(floor), 'gone', null)).toMatchObject({ heatSource: 'unknown', delivery: 'unknown' })
    expect(guideFacts(home(), null, null)).toMatchObject({ systems: 'several', heatSource: 'unknown' })
  })

  it('knows no heat where a system has none', () => {
    expect(guideFacts(home(floor, attic), 'attic', null)).toMatchObject({
      systems: 'several',
      heatSource: 'unknown',
      delivery: 'ducted',
    })
  })
})

describe('turning it on again after the finder', () => {
  const start = (answer: 'as-always' | 'not-as-always', events: KeyedEvent[] = [], on?: string) =>
    finderStart({ answer, began: 7, minute: MINUTE, ...(on && { on }) }, events)
  const spent = { kind: 'start-spent', on: '2026-11-25', at: MINUTE, key: 'finder.7.turned-on.1' }

  it('is nothing where it was well and starts as always', () => expect(start('as-always')).toEqual([]))

  it('is trouble and its one start where it goes otherwise', () => {
    expect(start('not-as-always')).toEqual([
      { kind: 'trouble-began', on: '2026-11-25', at: MINUTE, key: 'finder.7.turned-on.0' },
      spent,
    ])
    expect(start('not-as-always', [], '2026-11-24')[0]?.on).toBe('2026-11-24')
  })

  it('spends the start of any trouble that is remembered and not over', () => {
    const memoryOf = (...kinds: KeyedEvent['kind'][]) => kinds.map((kind, i) => event(kind, MINUTE - 1000 + i))
    for (const open of [
      memoryOf('trouble-began'),
      memoryOf('trip'),
      memoryOf('start-spent'),
      memoryOf('hazard-stop'),
      memoryOf('hazard-leave', 'technician-visit'),
      memoryOf('start-spent', 'trip'),
      memoryOf('imported'),
    ])
      expect(start('as-always', open)).toEqual([spent])
    for (const over of [
      memoryOf('trouble-began', 'technician-visit'),
      memoryOf('start-spent', 'technician-visit'),
      memoryOf('hazard-stop', 'technician-visit', 'clearance'),
      [event('start-spent', MINUTE - 366 * 1440)],
      [event('trouble-began', MINUTE + 5000)],
    ])
      expect(start('as-always', over)).toEqual([])
    // What came last counts, in whatever order it was written down.
    expect(start('as-always', memoryOf('trouble-began', 'technician-visit').toReversed())).toEqual([])
    expect(start('as-always', memoryOf('technician-visit', 'trouble-began').toReversed())).toEqual([spent])
  })
})
