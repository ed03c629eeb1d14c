import { describe, expect, it } from 'vitest'
import { CHANGED, RESUME, type Step, type Walk } from '@/lib/guide/address'
import { beginsWalk, bookedEvents, eventKinds, eventsBeside } from '@/lib/guide/booking'
import { type Facts, FRESH_MINUTES, initialMarks, replay } from '@/lib/guide/replay'
import type { Answer, Flow, GuideNode } from '@/lib/guide/types'
import { listAnswers, listSections, nodesById, settle, take } from '@/lib/guide/walk'
import { answer, guideNode } from '../support/a-small-guide'

const AT = 29_000_000

function node(id: string, kind: GuideNode['kind'], answers: Answer[], more: Partial<GuideNode> = {}): GuideNode {
  return guideNode(id, kind, { answers, ...more })
}

/** Gas, presence, a bang; then the one start, whether it tripped, and an end. */
const FLOW: Flow = {
  id: 'small',
  title: 'Small',
  start: 'gas',
  changed: 'leave',
  facts: [
    { id: 'hazardSeen', values: ['no', 'leave', 'stop'], from: 'episode' },
    { id: 'tripped', values: ['no', 'yes'], from: 'episode' },
    { id: 'tenure', values: ['rent', 'own'], from: 'household' },
    { id: 'told', values: ['first', 'second'], from: 'asked' },
  ],
  nodes: [
    node('gas', 'gate', [answer('no', 'here'), answer('yes', 'leave', { sets: { hazardSeen: 'leave' } })], {
      hazard: 'gas',
    }),
    // An end without answers, before whoever is asked, asks nobody.
    guideNode('early', 'outcome'),
    // A question about gas that is no gate is never asked again.
    node('gas-bill', 'question', [answer('no', 'start')], { hazard: 'boom' }),
    node('here', 'question', [answer('yes', 'boom', { sets: { presence: 'yes' } })]),
    node('boom', 'gate', [answer('no', 'start'), answer('yes', 'stop', { sets: { hazardSeen: 'stop' } })], {
      hazard: 'boom',
    }),
    node(
      'start',
      'check',
      [answer('done', 'trip'), answer('hot', 'trip', { sets: { resetUsed: 'yes' } }), answer('not-now', 'trip')],
      { turnsOn: true },
    ),
    node('trip', 'question', [
      answer('yes', 'end', { sets: { tripped: 'yes' } }),
      answer('no', 'end', { sets: { resetUsed: 'yes' } }),
    ]),
    node('end', 'outcome', []),
    node('stop', 'outcome', []),
    node('leave', 'outcome', []),
  ],
}

function walk(...steps: [string, string, number][]): Walk {
  return { flow: 'small', startedAt: AT, steps: steps.map(([n, a, minute]): Step => ({ node: n, answer: a, minute })) }
}

const HAZARDS: [string, string, number][] = [
  ['gas', 'no', 0],
  ['here', 'yes', 0],
  ['boom', 'no', 0],
]

function seen(steps: [string, string, number][], now = steps.at(-1)?.[2] ?? 0, facts: Facts = {}) {
  return replay({ flow: FLOW, facts, walk: walk(...steps), now: AT + now })
}

