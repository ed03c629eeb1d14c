import { describe, expect, it } from 'vitest'
import { getFlow } from '@/content/guide/flows'
import { explore, liveNames, pathTo } from '@/lib/guide/explore'
import { exportFlows } from '@/lib/guide/export'
import { bit, CHANGED, START_MONITOR } from '@/lib/guide/monitor'
import type { Flow, GuideNode } from '@/lib/guide/types'
import { answer, guideNode } from '../support/a-small-guide'

/** The plain way, from the exported form alone: every combination of facts one by one, and a walk from each. */
function listOneByOne(flow: Flow): Set<string> {
  const nodes = new Map(flow.nodes.map((node) => [node.id, node]))
  const holds = (when: Readonly<Record<string, readonly string[]>> | undefined, marks: Record<string, string>) =>
    Object.entries(when ?? {}).every(([name, values]) => values.includes(marks[name] ?? ''))
  let households: Record<string, string>[] = [{}]
  for (const fact of flow.facts)
    if (fact.from !== 'asked')
      households = households.flatMap((each) => fact.values.map((value) => ({ ...each, [fact.id]: value })))
  const seen = new Set<string>()
  const ends = new Set<string>()
  const todo = households.map((marks) => ({ id: flow.start, marks }))
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    const { id, marks } = at
    const key = id + JSON.stringify(Object.entries(marks).sort())
    if (seen.has(key)) continue
    seen.add(key)
    const node = nodes.get(id)
    const shown = holds(node?.when, marks)
    if (shown) ends.add(id)
    for (const answer of node?.answers ?? [])
      if ((answer.id === 'skip') !== shown && holds(answer.when, marks))
        todo.push({ id: answer.to, marks: { ...marks, ...answer.sets } })
  }
  return ends
}

function smallFlow(nodes: GuideNode[], facts: Flow['facts'] = []): Flow {
  const ends = ['end', 'leave'].map((id) => guideNode(id, 'outcome'))
  return { id: 'small', title: 'Small', start: 'ask', changed: 'leave', facts, nodes: [...nodes, ...ends] }
}

function endsOf(flow: Flow) {
  return explore(flow).states.filter(({ node }) => node.id === 'end')
}

