import { expect, it } from 'vitest'
import { CHANGED } from '@/lib/guide/address'
import { checkShape } from '@/lib/guide/check-shape'
import type { Flow, GuideNode, GuideSource } from '@/lib/guide/types'
import { answer, guideNode } from '../support/a-small-guide'

const SOURCES: GuideSource[] = [{ id: 'one', name: 'One', mark: 'C' }]
const GAS = guideNode('gas', 'gate', {
  hazard: 'gas',
  answers: [answer('yes', 'leave', { as: 'text' }), answer('unsure', 'leave', { as: 'text' }), answer('no', 'boom')],
})
const BOOM = guideNode('boom', 'gate', {
  hazard: 'boom',
  answers: [answer('yes', 'leave'), answer('unsure', 'leave'), answer('no', 'look')],
})
const LOOK = guideNode('look', 'check', {
  action: 'filter',
  says: ['filter'],
  when: { delivery: ['ducted'] },
  answers: [answer('done', 'wait'), answer('skip', 'wait')],
})
const WAIT = guideNode('wait', 'wait', { minutes: 5, answers: [answer('waited', 'end')] })
const END = guideNode('end', 'outcome', { severity: 1, sections: [{ slot: 'call', text: 'Call.' }] })
const LEAVE = guideNode('leave', 'outcome', {
  severity: 3,
  text: 'Gas smell, CO alarm or smoke: get everyone out.',
})
const NODES = [GAS, BOOM, LOOK, WAIT, END, LEAVE]

function faults(nodes: GuideNode[], sources = SOURCES, change: Partial<Flow> = {}): [number, string, string][] {
  const flow: Flow = { id: 'small', title: 'Small', start: 'gas', changed: 'leave', facts: [], nodes, ...change }
  return checkShape(flow, sources).map(({ invariant, node, because }) => [invariant, node, because])
}

/** The faults of the flow with one node changed, of that node. */
function withNode(of: GuideNode, change: Partial<GuideNode>): [number, string][] {
  const nodes = NODES.map((node) => (node.id === of.id ? { ...node, ...change } : node))
  return faults(nodes).map(([invariant, , because]) => [invariant, because])
}

const without = (node: GuideNode, id: string) => node.answers?.filter((one) => one.id !== id)

it('a sound flow has no fault', () => {
  expect(faults(NODES)).toEqual([])
})