describe('a walk', () => {
  it('says whether the one start was given: by doing it or by an answer that says so, at a check that turns on', () => {
    const spent = (...more: [string, string, number][]) => {
      const found = seen([...HAZARDS, ...more])
      return found.kind === 'at' ? found.startSpent : null
    }
    expect(spent()).toBe(false)
    expect(spent(['start', 'done', 1])).toBe(true)
    expect(spent(['start', 'hot', 1])).toBe(true)
    expect(spent(['start', 'not-now', 1])).toBe(false)
    // Elsewhere the same mark tells of an earlier start.
    expect(spent(['start', 'not-now', 1], ['trip', 'no', 1])).toBe(false)
  })

  it('says whether it tripped, and which hazard was met', () => {
    expect(seen([...HAZARDS, ['start', 'done', 1]])).toMatchObject({ tripped: false, hazardSeen: 'no' })
    expect(seen([...HAZARDS, ['start', 'done', 1], ['trip', 'yes', 1]])).toMatchObject({ tripped: true })
    expect(seen([['gas', 'yes', 0]])).toMatchObject({ node: { id: 'leave' }, hazardSeen: 'leave' })
    expect(seen([...HAZARDS.slice(0, 2), ['boom', 'yes', 0]])).toMatchObject({ hazardSeen: 'stop' })
    // A flow that keeps no such mark has met none.
    const bare = replay({ flow: { ...FLOW, facts: [] }, facts: {}, walk: walk(), now: AT })
    expect(bare).toMatchObject({ hazardSeen: 'no', tripped: false })
    expect(seen([], 0, { hazardSeen: 'stop', tripped: 'yes' })).toMatchObject({ hazardSeen: 'stop', tripped: true })
  })

  it('keeps the words of each answer; “something changed” ends it where the home is to be left', () => {
    const found = seen([
      ['gas', 'no', 0],
      ['here', CHANGED, 1],
    ])
    expect(found).toMatchObject({ kind: 'at', node: { id: 'leave' }, hazardSeen: 'leave' })
    if (found.kind === 'at') expect(found.taken.map(({ text }) => text)).toEqual(['Words of no', 'Something changed'])
    const met = seen([...HAZARDS.slice(0, 2), ['boom', 'yes', 0]])
    if (met.kind === 'at')
      expect(met.taken.map(({ text }) => text)).toEqual(['no', 'yes', 'yes'].map((id) => `Words of ${id}`))
  })

  it('asks gas, presence and the other hazards again after more than 15 minutes, in that order', () => {
    expect(FRESH_MINUTES).toBe(15)
    expect(seen(HAZARDS, 15).kind).toBe('at')
    const asked = seen(HAZARDS, 16)
    expect(asked).toMatchObject({ kind: 'hazards-again', node: { id: 'gas' }, resumesAt: { id: 'start' }, left: 3 })
    const again: [string, string, number][] = [...HAZARDS, ['gas', 'no', 20]]
    expect(seen(again)).toMatchObject({ kind: 'hazards-again', node: { id: 'here' }, left: 2 })
    again.push(['here', 'yes', 20])
    expect(seen(again)).toMatchObject({ kind: 'hazards-again', node: { id: 'boom' }, left: 1 })
    again.push(['boom', 'no', 20])
    expect(seen(again)).toMatchObject({ kind: 'at', node: { id: 'start' } })
    // A yes does not lead back.
    expect(seen([...again.slice(0, 3), ['gas', 'yes', 20]])).toMatchObject({ kind: 'at', node: { id: 'leave' } })
  })

  it('asks nothing again before a first answer, nor at an end', () => {
    expect(seen([], 100)).toMatchObject({ kind: 'at', node: { id: 'gas' } })
    expect(seen([['gas', 'yes', 0]], 100)).toMatchObject({ kind: 'at', node: { id: 'leave' } })
    expect(seen([[RESUME, RESUME, 5]])).toMatchObject({ kind: 'at', node: { id: 'gas' } })
    expect(
      seen([
        ['gas', 'yes', 0],
        [RESUME, RESUME, 5],
      ]),
    ).toMatchObject({ kind: 'at', node: { id: 'leave' } })
  })

  it('asks them again at once where it was opened anew', () => {
    expect(
      seen([
        ['gas', 'no', 0],
        [RESUME, RESUME, 1],
      ]),
    ).toMatchObject({ kind: 'hazards-again', left: 3 })
    expect(
      seen([
        ['gas', 'no', 0],
        [RESUME, 'no', 1],
      ]).kind,
    ).toBe('broken')
  })

  it('is broken by what nobody could have tapped', () => {
    const because = (steps: [string, string, number][], now?: number) => {
      const found = seen(steps, now)
      return found.kind === 'broken' ? found.because : null
    }
    expect(because([['here', 'yes', 0]])).toBe('The link skips a question.')
    expect(because([['gas', 'maybe', 0]])).toBe('The link holds an answer that does not exist.')
    expect(
      because(
        [
          ['gas', 'no', 2],
          ['here', 'yes', 1],
        ],
        5,
      ),
    ).toBe('The times in the link run backwards.')
    expect(because([['gas', 'no', 6]], 5)).toBe('The link holds an answer from the future.')
    expect(because([], -1)).toBe('The link begins in the future.')
    expect(because([['gas', 'no', 5]], 5)).toBeNull()
    const other = replay({ flow: { ...FLOW, id: 'other' }, facts: {}, walk: walk(), now: AT })
    expect(other).toMatchObject({ kind: 'broken', because: 'The link belongs to another part of the guide.' })
  })

  it('begins with what is known, the cautious value where it is not, and nothing of what is only asked', () => {
    const marks = { hazardSeen: 'no', tripped: 'no', tenure: 'rent' }
    expect(initialMarks(FLOW, {})).toEqual(marks)
    expect(initialMarks(FLOW, { tenure: 'own', told: 'second', tripped: 'nonsense' })).toEqual({
      ...marks,
      tenure: 'own',
    })
  })
})

