import { describe, expect, it } from 'vitest'
import { getFlow } from '@/content/guide/flows'
import { explore, liveNames, pathTo } from '@/lib/guide/explore'
import { exportFlows } from '@/lib/guide/export'
import type { Flow } from '@/lib/guide/types'

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

  it('throws beyond its limit instead of cutting in silence', () => {
    const flow = getFlow('alarm')
    const { length } = explore(flow).states
    expect(explore(flow, liveNames(flow), length).states).toHaveLength(length)
    expect(() => explore(flow, liveNames(flow), length - 1)).toThrow(`more than ${length - 1} states`)
  })
})
