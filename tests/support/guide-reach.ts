import { encodeWalk, type Step, type Walk } from '@/lib/guide/address'
import { type Facts, initialMarks } from '@/lib/guide/replay'
import type { Flow, GuideNode } from '@/lib/guide/types'
import { listAnswers, nodesById, settle, take, type WalkState } from '@/lib/guide/walk'

/** For every node that somebody with these facts can come to: the shortest walk there. */
export function walksToAll(flow: Flow, facts: Facts, startedAt: number): Map<string, Walk> {
  const nodes = nodesById(flow)
  const start = settle(nodes, { node: flow.start, marks: initialMarks(flow, facts) })
  const found = new Map<string, Walk>()
  const seen = new Set<string>()
  let edge: { state: WalkState; steps: Step[] }[] = [{ state: start, steps: [] }]
  while (edge.length > 0) {
    const next: typeof edge = []
    for (const { state, steps } of edge) {
      const key = `${state.node} ${JSON.stringify(Object.entries(state.marks).sort())}`
      if (seen.has(key)) continue
      seen.add(key)
      if (!found.has(state.node)) found.set(state.node, { flow: flow.id, startedAt, steps })
      const node = nodes.get(state.node) as GuideNode
      for (const answer of listAnswers(node, state.marks)) {
        // The wait is over at once: an address holds the minute of its last answer only.
        const step = { node: node.id, answer: answer.id, minute: 0 }
        next.push({ state: settle(nodes, take(state, answer)), steps: [...steps, step] })
      }
    }
    edge = next
  }
  return found
}

export function addressOfWalk(walk: Walk): string {
  return `/check/${walk.flow}${encodeWalk(walk)}`
}
