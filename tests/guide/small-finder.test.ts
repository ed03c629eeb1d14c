import { describe, expect, it } from 'vitest'
import { encodeWalk, parseWalk, withoutLast } from '@/lib/guide/address'
import { finderHref, walkFinder } from '@/lib/guide/finder-address'
import { finderCard } from '@/lib/guide/finder-card'
import { addressAfter, addressBefore, answersFromAddress, replayFinder } from '@/lib/guide/finder-replay'
import type { Finder, FinderCardTexts, FinderDraft, FinderScreen } from '@/lib/guide/finder-types'
import { lightOfAnswer } from '@/lib/guide/which-filter'

const NOW = 29_000_000

function question(id: string, ...answers: [id: string, next: string, sets?: FinderDraft][]): FinderScreen {
  return {
    ...{ id, kind: 'question', title: id, text: [], sources: [], asks: [] },
    answers: answers.map(([answer, next, sets]) => ({ id: answer, say: answer, next, ...(sets && { sets }) })),
  }
}

function referral(id: string, severity: 0 | 1 | 2 | 3): FinderScreen {
  return { id, kind: 'referral', title: id, text: [], sources: [], severity, offersCheck: false }
}

/** Two gates, whose home it is, and a fork on it. */
const SMALL: Finder = {
  start: 'one',
  screens: [
    question('one', ['no', 'two'], ['yes', 'leave']),
    question('two', ['no', 'whose'], ['yes', 'later']),
    question('whose', ['own', 'fork', { whose: 'own' }], ['rent', 'fork', { whose: 'rent' }], ['skip', 'fork']),
    { kind: 'fork', id: 'fork', on: 'whose', to: { own: 'far', rent: 'end' }, otherwise: 'end' },
    question('far', ['done', 'end', { reach: 'floor' }]),
    { id: 'end', kind: 'card', title: 'end', text: [], sources: [] },
    referral('leave', 3),
    referral('later', 1),
  ],
}

describe('the finder’s replay', () => {
  it('goes on by what is known at a fork, and the other way where nothing is', () => {
    expect(replayFinder(SMALL, ['no', 'no', 'own']).screen.id).toBe('far')
    expect(replayFinder(SMALL, ['no', 'no', 'rent']).screen.id).toBe('end')
    expect(replayFinder(SMALL, ['no', 'no', 'skip']).screen.id).toBe('end')
    expect(replayFinder(SMALL, ['no', 'no', 'own', 'done']).draft).toEqual({ whose: 'own', reach: 'floor' })
  })

  it('stops at the first answer that does not fit, and keeps the rest apart', () => {
    expect(replayFinder(SMALL, ['no', 'maybe', 'own'])).toMatchObject({
      screen: { id: 'two' },
      stray: ['maybe', 'own'],
    })
    // At an end there is nothing left to answer.
    expect(replayFinder(SMALL, ['yes', 'no'])).toMatchObject({ screen: { id: 'leave' }, stray: ['no'] })
    expect(replayFinder(SMALL, ['no', 'no'])).toMatchObject({ stray: [] })
  })

  it('throws on a screen that there is not, and on forks in a circle', () => {
    const fork = (id: string, otherwise: string): FinderScreen => ({ kind: 'fork', id, on: 'whose', to: {}, otherwise })
    expect(() => replayFinder({ start: 'gone', screens: [] }, [])).toThrow('the finder has no screen gone')
    expect(() => replayFinder({ start: 'a', screens: [fork('a', 'b'), fork('b', 'a')] }, [])).toThrow(
      'in a circle at a',
    )
    expect(
      replayFinder({ start: 'a', screens: [fork('a', 'b'), fork('b', 'c'), referral('c', 0)] }, []).screen.id,
    ).toBe('c')
  })

  it('writes the address of the next screen and of the one before', () => {
    const state = replayFinder(SMALL, ['no', 'no', 'stray'])
    expect(addressAfter(state, 'own')).toBe('no.no.own')
    expect(addressBefore(state)).toBe('no')
    expect(addressBefore(replayFinder(SMALL, []))).toBeNull()
    expect(addressBefore(replayFinder(SMALL, ['no']))).toBe('')
  })

  it('reads forty answers of a thousand letters at most', () => {
    expect(answersFromAddress('no..no.')).toEqual(['no', 'no'])
    expect(answersFromAddress(null)).toEqual([])
    expect(answersFromAddress('')).toEqual([])
    expect(answersFromAddress(Array(60).fill('no').join('.'))).toHaveLength(40)
    expect(answersFromAddress('x'.repeat(1200))).toEqual(['x'.repeat(1000)])
  })
})

