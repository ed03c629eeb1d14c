import { expect, it } from 'vitest'
import { checkSeverity, order } from '@/lib/guide/check-severity'
import { explore, type State } from '@/lib/guide/explore'
import type { Answer, Flow, GuideNode } from '@/lib/guide/types'
import { answer, graphOf, guideNode } from '../support/a-small-guide'

const end = (id: string, severity: GuideNode['severity']) => guideNode(id, 'outcome', { severity })
const ENDS = [end('fine', 0), end('mild', 1), end('urgent', 2), end('leave', 3)]

function gate(id: string, hazard: GuideNode['hazard'], yes: string, unsure: string, no: string): GuideNode {
  const answers = [answer('yes', yes), answer('unsure', unsure), answer('no', no)]
  return guideNode(id, 'gate', { hazard, answers })
}

function question(id: string, ...answers: Answer[]): GuideNode {
  return guideNode(id, 'question', { answers })
}

function graphFrom(nodes: GuideNode[]) {
  const flow: Flow = {
    id: 'small',
    title: 'Small',
    start: 'gas',
    changed: 'leave',
    facts: [{ id: 'tenure', values: ['rent', 'own'], from: 'household' }],
    nodes: [...nodes, ...ENDS],
  }
  return explore(flow)
}

/** What is found, by node. */
function faults(nodes: GuideNode[]): [string, number, string][] {
  const graph = graphFrom(nodes)
  return checkSeverity(graph, order(graph)).map(([state, [invariant, because]]) => [state.node.id, invariant, because])
}

const GAS = gate('gas', 'gas', 'leave', 'leave', 'boom')
const BOOM = gate('boom', 'boom', 'urgent', 'urgent', 'mild')

it('hazards that say as much as all that may follow without them are no fault', () => {
  expect(faults([GAS, BOOM])).toEqual([])
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'leave', 'mild')])).toEqual([])
  expect(faults([GAS, gate('boom', 'boom', 'fine', 'fine', 'fine')])).toEqual([])
  // Nothing worse than fine may follow, however far on.
  expect(faults([GAS, gate('boom', 'boom', 'fine', 'fine', 'on'), question('on', answer('on', 'fine'))])).toEqual([])
})

it('“not sure” ends no milder than “yes”, at any question', () => {
  const milder = [7, '"not sure" may end milder than "yes"'] as const
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'mild', 'mild')])).toEqual([['boom', ...milder]])
  const asked = question('ask', answer('yes', 'urgent'), answer('unsure', 'mild'), answer('no', 'leave'))
  expect(faults([gate('gas', 'gas', 'leave', 'leave', 'ask'), asked])).toEqual([['ask', ...milder]])
  // A question that nobody can answer by yes has nothing to be as severe as.
  const other = question('ask', answer('unsure', 'mild'), answer('no', 'leave'))
  expect(faults([gate('gas', 'gas', 'leave', 'leave', 'ask'), other])).toEqual([])
})

it('neither “yes” nor “not sure” at a hazard leads to a check, however far on', () => {
  const check = guideNode('check', 'check', { answers: [answer('done', 'urgent')] })
  const more = question('more', answer('on', 'check'), answer('off', 'urgent'))
  expect(faults([GAS, gate('boom', 'boom', 'more', 'urgent', 'mild'), more, check])).toEqual([
    ['boom', 7, 'yes leads to a check'],
  ])
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'more', 'mild'), more, check])).toEqual([
    ['boom', 7, 'unsure leads to a check'],
  ])
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'urgent', 'more'), more, check])).toEqual([])
  // One that is passed through is none.
  const hidden = guideNode('check', 'check', { when: { delivery: ['ducted'] }, answers: [answer('skip', 'urgent')] })
  expect(faults([GAS, gate('boom', 'boom', 'more', 'urgent', 'mild'), more, hidden])).toEqual([])
})