describe('exploring', () => {
  it.each(['alarm', 'water', 'noise'])(
    '%s: reaches what listing every household one by one reaches, and no more',
    (id) => {
      const [flow] = exportFlows([getFlow(id)]).flows
      if (flow === undefined) throw new Error(id)
      const explored = new Set(
        explore(flow)
          .states.filter((state) => state.shown)
          .map((state) => state.node.id),
      )
      expect([...explored].sort()).toEqual([...new Set([...listOneByOne(flow), flow.changed])].sort())
    },
  )

  it('tells the path to a state', () => {
    const check = explore(getFlow('water')).states.find((state) => state.node.kind === 'check' && state.shown)
    if (check === undefined) throw new Error('no check')
    expect(pathTo(check)).toMatch(/^gas: no → presence: yes → co: no → .* → where: unit → off$/)
  })

  it('notes of an answer that two gates share what it says at each', () => {
    const no = answer('no', 'end')
    const flow = smallFlow([
      guideNode('ask', 'question', { answers: [answer('a', 'gas'), answer('b', 'co')] }),
      guideNode('gas', 'gate', { hazard: 'gas', answers: [no] }),
      guideNode('co', 'gate', { hazard: 'co', answers: [no] }),
    ])
    expect(endsOf(flow).map(({ monitor }) => monitor.denied)).toEqual([bit('gas'), bit('co')])
  })

  it('takes the question which system for answered only where there is one', () => {
    const which = guideNode('ask', 'question', {
      when: { systems: ['several'] },
      answers: [answer('up', 'end', { sets: { systems: 'chosen' } }), answer('skip', 'end')],
    })
    const flow = smallFlow([which], [{ id: 'systems', values: ['unknown', 'one', 'several'], from: 'household' }])
    const asked = endsOf(flow).map(({ monitor, parent }) => [parent?.state.marks.systems, monitor.whichAsked])
    expect(asked).toEqual([
      ['unknown', false],
      // Passed with one, and asked with several, it is known: one state of both.
      ['one', true],
    ])
  })

  it('keeps what an answer set, and knows nothing of what is only asked before it is', () => {
    const flow = smallFlow(
      [
        guideNode('ask', 'question', {
          answers: [answer('mine', 'read', { sets: { tenure: 'own' } }), answer('b', 'read')],
        }),
        guideNode('read', 'question', {
          answers: [answer('x', 'end', { when: { tenure: ['own'] } }), answer('y', 'end', { when: { told: ['it'] } })],
        }),
      ],
      [
        { id: 'tenure', values: ['rent', 'own'], from: 'household' },
        { id: 'told', values: ['it', 'else'], from: 'asked' },
      ],
    )
    const read = explore(flow).states.filter(({ node }) => node.id === 'read')
    expect(read.map(({ marks }) => marks)).toStrictEqual([{ tenure: 'own' }, { tenure: 'rent' }, { tenure: 'own' }])
  })

  it('begins at the first question, and with gas, CO and smoke wherever something changed', () => {
    const [first, changed] = explore(
      smallFlow([guideNode('ask', 'question', { answers: [answer('a', 'end')] })]),
    ).starts
    expect(first?.monitor).toMatchObject({ ...START_MONITOR })
    expect(changed?.node.id).toBe('leave')
    expect(changed?.monitor).toMatchObject({ ...START_MONITOR, active: CHANGED })
  })

  it('says whether the flow can give a start: one check that turns on is enough', () => {
    const givesStart = (...turnsOn: (boolean | undefined)[]) =>
      explore(smallFlow(turnsOn.map((on, i) => guideNode(i === 0 ? 'ask' : `c${i}`, 'check', { turnsOn: on }))))
        .givesStart
    expect([givesStart(false), givesStart(true), givesStart(undefined, true, false)]).toEqual([false, true, true])
  })

  it('keeps apart what the rules read at a check and at an end that can wait, and nothing else', () => {
    const flow: Flow = {
      ...smallFlow([]),
      nodes: [
        guideNode('ask', 'question', { answers: [answer('a', 'oil'), answer('b', 'call')] }),
        guideNode('call', 'question', { answers: [answer('on', 'today')] }),
        guideNode('oil', 'check', { says: ['oil-button'], answers: [answer('done', 'check')] }),
        guideNode('check', 'check', { says: ['breaker'], answers: [answer('done', 'wait')] }),
        guideNode('wait', 'wait', { answers: [answer('waited', 'end')] }),
        guideNode('end', 'outcome', { severity: 1 }),
        guideNode('fine', 'outcome', { severity: 0 }),
        guideNode('bare', 'outcome'),
        guideNode('today', 'outcome', { severity: 2 }),
        guideNode('leave', 'outcome', { severity: 3 }),
      ],
    }
    const live = liveNames(flow)
    // People who can not stand the cold make an end that can wait one that can not.
    const atEnd = ['coldRisk', 'vulnerable']
    for (const id of ['end', 'fine', 'bare', 'wait']) expect([id, live.get(id)]).toEqual([id, atEnd])
    for (const id of ['today', 'leave', 'call']) expect([id, live.get(id)]).toEqual([id, []])
    // What must be known before a step, and what the budget and the episode say; who owns, for the oil button only.
    const equipment = ['breaker', 'burnsFuel', 'delivery', 'heatSource', 'oilButton', 'setting', 'switch']
    const atCheck = [...equipment, 'hazardSeen', 'resetUsed', 'tripped', ...atEnd]
    expect(live.get('check')).toEqual(atCheck.toSorted())
    for (const id of ['oil', 'ask']) expect([id, live.get(id)]).toEqual([id, [...atCheck, 'tenure'].toSorted()])
  })

  it('throws on an answer that leads nowhere', () => {
    expect(() => explore(smallFlow([guideNode('ask', 'question', { answers: [answer('a', 'lost')] })]))).toThrow(
      'flow small: no node lost',
    )
  })

  it('throws beyond its limit instead of cutting in silence', () => {
    const flow = getFlow('alarm')
    const { length } = explore(flow).states
    expect(explore(flow, liveNames(flow), length).states).toHaveLength(length)
    expect(() => explore(flow, liveNames(flow), length - 1)).toThrow(`more than ${length - 1} states`)
  })
})