describe('the finder’s address', () => {
  const walk = (a: string, t: number | string = NOW, k = '') => walkFinder(SMALL, { a, t: String(t), k }, NOW)

  it('is believed for 15 minutes, and 5 minutes ahead, for clocks differ', () => {
    for (const t of [NOW - 15, NOW, NOW + 5])
      expect(walk('no.no', t)).toMatchObject({ isAskedAgain: false, screen: { id: 'whose' } })
    for (const t of [NOW - 16, NOW + 6, `x${NOW}`, `${NOW}x`, '1234567890'])
      expect(walk('no.no.own', t)).toMatchObject({ isAskedAgain: true, kept: 'no.no.own', screen: { id: 'one' } })
  })

  it('keeps old answers only where they go on beyond two denials', () => {
    expect(walk('no.no', 0)).toMatchObject({ isAskedAgain: true, kept: '' })
    expect(walk('no.no', 0, 'no.no.own')).toMatchObject({ isAskedAgain: true, kept: 'no.no.own' })
    expect(walk('no.own.own', 0)).toMatchObject({ kept: '' })
    expect(walk('own.no.own', 0)).toMatchObject({ kept: '' })
    expect(walk('no.no.own', 0, 'no.no.rent').kept).toBe('no.no.own')
  })

  it('asks again what was only sent away for later, and never what is urgent', () => {
    expect(walk('no.yes', 0)).toMatchObject({ isAskedAgain: true, screen: { id: 'one' } })
    expect(walk('yes', 0)).toMatchObject({ isAskedAgain: false, screen: { id: 'leave' } })
    const urgent = { ...SMALL, screens: SMALL.screens.map((s) => (s.id === 'later' ? referral('later', 2) : s)) }
    expect(walkFinder(urgent, { a: 'no.yes', t: '0', k: '' }, NOW)).toMatchObject({
      isAskedAgain: false,
      screen: { id: 'later' },
    })
  })

  it('goes on with kept answers once both gates are denied anew, and not with a stray answer among them', () => {
    expect(walk('no.no', NOW, 'no.no.own')).toMatchObject({ screen: { id: 'far' }, kept: '', isAskedAgain: false })
    expect(walk('no', NOW, 'no.no.own')).toMatchObject({ screen: { id: 'two' }, kept: 'no.no.own' })
    expect(walk('no.no.odd', NOW, 'no.no.own')).toMatchObject({ screen: { id: 'whose' }, kept: 'no.no.own' })
    expect(walk('no.no.rent', NOW, 'no.no.own')).toMatchObject({ screen: { id: 'end' }, kept: 'no.no.own' })
    expect(walk('', NOW, 'no.no.own')).toMatchObject({ screen: { id: 'one' }, isAskedAgain: false, kept: 'no.no.own' })
  })

  it('is written with its time only where there are answers, and with what else there is', () => {
    expect(finderHref({ a: '', t: NOW, k: 'no.no.own' })).toBe('/find?k=no.no.own')
    expect(finderHref({ a: 'no', t: NOW })).toBe(`/find?a=no&t=${NOW}`)
    expect(finderHref({ a: '', t: NOW, k: '', rest: { w: '16', h: '' } })).toBe('/find?w=16')
  })
})

