import fc from 'fast-check'
import { expect, test } from 'vitest'
import { FINDER } from '@/content/finder/finder'
import { FRESH_MINUTES, finderHref, walkFinder } from '@/lib/guide/finder-address'

const NOW = 29_000_000
const at = (a: string, t: number | string, k = '') => walkFinder(FINDER, { a, t: String(t), k }, NOW)

test('within fifteen minutes a walk goes on; after that, or without its time, the hazards are asked again', () => {
  expect(at('no.no.own', NOW - FRESH_MINUTES).screen.id).toBe('kind')
  for (const t of [NOW - FRESH_MINUTES - 1, '', 'soon', '1e9', '-5', NOW + 60]) {
    const walk = at('no.no.own', t)
    expect([walk.screen.id, walk.isAskedAgain, walk.kept]).toEqual(['hazards', true, 'no.no.own'])
  }
})

test('who begins is asked for the first time, not again, whatever is to be gone on with', () => {
  for (const t of ['', NOW, NOW - FRESH_MINUTES - 1]) {
    const { screen, steps, stray, isAskedAgain, kept } = at('', t)
    expect([screen.id, steps, stray, isAskedAgain, kept]).toEqual(['hazards', [], [], false, ''])
    expect(at('', t, 'no.no.own')).toMatchObject({ screen: { id: 'hazards' }, isAskedAgain: false, kept: 'no.no.own' })
  }
})

test('asked again, the walk begins anew with nothing astray', () => {
  expect(at('no.no.own', '')).toMatchObject({ isAskedAgain: true, steps: [], stray: [] })
})

test('only the whole minutes that the guide writes are a time, not what a machine may read as one', () => {
  expect(at('no.no.own', String(NOW)).screen.id).toBe('kind')
  for (const t of ['2.9e7', `${NOW}.0`, ` ${NOW}`, `+${NOW}`, `${NOW} `, `0x${NOW.toString(16)}`]) {
    expect(Number(t)).toBe(NOW)
    expect([t, at('no.no.own', t).screen.id]).toEqual([t, 'hazards'])
  }
})

test('once both gates are answered again, the walk goes on where it was', () => {
  expect(at('no', NOW, 'no.no.own').screen.id).toBe('trouble')
  const walk = at('no.no', NOW, 'no.no.own.ducts')
  expect([walk.screen.id, walk.kept]).toEqual(['test', ''])
})

test('a hazard found on being asked again ends the walk, whatever was kept', () => {
  for (const answer of ['yes', 'unsure']) {
    expect(at(answer, NOW, 'no.no.own').screen).toMatchObject({ id: 'leave', severity: 3 })
    expect(at(`no.${answer}`, NOW, 'no.no.own').screen).toMatchObject({ id: 'stop', severity: 2 })
  }
})

test('who is told to leave or to stop stays told so, however old the address', () => {
  expect(at('yes', 1).screen.id).toBe('leave')
  expect(at('no.unsure', '').screen.id).toBe('stop')
})

test('no kept answers lead past the gates: only two fresh denials do', () => {
  const ids = fc.constantFrom('no', 'yes', 'unsure', 'own', 'rent', 'ducts', 'sticks', 'floor', 'done', 'x')
  const list = fc.array(ids, { maxLength: 8 }).map((answers) => answers.join('.'))
  const time = fc.oneof(fc.integer({ min: NOW - 40, max: NOW + 40 }).map(String), fc.constantFrom('', 'x', '0'))
  fc.assert(
    fc.property(list, time, list, (a, t, k) => {
      const walk = walkFinder(FINDER, { a, t, k }, NOW)
      const isStep = walk.screen.kind === 'card' || (walk.screen.kind === 'question' && walk.screen.asks.length > 0)
      if (!isStep) return
      expect(Number(t)).toBeGreaterThanOrEqual(NOW - FRESH_MINUTES)
      expect(a.split('.').slice(0, 2)).toEqual(['no', 'no'])
    }),
    { numRuns: 2000 },
  )
})

test('an address carries the answers, their time, and what else is given', () => {
  expect(finderHref({ a: '', t: '' })).toBe('/find')
  expect(finderHref({ a: 'no.no', t: 5, k: 'no.no.own', rest: { home: 'h', w: '' } })).toBe(
    '/find?a=no.no&t=5&k=no.no.own&home=h',
  )
})
