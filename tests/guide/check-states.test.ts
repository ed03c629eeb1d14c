import { describe, expect, it } from 'vitest'
import { checkState } from '@/lib/guide/check-states'
import type { State } from '@/lib/guide/explore'
import { bit, bits, type Monitor } from '@/lib/guide/monitor'
import type { GuideNode, Marks } from '@/lib/guide/types'
import { answer, graphOf, guideNode, stateOf } from '../support/a-small-guide'

const GRAPH = graphOf([])
const found = (state: State, graph = GRAPH) => [...checkState(graph, state)]
const ANSWERS = [answer('done', 'end'), answer('not-now', 'end')]
const CHECK = guideNode('filter', 'check', { action: 'filter', says: ['clear-space'], answers: ANSWERS })
const SAFE: Marks = { hazardSeen: 'no', resetUsed: 'no', tripped: 'no', burnsFuel: 'yes' }

describe('a check', () => {
  const check = (monitor: Partial<Monitor>, node: Partial<GuideNode> = {}, marks: Marks = {}) =>
    found(stateOf({ ...CHECK, ...node }, { marks: { ...SAFE, ...marks }, monitor }))

  it('with everything asked and denied has no fault', () => {
    expect(check({})).toEqual([])
    expect(check({}, { action: 'reset', turnsOn: true, says: ['clear-space'] })).toEqual([])
  })

  it.each<[string, Partial<Monitor>, [number, string][]]>([
    ['a hazard never asked about', { denied: ~bit('oil') }, [[3, 'reachable without asking about oil']]],
    [
      'a hazard that is there',
      { active: bit('boom') },
      [
        [9, 'says clear-space, and boom is there or not ruled out'],
        [22, 'reachable although boom was answered yes'],
      ],
    ],
    ['somebody who is elsewhere', { present: false }, [[23, 'reachable by someone who is not in the home']]],
    ['no question which system', { whichAsked: false }, [[24, 'reachable without asking which system']]],
    ['a start before', { starts: 1 }, [[4, 'a check after the start']]],
    ['a second trip', { tripped: true }, [[6, 'reachable after a second trip']]],
    ['six actions before', { actions: 6 }, [[17, 'more than six actions on one path']]],
    ['nothing turned off', { off: false }, [[17, 'before everything is turned off']]],
    ['no question for the start', { startLeft: false }, [[5, 'reachable without asking whether the start was spent']]],
    ['a start and no wait', { stale: 1 }, [[18, 'a start is not followed by a wait']]],
    ['a wait and no questions', { stale: 2 }, [[21, 'hazards were not asked again after the wait']]],
  ])('after %s is at fault', (_what, monitor, expected) => {
    expect(check(monitor)).toEqual(expected)
  })

  it('is fine after five actions', () => {
    expect(check({ actions: 5 })).toEqual([])
  })

  it.each<[string, Marks, [number, string][]]>([
    ['hazardSeen', { hazardSeen: 'leave' }, [[22, 'reachable with hazardSeen leave']]],
    ['resetUsed', { resetUsed: 'yes' }, [[4, 'reachable with resetUsed yes']]],
    ['tripped', { tripped: 'yes' }, [[6, 'reachable with tripped yes']]],
  ])('with the mark %s is one fault, and unread another', (mark, marks, expected) => {
    expect(check({}, {}, marks)).toEqual(expected)
    const unread = found(
      stateOf(CHECK, { marks: Object.fromEntries(Object.entries(SAFE).filter(([key]) => key !== mark)) }),
    )
    expect(unread).toEqual([[expected[0]?.[0], `reachable with ${mark} unread`]])
  })

  it('of a flow that gives no start needs nothing that a start needs', () => {
    const state = stateOf(CHECK, { marks: { hazardSeen: 'no' }, monitor: { startLeft: false } })
    expect(found(state, graphOf([], { givesStart: false }))).toEqual([])
  })

  it.each<[GuideNode['says'], Marks, number]>([
    [['filter'], { delivery: 'ducted' }, 14],
    [['registers'], { delivery: 'ducted' }, 14],
    [['oil-button'], { heatSource: 'oil', tenure: 'own', oilButton: 'out' }, 14],
    [['emergency-heat'], { heatSource: 'heat-pump' }, 14],
    [['breaker'], { breaker: 'tripped' }, 17],
    [['switch-on'], { switch: 'off' }, 17],
    [['batteries'], { setting: 'blank' }, 17],
  ])('that says %j needs %j, else it breaks invariant %i', (says, marks, invariant) => {
    expect(check({}, { says }, marks)).toEqual([])
    for (const mark of Object.keys(marks))
      expect(check({}, { says }, { ...marks, [mark]: 'other' })).toEqual([
        [invariant, expect.stringMatching(`^says ${says?.[0]} without`)],
      ])
  })

  it('that turns something on, or touches a vent, needs a CO alarm unless nothing burns', () => {
    const guarded: Partial<GuideNode>[] = [
      { turnsOn: true },
      { action: 'breaker' },
      { action: 'reset' },
      { says: ['vent-clearing'] },
    ]
    for (const node of guarded) {
      expect(check({ coAlarm: false }, node)).toEqual([[23, 'without a CO alarm that works']])
      const vent = node.says ? [[14, expect.stringContaining('vent-clearing')]] : []
      expect(check({ coAlarm: false }, node, { burnsFuel: 'no', heatSource: 'electric' })).toEqual(vent)
      expect(check({ coAlarm: false }, node, { burnsFuel: 'no', heatSource: 'heat-pump' })).toEqual(vent)
      expect(check({}, node, { burnsFuel: 'no', heatSource: 'oil' })).toEqual([
        ...vent,
        [23, 'taken as burning no fuel with oil'],
      ])
      expect(check({}, node, { burnsFuel: 'no' }).at(-1)).toEqual([23, 'taken as burning no fuel with unknown heat'])
    }
    expect(check({ coAlarm: false })).toEqual([])
    expect(check({ off: false }, { action: 'air-path', says: ['vent-clearing'] })).toEqual([
      [17, 'before everything is turned off'],
    ])
    expect(check({ off: false }, { action: 'air-path' })).toEqual([])
  })

  it('that turns the equipment on comes right after the hazards were asked again', () => {
    expect(check({ fresh: bits(['gas', 'co', 'fire']) }, { turnsOn: true })).toEqual([
      [21, 'a start without asking again about boom'],
    ])
    expect(check({ fresh: 0 })).toEqual([])
  })
})

