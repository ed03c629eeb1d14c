import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FLOWS, getFlow } from '@/content/guide/flows'
import { CHANGED } from '@/lib/guide/address'
import { bookedEvents, eventKinds, eventsBeside, type KeyedEvent } from '@/lib/guide/booking'
import { EPISODE_KINDS } from '@/lib/guide/episode'
import { PHONE_COOKIE, readPhoneMemory, rememberOnPhone } from '@/lib/guide/phone-memory'
import {
  emergencyNumber,
  type GuidePlace,
  guideBase,
  placeEpisode,
  replayIn,
  unknownHome,
  walkHref,
} from '@/lib/guide/place'
import { withAnswer } from '@/lib/guide/replay'
import { STARTUP_EVENTS } from '@/lib/guide/startup-watcher'
import { getNode } from '@/lib/guide/types'
import { encodeWatch, parseWatch } from '@/lib/guide/watch-address'
import { anyChoices, calmWalk, walkBy } from '../support/walks'

const START = 29_000_000
const place = (events: KeyedEvent[] = [], now = START + 60): GuidePlace => ({
  home: null,
  systemId: null,
  events,
  today: '2026-11-25',
  now,
})

describe('what an answer does to the memory', () => {
  it('is nothing for a plain answer, and every turn-on, trip and hazard is a write', () => {
    for (const flow of FLOWS)
      for (const node of flow.nodes)
        for (const answer of node.answers ?? []) {
          const kinds = eventKinds(node, answer)
          if (node.kind === 'gate' && answer.id !== 'no' && answer.sets?.hazardSeen)
            expect(kinds).toContain(`hazard-${answer.sets.hazardSeen}`)
          if (node.turnsOn && (answer.id === 'done' || answer.id === 'trips')) expect(kinds).toContain('start-spent')
          if (answer.sets?.tripped === 'yes') expect(kinds).toContain('trip')
        }
  })

  it('counts in the walk itself, and in every other walk', () => {
    const flow = getFlow('no-heat')
    const calm = calmWalk(flow, {})
    const at = calm.steps.findIndex(({ node }) => node === 'start')
    const before = { ...calm, steps: calm.steps.slice(0, at) }
    const node = getNode(flow, 'start')
    const done = node.answers?.find(({ id }) => id === 'done')
    if (!done) throw new Error('no done')
    const now = START + at
    const events = bookedEvents(before, node, done, { minute: now, on: '2026-11-25' })
    expect(events.map(({ kind }) => kind)).toEqual(['start-spent'])
    const after = withAnswer(before, node, 'done', now)
    // It goes on: the start is its own.
    expect(replayIn(place(events, now), flow, after)).toMatchObject({
      kind: 'at',
      node: { kind: 'wait' },
      startSpent: true,
    })
    // Back to before the start does not undo it.
    expect(replayIn(place(events, now), flow, before)).toMatchObject({
      kind: 'broken',
      because: expect.stringContaining('written down since'),
    })
    // Another walk of the same answers can not come to a start.
    const other = { ...calm, startedAt: START + 200, steps: calm.steps.slice(0, at) }
    expect(replayIn(place(events, START + 200 + at), flow, other).kind).toBe('broken')
  })

  it('is not blamed for a walk that goes on all the same, nor for one that nobody could have taken', () => {
    const flow = getFlow('no-heat')
    const began: KeyedEvent = { kind: 'trouble-began', on: '2026-11-20', at: START - 9000, key: 'other.1.0.gas.no.0' }
    const calm = calmWalk(flow, {})
    const fine = replayIn(place([began], START), flow, { ...calm, steps: calm.steps.slice(0, 1) })
    expect(fine.kind).toBe('at')
    expect(fine).not.toHaveProperty('because')
    const jumped = { ...calm, steps: calm.steps.slice(1, 2) }
    expect(replayIn(place([began], START + 60), flow, jumped)).toMatchObject({
      kind: 'broken',
      because: 'The link skips a question.',
    })
  })

  it('whatever is answered, after a hazard was booked no later walk comes to anything to do', () => {
    for (const flow of FLOWS)
      fc.assert(
        fc.property(anyChoices, fc.constantFrom('hazard-leave', 'hazard-stop'), (choices, kind) => {
          const facts = { hazardSeen: kind === 'hazard-leave' ? 'leave' : 'stop' }
          const walk = walkBy(flow, facts, choices)
          const hazard: KeyedEvent = {
            kind: kind as 'hazard-leave',
            on: '2026-11-20',
            at: START - 9000,
            key: 'other.1.0.gas.yes.0',
          }
          for (let n = 0; n <= walk.steps.length; n++) {
            const found = replayIn(place([hazard], START + n), flow, { ...walk, steps: walk.steps.slice(0, n) })
            expect(found.kind).not.toBe('broken')
            expect(found.node.kind === 'check' && found.node.turnsOn).not.toBe(true)
          }
        }),
        { numRuns: 40 },
      )
  })

  it('is what was remembered up to today: a start that is spent, a hazard that nobody has cleared', () => {
    const spent: KeyedEvent = { kind: 'start-spent', on: '2026-11-20', at: START - 7200, key: 'a.1.0.start.done.0' }
    const hazard: KeyedEvent = { kind: 'hazard-stop', on: '2026-11-25', at: START, key: 'a.1.1.boom.yes.0' }
    expect(placeEpisode(place())).toMatchObject({ resetUsed: 'unknown', closedByHazard: 'no' })
    expect(placeEpisode(place([spent]))).toEqual({
      ...{ resetUsed: 'yes', tripped: 'no', closedByHazard: 'no', refillsOn: '2027-11-20' },
    })
    expect(placeEpisode(place([spent, hazard]))).toMatchObject({ resetUsed: 'yes', closedByHazard: 'stop' })
    expect(placeEpisode({ ...place([spent, hazard]), today: '2026-11-24' })).toMatchObject({ closedByHazard: 'no' })
  })

  it('of “something changed” is a hazard that empties the home', () => {
    const flow = getFlow('no-heat')
    const walk = { flow: flow.id, startedAt: START, steps: [] }
    const gas = getNode(flow, 'gas')
    const [event] = bookedEvents(walk, gas, CHANGED, { minute: START, on: '2026-11-25' })
    expect(event).toMatchObject({ kind: 'hazard-leave', key: `no-heat.${START}.0.gas.something-changed.0` })
    expect(eventsBeside(withAnswer(walk, gas, CHANGED, START), event ? [event] : [])).toEqual([])
  })
})

