import { GUIDE_SOURCES } from '@/content/guide/sources'
import { order } from '@/lib/guide/check-severity'
import { checkShape } from '@/lib/guide/check-shape'
import { checkWalks } from '@/lib/guide/checker'
import { explore, type Graph, liveNames, type State } from '@/lib/guide/explore'
import { bit } from '@/lib/guide/monitor'
import { type Flow, HAZARDS, type Hazard } from '@/lib/guide/types'
import type { Violation } from '@/lib/guide/violation'

export interface Edge {
  node: number
  answer: number
  to: string
}

/** Every way to lead one answer to another node. */
export function listRewirings(flow: Flow): Edge[] {
  return flow.nodes.flatMap((node, n) =>
    (node.answers ?? []).flatMap((answer, a) =>
      flow.nodes.filter((other) => other.id !== answer.to).map((other) => ({ node: n, answer: a, to: other.id })),
    ),
  )
}

export function rewired(flow: Flow, edge: Edge): Flow {
  const nodes = flow.nodes.map((node, n) =>
    n !== edge.node
      ? node
      : {
          ...node,
          answers: (node.answers ?? []).map((answer, a) =>
            a === edge.answer ? { ...answer, to: edge.to } : { ...answer },
          ),
        },
  )
  return { ...flow, nodes }
}

export type Verdict =
  | { kind: 'caught'; violations: Violation[] }
  | { kind: 'harmless' }
  | { kind: 'missed'; because: string }

/** Caught by the checker, or harmless: no action more and no severity less on any state. Anything else is missed. */
export function judge(flow: Flow, edge: Edge): Verdict {
  const mutant = rewired(flow, edge)
  const shape = checkShape(mutant, GUIDE_SOURCES)
  if (shape.length > 0) return { kind: 'caught', violations: shape }
  // One set of names for both, so that their states compare.
  const node = flow.nodes[edge.node]
  const answer = node?.answers?.[edge.answer]
  if (node === undefined || answer === undefined) throw new Error('no such edge')
  const both = {
    ...flow,
    nodes: flow.nodes.map((each) =>
      each === node ? { ...node, answers: [...(node.answers ?? []), { ...answer, to: edge.to }] } : each,
    ),
  }
  const live = liveNames(both)
  const after = explore(mutant, live)
  const violations = checkWalks(after)
  if (violations.length > 0) return { kind: 'caught', violations }
  const because = harm({ before: explore(flow, live), after, nodeId: node.id, edge, live })
  return because === null ? { kind: 'harmless' } : { kind: 'missed', because }
}

interface HarmParts {
  before: Graph
  after: Graph
  nodeId: string
  edge: Edge
  live: ReadonlyMap<string, string[]>
}

function harm({ before, after, nodeId, edge, live }: HarmParts): string | null {
  const ends = { before: ending(before), after: ending(after) }
  const names = live.get(nodeId) ?? []
  const keyOf = ({ marks, monitor }: State) => JSON.stringify([{ ...monitor, id: 0 }, names.map((name) => marks[name])])
  const states = new Map(
    before.states.filter((state) => state.node.id === nodeId).map((state) => [keyOf(state), state]),
  )
  for (const state of after.states) {
    if (state.node.id !== nodeId) continue
    const old = states.get(keyOf(state))
    if (old === undefined) throw new Error('a state before the edge differs')
    const answer = state.node.answers?.[edge.answer]
    const to = state.edges.filter((each) => each.answer === answer).map((each) => each.to)
    if (to.length === 0) continue
    const oldAnswer = old.node.answers?.[edge.answer]
    const oldTo = old.edges.filter((each) => each.answer === oldAnswer).map((each) => each.to)
    const gained = union(to, ends.after.actions) & ~union(oldTo, ends.before.actions)
    if (gained) return `gains actions ${gained.toString(2)}`
    for (const truth of [null, ...HAZARDS]) {
      if (truth !== null && state.monitor.denied & bit(truth)) continue
      const now = Math.min(...to.map((each) => ends.after.least(truth)[each.index] as number))
      const then = Math.min(...oldTo.map((each) => ends.before.least(truth)[each.index] as number))
      if (now < then) return `severity ${then} becomes ${now} with ${truth ?? 'no hazard'}`
    }
  }
  return null
}

function union(states: readonly State[], actions: Int32Array): number {
  return states.reduce((sum, state) => sum | (actions[state.index] as number), 0)
}

function ending(graph: Graph) {
  const sorted = order(graph)
  const checks = graph.flow.nodes.filter((node) => node.kind === 'check').map((node) => node.id)
  const actions = new Int32Array(graph.states.length)
  for (const state of sorted.toReversed()) {
    let set = state.shown && state.node.kind === 'check' ? 1 << checks.indexOf(state.node.id) : 0
    for (const { to } of state.edges) set |= actions[to.index] as number
    actions[state.index] = set
  }
  const cache = new Map<Hazard | null, Int8Array>()
  function least(truth: Hazard | null): Int8Array {
    const cached = cache.get(truth)
    if (cached !== undefined) return cached
    const min = leastWith(graph, sorted, truth)
    cache.set(truth, min)
    return min
  }
  return { actions, least }
}

/** The mildest end for someone who has this one hazard, or none, and says so wherever it is asked. */
function leastWith(graph: Graph, sorted: readonly State[], truth: Hazard | null): Int8Array {
  const min = new Int8Array(graph.states.length).fill(4)
  for (const state of sorted.toReversed()) {
    if (state.node.kind === 'outcome') min[state.index] = state.node.severity ?? 0
    for (const { to, admitted } of state.edges) {
      const isTrue = truth !== null && (admitted & bit(truth)) !== 0
      if (admitted !== 0 && !isTrue) continue
      if (truth !== null && state.node.hazard === truth && !isTrue) continue
      min[state.index] = Math.min(min[state.index] as number, min[to.index] as number)
    }
  }
  return min
}