describe('a step', () => {
  it('that is passed through has one way on', () => {
    const node = guideNode('x', 'question', { answers: [answer('skip', 'end')] })
    const [skip, other] = [answer('skip', 'end'), answer('skip', 'leave')]
    expect(found(stateOf(node, { shown: false, answers: [] }))).toEqual([[1, 'passed through, and no skip holds']])
    expect(found(stateOf(node, { shown: false, answers: [skip, other] }))).toEqual([
      [1, 'passed through, and two skips hold'],
    ])
    // One answer leads to several states where a fact is split.
    expect(found(stateOf(node, { shown: false, answers: [skip, skip] }))).toEqual([])
  })

  it('that is shown offers each of its answers once', () => {
    const [yes, no] = [answer('yes', 'end'), answer('no', 'end')]
    const node = guideNode('x', 'question', { answers: [yes, no, answer('skip', 'end')] })
    expect(found(stateOf(node, { answers: [yes, no] }))).toEqual([])
    expect(found(stateOf(node, { answers: [yes, yes, no] }))).toEqual([])
    expect(found(stateOf(node, { answers: [yes] }))).toEqual([[1, 'answer no is missing with these marks']])
    expect(found(stateOf(node, { answers: [yes, answer('yes', 'leave'), no] }))).toEqual([
      [1, 'two answers yes hold at once'],
    ])
  })

  it('asks no hazard any more once one is there, and is fine as a question or a wait', () => {
    const gate = guideNode('x', 'gate')
    expect(found(stateOf(gate, { monitor: { active: bit('oil') } }))).toEqual([
      [22, 'asks on although oil was answered yes or not sure'],
    ])
    expect(found(stateOf(gate, { monitor: { stale: 2 } }))).toEqual([])
    expect(found(stateOf(guideNode('x', 'wait'), { monitor: { stale: 1 } }))).toEqual([])
    expect(found(stateOf(guideNode('x', 'question'), { monitor: { active: bit('oil'), present: false } }))).toEqual([])
    expect(found(stateOf(guideNode('x', 'look'), { monitor: { present: false } }))).toEqual([
      [23, 'reachable by someone who is not in the home'],
    ])
    expect(found(stateOf(guideNode('x', 'look'), { monitor: { whichAsked: false, off: false } }))).toEqual([])
  })

  it('says nothing that a hazard forbids, in its sections too, and none of what may be there', () => {
    const says = (node: Partial<GuideNode>, monitor: Partial<Monitor>) =>
      found(stateOf(guideNode('x', 'question', node), { monitor })).map(([invariant, because]) => [invariant, because])
    expect(says({ says: ['towel'] }, { active: bit('water') })).toEqual([
      [9, 'says towel, and water is there or not ruled out'],
    ])
    expect(says({ says: ['towel'] }, { active: bit('boom') })).toEqual([])
    const sections = [{ slot: 'meanwhile' as const, text: 'x', says: ['towel' as const] }]
    expect(says({ sections }, { active: bit('water') })).toHaveLength(1)
    // With the home to be left, gas that was not denied may be there; a phone is for outside then.
    const flood = { says: ['phone-here' as const] }
    expect(says(flood, { active: bit('flood') })).toEqual([])
    expect(says(flood, { active: bit('flood'), denied: ~bit('gas') })).toEqual([
      [9, 'says phone-here, and gas is there or not ruled out'],
    ])
    expect(says(flood, { active: bit('water'), denied: ~bit('gas') })).toEqual([])
  })
})