describe('a filter card', () => {
  const TEXTS: FinderCardTexts = {
    places: (['wall-grille', 'in-cabinet', 'ductless-head', 'ventilator'] as const).map((place) => ({
      ...{
        place,
        name: `At the ${place}`,
        arrow: null,
        reach: [`Reach ${place}.`],
        drawing: 'arrow-wall' as const,
        sources: [],
      },
    })),
    ...{ ask: ['Ask.'], stool: ['Stool.'], cabinet: ['Cabinet.'], backOn: ['Back on.'], clogged: ['Buy one.'] },
    ...{
      damaged: ['Damaged.'],
      washable: ['Wash it.'],
      unknownMedium: ['Look at its frame.'],
      fresh: ['Fit the spare.'],
    },
  }
  const card = (draft: FinderDraft) => finderCard({ place: 'wall-grille', washable: 'no', ...draft }, TEXTS)

  it('says how to reach it to who may open it, and whom to ask to everybody else', () => {
    expect(card({ opener: 'you' })).toMatchObject({
      name: 'At the wall-grille',
      opener: 'you',
      reach: ['Reach wall-grille.', 'Back on.'],
    })
    expect(card({ opener: 'you', reach: 'stool' }).reach).toEqual(['Stool.', 'Reach wall-grille.', 'Back on.'])
    expect(card({ opener: 'you', place: 'in-cabinet' }).reach).toEqual(['Reach in-cabinet.', 'Cabinet.', 'Back on.'])
    expect(card({})).toMatchObject({ opener: 'ask', reach: ['Ask.'] })
  })

  it('has no size where it is a screen, and an unknown one where nobody read it', () => {
    expect(card({}).sizeFrom).toBe('unknown')
    expect(card({ sizeFrom: 'printed' }).sizeFrom).toBe('printed')
    for (const place of ['ductless-head', 'ventilator'] as const)
      expect(card({ place, sizeFrom: 'printed' })).toMatchObject({ sizeFrom: 'none', clogged: ['Wash it.'] })
  })

  it('says what to do when it is clogged: by whether it is whole, washable, and a spare lies there', () => {
    expect(card({}).clogged).toEqual(['Buy one.'])
    expect(card({ spare: 'yes' }).clogged).toEqual(['Fit the spare.'])
    expect(card({ spare: 'no' }).clogged).toEqual(['Buy one.'])
    expect(card({ washable: 'yes', spare: 'yes' }).clogged).toEqual(['Wash it.'])
    expect(card({ washable: 'unknown' }).clogged).toEqual(['Buy one.', 'Look at its frame.'])
    expect(card({ washable: undefined, spare: 'yes' }).clogged).toEqual(['Fit the spare.', 'Look at its frame.'])
    expect(card({ washable: 'yes', light: 'damaged' })).toMatchObject({ clogged: ['Damaged.'], light: null })
    expect([card({ light: 'dark' }).light, card({}).light]).toEqual(['dark', null])
  })

  it('is none without a place', () => {
    expect(() => finderCard({}, TEXTS)).toThrow('no card without a place')
  })
})

describe('the address of a walk', () => {
  const good = encodeWalk({ flow: 'no-heat', startedAt: NOW, steps: [{ node: 'gas', answer: 'no', minute: 0 }] })
  const because = (text: string) => {
    const parsed = parseWalk(text)
    return parsed.kind === 'broken' ? parsed.because : null
  }

  it('says in plain words what is wrong with it', () => {
    expect(because(good)).toBeNull()
    expect(because(good.replace('no-heat', '-heat'))).toBe('The link does not say what the trouble is.')
    expect(because(good.replace('no-heat', 'No'))).toBe('The link does not say what the trouble is.')
    expect(because(good.replace('no-heat', 'x'.repeat(41)))).toBe('The link does not say what the trouble is.')
    expect(because('?at=1&s=&n=0')).toBe('The link does not say what the trouble is.')
    for (const at of ['', 'x1', '1x', '1234567890'])
      expect(because(good.replace(`at=${NOW}`, `at=${at}`))).toBe('The link does not say when the walk began.')
    expect(because('?flow=a&s=&n=0')).toBe('The link does not say when the walk began.')
    for (const twice of ['flow=a', 'at=1', 's=', 'n=1'])
      expect(because(`${good}&${twice}`)).toBe('The link says the same thing twice.')
    expect(because(good.replace('n=1', 'n=2'))).toBe('The link was cut short.')
    expect(because(good.replace('&n=1', ''))).toBe('The link was cut short.')
    for (const step of ['gas.no', 'gas.no.x', 'Gas.no.0', 'xgas.no.0y', 'gas.no.1234567', 'gas..0', '.no.0'])
      expect(because(good.replace('gas.no.0', step))).toBe('The link holds an answer that can not be read.')
  })

  it('holds 300 answers and not one more', () => {
    const long = (count: number) =>
      encodeWalk({
        flow: 'a',
        startedAt: 1,
        steps: Array.from({ length: count }, () => ({ node: 'b', answer: 'c', minute: 1 })),
      })
    expect(because(long(300))).toBeNull()
    expect(because(long(301))).toBe('The link is far too long.')
  })

  it('one step back is without its last answer', () => {
    const parsed = parseWalk(good)
    expect(parsed.kind === 'walk' && withoutLast(parsed.walk).steps).toEqual([])
  })
})

describe('the light of an answer of the filter check', () => {
  it('is dark where it was changed, and none where nobody saw it', () => {
    expect(['clean', 'dark', 'changed', 'skip'].map(lightOfAnswer)).toEqual(['clear', 'dark', 'dark', null])
  })
})