it('one hazard more never says less than the hazards that may still come', () => {
  expect(
    faults([gate('gas', 'gas', 'urgent', 'urgent', 'boom'), gate('boom', 'boom', 'leave', 'leave', 'mild')]),
  ).toEqual([['gas', 8, 'yes may end at 2, no at 3: one hazard more says less']])
  // The mildest end of “yes” counts, and the worst of “no”.
  for (const ways of [
    ['leave', 'mild'],
    ['mild', 'leave'],
  ] as const) {
    const both = question('both', answer('a', ways[0]), answer('b', ways[1]))
    expect(faults([gate('gas', 'gas', 'both', 'leave', 'boom'), both, BOOM])).toEqual([
      ['gas', 8, 'yes may end at 1, no at 2: one hazard more says less'],
    ])
  }
})

it('of two homes that “yes” leads to different ends the milder counts', () => {
  for (const [mildTo, leaveTo] of [
    ['rent', 'own'],
    ['own', 'rent'],
  ] as const) {
    const home = question(
      'home',
      answer('on', 'mild', { when: { tenure: [mildTo] } }),
      answer('on', 'leave', { when: { tenure: [leaveTo] } }),
    )
    expect(faults([gate('gas', 'gas', 'home', 'leave', 'boom'), home, BOOM])).toEqual([
      ['gas', 8, 'yes may end at 1, no at 2: one hazard more says less'],
    ])
    const known = question('home', answer('on', 'leave', { when: { tenure: ['rent', 'own'] } }))
    expect(faults([gate('gas', 'gas', 'home', 'leave', 'boom'), known, BOOM])).toEqual([])
  }
})

it('a hazard is judged at whatever asks about it, and a gate without a hazard has none to judge', () => {
  const asked = { ...question('ask', answer('yes', 'mild'), answer('no', 'leave')), hazard: 'boom' as const }
  expect(faults([gate('gas', 'gas', 'leave', 'leave', 'ask'), asked])).toEqual([
    ['ask', 8, 'yes may end at 1, no at 3: one hazard more says less'],
  ])
  const { hazard: _hazard, ...bare } = gate('ask', 'boom', 'mild', 'mild', 'leave')
  expect(faults([gate('gas', 'gas', 'leave', 'leave', 'ask'), bare])).toEqual([])
})

it('what was denied stays denied: the same hazard, asked again, and those before it do not count', () => {
  const again = gate('again', 'boom', 'leave', 'leave', 'mild')
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'urgent', 'again'), again])).toEqual([])
  const gasAgain = gate('again', 'gas', 'leave', 'leave', 'mild')
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'urgent', 'again'), gasAgain])).toEqual([])
  const oil = gate('again', 'oil', 'leave', 'leave', 'mild')
  expect(faults([GAS, gate('boom', 'boom', 'urgent', 'urgent', 'again'), oil]).map(([node]) => node)).toEqual(['boom'])
})

it('states are put in an order in which every way goes forward, and a circle is refused', () => {
  const graph = graphFrom([GAS, BOOM])
  const sorted = order(graph)
  expect(new Set(sorted)).toEqual(new Set(graph.states))
  expect(sorted).toHaveLength(graph.states.length)
  for (const state of graph.states)
    for (const { to } of state.edges) expect(sorted.indexOf(to)).toBeGreaterThan(sorted.indexOf(state))
  // A start that another start leads to is there once.
  const [first, second] = [0, 1].map(
    (index) => ({ index, node: guideNode(`n${index}`, 'question'), edges: [] as State['edges'] }) as unknown as State,
  ) as [State, State]
  first.edges.push({ answer: answer('on', 'n1'), to: second, admitted: 0 })
  expect(order(graphOf([], { states: [first, second], starts: [second, first, second] }))).toEqual([first, second])
  second.edges.push({ answer: answer('back', 'n0'), to: first, admitted: 0 })
  expect(() => order(graphOf([], { states: [first, second], starts: [first] }))).toThrow('a circle at n0')
})