const anyEvent: fc.Arbitrary<KeyedEvent> = fc
  .record({ kind: fc.constantFrom(...EPISODE_KINDS), at: fc.integer({ min: 0, max: 99_999_999 }), n: fc.nat(50) })
  .map(({ kind, at, n }) => ({
    kind,
    at,
    on: new Date(at * 60_000).toISOString().slice(0, 10),
    key: `no-heat.${at}.${n}.gas.no.0`,
  }))

describe('the phone’s memory', () => {
  it('is read back as it was written, and anything else is nothing', () => {
    fc.assert(
      fc.property(anyEvent, (event) => {
        expect(readPhoneMemory(rememberOnPhone(undefined, [event]))).toEqual([event])
      }),
    )
    fc.assert(fc.property(fc.string(), (text) => readPhoneMemory(text).length <= text.length))
    expect(readPhoneMemory('hazard-leave~x~k_unheard-of~5~k_<script>')).toEqual([])
  })

  it('fits a cookie, knows a step once, and keeps the first and the last of a run', () => {
    fc.assert(
      fc.property(fc.array(anyEvent, { maxLength: 120 }), (events) => {
        const value = events.reduce<string | undefined>((before, event) => rememberOnPhone(before, [event]), undefined)
        expect(`${PHONE_COOKIE}=${value ?? ''}`.length).toBeLessThan(4000)
        expect(value ?? '').toMatch(/^[a-z0-9~._-]*$/)
        const keys = readPhoneMemory(value).map(({ key }) => key)
        expect(new Set(keys).size).toBe(keys.length)
      }),
    )
    const run = [1, 2, 3, 4].map((at): KeyedEvent => ({ kind: 'start-spent', at, on: '1970-01-01', key: `a.${at}` }))
    expect(readPhoneMemory(rememberOnPhone(undefined, run)).map(({ at }) => at)).toEqual([1, 4])
  })
})

describe('addresses', () => {
  it('lie under the home where there is one, with its system', () => {
    expect(guideBase(null)).toBe('/check')
    const home = {
      id: 'h1',
      name: 'Home',
      timeZone: 'America/Chicago',
      units: 'us' as const,
      filters: [],
      emergencyNumber: '112',
      contacts: [],
      profile: { tenure: 'own' as const, vulnerable: false, systems: [] },
    }
    const walk = { flow: 'no-heat', startedAt: START, steps: [] }
    expect(walkHref({ home, systemId: 'up stairs' }, walk)).toBe(
      `/home/h1/check/no-heat?flow=no-heat&at=${START}&s=&n=0&system=up%20stairs`,
    )
  })

  it('lie under /check without a home, and name no system where none is chosen', () => {
    const walk = { flow: 'no-heat', startedAt: START, steps: [] }
    expect(walkHref({ home: null, systemId: null }, walk)).toBe(`/check/no-heat?flow=no-heat&at=${START}&s=&n=0`)
  })

  it('of a home of which only the id is known lead to cautious facts and the usual number', () => {
    const home = unknownHome('h9', 'America/Denver')
    expect(home).toMatchObject({ id: 'h9', timeZone: 'America/Denver', filters: [], contacts: [] })
    expect(home.profile).toEqual({ tenure: 'rent', vulnerable: false, systems: [] })
    expect(emergencyNumber({ home })).toBe('911')
    expect(emergencyNumber({ home: null })).toBe('911')
    expect(emergencyNumber({ home: { ...home, emergencyNumber: '112' } })).toBe('112')
  })

  it('of a timed start are read back, and made-up ones are not', () => {
    const anyTimes = fc.array(
      fc.record({ event: fc.constantFrom(...STARTUP_EVENTS), second: fc.integer({ min: 0, max: 7200 }) }),
      { maxLength: 60 },
    )
    fc.assert(
      fc.property(anyTimes, (events) => {
        expect(parseWatch(encodeWatch(events))).toEqual(events)
      }),
    )
    for (const text of ['calls', 'calls.x', 'open-it.5', 'calls.5__', 'calls.-1']) expect(parseWatch(text)).toBeNull()
  })
})