const BROKEN: [string, GuideNode, Partial<GuideNode>, [number, unknown][]][] = [
  ['a kind of its own', WAIT, { kind: 'nap' as never }, [[1, 'kind nap is not on the closed list']]],
  ['an answer that addresses use', WAIT, { answers: [answer(CHANGED, 'end')] }, [[1, 'a name that addresses use']]],
  ['no way on', WAIT, { answers: [answer('skip', 'end')] }, [[1, 'no answer leads on']]],
  ['conditional without a skip', LOOK, { answers: without(LOOK, 'skip') }, [[1, 'conditional, and no skip']]],
  ['an end without severity', END, { severity: undefined }, [[1, 'an outcome without a severity']]],
  ['an end of a severity that is none', END, { severity: 4 as never }, [[1, 'an outcome without a severity']]],
  ['an end that leads on', END, { answers: [answer('on', 'leave')] }, [[1, 'an outcome has answers']]],
  ['an emergency that leads on', LEAVE, { answers: [answer('on', 'end')] }, [[12, 'an outcome has answers']]],
  ['a gate without a hazard', BOOM, { hazard: undefined }, [[2, 'a gate without a hazard of the list']]],
  ['a gate of a hazard of its own', BOOM, { hazard: 'bees' as never }, [[2, 'a gate without a hazard of the list']]],
  [
    'a gate that depends on something',
    BOOM,
    { when: { delivery: ['ducted'] }, answers: [...(BOOM.answers ?? []), answer('skip', 'look')] },
    [[3, 'a hazard question may not depend on anything']],
  ],
  ['a gate that a fact answers', BOOM, { fact: 'x' }, [[3, 'a fact may not answer a hazard question']]],
  ['a gate without unsure', BOOM, { answers: without(BOOM, 'unsure') }, [[7, 'no answer unsure']]],
  [
    'gas as a tap',
    GAS,
    { answers: GAS.answers?.map((one) => ({ ...one, as: 'button' })) },
    [
      [10, 'gas: yes must be text, never a tap'],
      [10, 'gas: unsure must be text, never a tap'],
    ],
  ],
  ['a check without an action', LOOK, { action: undefined }, [[2, 'action undefined is not on the closed list']]],
  ['a check of its own action', LOOK, { action: 'hammer' as never }, [[2, 'action hammer is not on the closed list']]],
  ['a check that says nothing', LOOK, { says: undefined }, [[2, 'a check without an instruction class']]],
  ['an instruction of its own', LOOK, { says: ['sing' as never] }, [[2, 'instruction class sing is not on the list']]],
  [
    'a start that does not count',
    LOOK,
    { says: ['filter', 'breaker'] },
    [[4, 'turns the equipment on without counting as a start']],
  ],
  ['a breaker that does not count', LOOK, { action: 'breaker' }, [[4, expect.stringContaining('counting')]]],
  ['a reset that does not count', LOOK, { action: 'reset' }, [[4, expect.stringContaining('counting')]]],
  ['a start that is forgotten', LOOK, { turnsOn: true }, [[5, 'a start that is not remembered']]],
  ['an action elsewhere', WAIT, { action: 'filter' }, [[2, 'only a check may have an action']]],
  ['a start elsewhere', WAIT, { turnsOn: true }, [[2, 'only a check may have an action']]],
  [
    'a section of its own',
    END,
    { sections: [{ slot: 'joke' as never, text: 'x', says: ['sing' as never] }] },
    [
      [2, 'instruction class sing is not on the list'],
      [13, 'slot joke is not on the list'],
    ],
  ],
  ['a short wait', WAIT, { minutes: 4 }, [[18, 'a wait of less than five minutes']]],
  ['a wait of no time', WAIT, { minutes: undefined }, [[18, 'a wait of less than five minutes']]],
  ['no day of review', END, { reviewed: 'lately' }, [[20, 'no day of review']]],
  ['no source', END, { sources: [] }, [[20, 'no source']]],
  ['a source of its own', END, { sources: ['two'] }, [[20, 'source two is not in the list']]],
  [
    'something changed that is no emergency',
    LEAVE,
    { severity: 2 },
    [[11, '"something changed" must lead to an emergency outcome']],
  ],
  [
    'something changed that does not say enough',
    LEAVE,
    { text: 'Gas smell or smoke: get everyone out.' },
    [[11, '"something changed" does not say "co alarm"']],
  ],
  ['a hazard at a plain question', WAIT, { hazard: 'oil' }, [[2, 'only a gate may have a hazard']]],
  [
    'a start that is no gate',
    GAS,
    { kind: 'question' },
    [
      [2, 'only a gate may have a hazard'],
      [10, 'a flow begins with the gas question'],
    ],
  ],
  [
    'something changed that is no end',
    LEAVE,
    { kind: 'question', answers: [answer('on', 'end')] },
    [[11, '"something changed" must lead to an emergency outcome']],
  ],
  ['a start that is no gas question', GAS, { hazard: 'co' }, [[10, 'a flow begins with the gas question']]],
]

it.each(BROKEN)('%s is the one fault that is found', (_what, of, change, expected) => {
  expect(withNode(of, change)).toEqual(expected)
})

it('a start that is remembered, a longer wait and a source that changed before the review are none', () => {
  const started = [answer('done', 'wait', { sets: { resetUsed: 'yes' } }), answer('skip', 'wait')]
  expect(withNode(LOOK, { turnsOn: true, action: 'reset', says: ['breaker'], answers: started })).toEqual([])
  expect(withNode(WAIT, { minutes: 30 })).toEqual([])
  const changed = (day: string) => faults([...NODES], [{ ...(SOURCES[0] as GuideSource), changed: day }])
  expect(changed('2026-11-01')).toEqual([])
  expect(changed('2026-11-02')).toHaveLength(NODES.length)
})

it('ids, ends and circles are told at their node', () => {
  expect(faults([...NODES, END])).toEqual([[1, 'end', 'two nodes with one id']])
  expect(faults([...NODES, { ...END, id: 'alone' }])).toEqual([[20, 'alone', 'nothing leads to this node']])
  const lost = NODES.map((node) => (node === WAIT ? { ...WAIT, answers: [answer('waited', 'gone')] } : node))
  expect(faults(lost)).toEqual([
    [1, 'gone', 'an answer leads to a node that does not exist'],
    [20, 'end', 'nothing leads to this node'],
  ])
  const round = NODES.map((node) =>
    node === WAIT ? { ...WAIT, answers: [answer('waited', 'end'), answer('again', 'boom')] } : node,
  )
  expect(faults(round)).toEqual([[1, 'boom', 'the answers lead back to this node']])
  const resumed = NODES.map((node) =>
    node === END ? { ...END, id: 'resume' } : node === WAIT ? { ...WAIT, answers: [answer('waited', 'resume')] } : node,
  )
  expect(faults(resumed)).toEqual([[1, 'resume', 'a name that addresses use']])
  expect(faults(NODES, SOURCES, { changed: 'away' }).map(([invariant, node]) => [invariant, node])).toEqual([
    [1, 'away'],
  ])
})