describe('passing through nodes that are not shown', () => {
  const skipped = (answers: Answer[], id = 'a') => node(id, 'question', answers, { when: { tenure: ['own'] } })
  const rent = { tenure: 'rent' }

  it('takes their one skip, as many as there are', () => {
    const nodes = nodesById({
      ...FLOW,
      nodes: [
        skipped([answer('skip', 'b')]),
        skipped([answer('skip', 'c', { sets: { told: 'x' } })], 'b'),
        node('c', 'outcome', []),
      ],
    })
    expect(settle(nodes, { node: 'a', marks: rent })).toEqual({ node: 'c', marks: { ...rent, told: 'x' } })
    expect(settle(nodes, { node: 'a', marks: { tenure: 'own' } }).node).toBe('a')
    expect(listAnswers(nodes.get('a') as GuideNode, rent).map(({ id }) => id)).toEqual(['skip'])
    expect(listAnswers(nodes.get('a') as GuideNode, { tenure: 'own' })).toEqual([])
    // A mark that was never set has no value.
    expect(settle(nodes, { node: 'a', marks: {} }).node).toBe('c')
  })

  it('throws where there is no skip, more than one, a circle, or no such node', () => {
    const from = (nodes: GuideNode[]) => () => settle(nodesById({ ...FLOW, nodes }), { node: 'a', marks: rent })
    expect(from([skipped([answer('no', 'a')])])).toThrow('a: not shown, and no single skip')
    expect(from([skipped([answer('skip', 'c'), answer('skip', 'd')])])).toThrow('a: not shown, and no single skip')
    expect(from([skipped([answer('skip', 'a')])])).toThrow('skips go in a circle at a')
    expect(from([skipped([answer('skip', 'z')])])).toThrow('no node z')
  })

  it('lists the sections that apply, none where there are none', () => {
    const sections = [
      { slot: 'call', text: 'To all.' },
      { slot: 'tenant', text: 'To a renter.', when: { tenure: ['rent'] } },
    ] as GuideNode['sections']
    expect(listSections(node('a', 'outcome', [], { sections }), { tenure: 'own' }).map(({ text }) => text)).toEqual([
      'To all.',
    ])
    expect(listSections(node('a', 'outcome', []), rent)).toEqual([])
    expect(take({ node: 'a', marks: rent }, answer('no', 'b'))).toEqual({ node: 'b', marks: rent })
  })
})

describe('what is written down of an answer', () => {
  const [start, trip] = [FLOW.nodes.find(({ id }) => id === 'start'), FLOW.nodes.find(({ id }) => id === 'trip')] as [
    GuideNode,
    GuideNode,
  ]

  it('is a start where one was given, a trip, a hazard, or nothing', () => {
    const kinds = (of: GuideNode, id: string) => eventKinds(of, of.answers?.find((each) => each.id === id) as Answer)
    expect(kinds(start, 'done')).toEqual(['start-spent'])
    expect(kinds(start, 'hot')).toEqual(['start-spent'])
    expect(kinds(start, 'not-now')).toEqual([])
    expect(kinds(trip, 'yes')).toEqual(['trip'])
    // Done at a check that turns nothing on gives no start.
    expect(eventKinds({ ...start, turnsOn: false }, answer('done', 'trip'))).toEqual([])
    expect(eventKinds(trip, answer('done', 'end', { sets: { hazardSeen: 'stop' } }))).toEqual(['hazard-stop'])
  })

  it('is that trouble began, where it is the first answer of a walk', () => {
    const gas = FLOW.nodes[0] as GuideNode
    const no = gas.answers?.[0] as Answer
    expect(beginsWalk(walk(), no)).toBe(true)
    expect(beginsWalk(walk(), CHANGED)).toBe(false)
    expect(beginsWalk(walk(['gas', 'no', 0]), no)).toBe(false)
    const first = bookedEvents(walk(), gas, gas.answers?.[1] as Answer, { minute: AT, on: '2026-11-25' })
    expect(first.map(({ kind, key }) => [kind, key])).toEqual([
      ['trouble-began', `small.${AT}.0.gas.yes.0`],
      ['hazard-leave', `small.${AT}.0.gas.yes.1`],
    ])
    expect(bookedEvents(walk(['gas', 'no', 0]), gas, no, { minute: AT, on: '2026-11-25' })).toEqual([])
  })

  it('belongs to the walk as long as its address holds the step, whatever its number', () => {
    const key = `small.${AT}.0.gas.no`
    const event = (end: string) => ({ kind: 'trip' as const, on: '2026-11-25', at: AT, key: `${key}.${end}` })
    expect(eventsBeside(walk(['gas', 'no', 0]), [event('0'), event('12')])).toEqual([])
    expect(eventsBeside(walk(), [event('0')])).toHaveLength(1)
  })
})
