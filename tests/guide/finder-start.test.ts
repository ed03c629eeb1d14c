import { expect, test } from 'vitest'
import { parseTurnedOn } from '@/lib/forms/turned-on-form'
import type { KeyedEvent } from '@/lib/guide/booking'
import { type EpisodeKind, episodeOn } from '@/lib/guide/episode'
import { finderStart } from '@/lib/guide/finder-start'
import { dayOfMinute, phoneCookie, readPhoneMemory } from '@/lib/guide/phone-memory'

const NOW = Math.floor(Date.parse('2026-11-25T18:00:00Z') / 60_000)
const YEAR = 366 * 24 * 60
const start = (answer: 'as-always' | 'not-as-always') => ({ answer, began: NOW - 10, minute: NOW })

function before(kind: EpisodeKind, minutes: number): KeyedEvent {
  return { kind, on: dayOfMinute(NOW - minutes), at: NOW - minutes, key: `k.${minutes}` }
}

test('a home that is well and starts as always after its filter was reached has spent nothing', () => {
  expect(finderStart(start('as-always'), [])).toEqual([])
  expect(finderStart(start('as-always'), [before('technician-visit', 100)])).toEqual([])
  expect(finderStart(start('as-always'), [before('start-spent', YEAR + 5)])).toEqual([])
})

test('in a trouble that is remembered, turning it on again spends the one start', () => {
  for (const kind of ['trouble-began', 'start-spent', 'trip', 'hazard-stop', 'hazard-leave'] as const) {
    const events = [before(kind, 100)]
    const booked = finderStart(start('as-always'), events)
    expect(episodeOn([...events, ...booked], '2026-11-25').resetUsed, kind).toBe('yes')
    // Written down in any case: the year after which it fills again counts from this start.
    expect(booked).toEqual([{ kind: 'start-spent', on: '2026-11-25', at: NOW, key: `finder.${NOW - 10}.turned-on.1` }])
  }
})

test('the last thing that happened says whether there is a trouble, in whatever order it was written', () => {
  const both = (first: EpisodeKind, then: EpisodeKind) => {
    const events = [before(first, 100), before(then, 50)]
    const [one, other] = [events, events.toReversed()].map((each) => finderStart(start('as-always'), each).length)
    expect(one).toBe(other)
    return one
  }
  expect(both('trouble-began', 'technician-visit')).toBe(0)
  expect(both('technician-visit', 'trouble-began')).toBe(1)
  expect(both('trip', 'clearance')).toBe(0)
  // What a wrong clock wrote for tomorrow has not happened.
  expect(finderStart(start('as-always'), [before('trouble-began', -24 * 60)])).toEqual([])
  const kept = Object.freeze([before('trouble-began', 100), before('technician-visit', 50)])
  expect(finderStart(start('as-always'), kept)).toEqual([])
})

test('a start that goes otherwise than always is spent, also where nothing was wrong before; sent twice it is one', () => {
  const booked = finderStart(start('not-as-always'), [])
  expect(episodeOn(booked, '2026-11-25').resetUsed).toBe('yes')
  const cookie = phoneCookie(undefined, booked, false)
  const value = /=([^;]*)/.exec(cookie)?.[1]
  expect(readPhoneMemory(value).map(({ kind }) => kind)).toEqual(['trouble-began', 'start-spent'])
  expect(phoneCookie(value, booked, false)).toBe(cookie)
})

test('whatever is sent, an unclear answer is the cautious one and nobody is led elsewhere', () => {
  const sent = (fields: Record<string, string>) => {
    const form = new FormData()
    for (const [name, value] of Object.entries(fields)) form.set(name, value)
    return parseTurnedOn(form)
  }
  expect(sent({}).answer).toBe('not-as-always')
  expect(sent({ answer: 'AS-ALWAYS' }).answer).toBe('not-as-always')
  for (const back of ['https://elsewhere.example/', '//elsewhere.example', '/find?a=x\r\nset-cookie: y', '/find/../x'])
    expect(sent({ answer: 'as-always', back }).back).toBe('/find?&on=1')
  expect(sent({ answer: 'as-always', back: '/find?a=no.no&t=5', t: '5' })).toMatchObject({
    back: '/find?a=no.no&t=5&on=1',
    began: 5,
  })
})
