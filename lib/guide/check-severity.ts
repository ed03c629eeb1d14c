import type { Fault } from './check-states'
import type { Graph, State } from './explore'
import { bit } from './monitor'

/** The least and the most severe outcome that a state can still end in, and whether a check can still be reached. */
export interface Reach {
  min: Int8Array
  max: Int8Array
  act: Uint8Array
}

/** States in an order in which every edge goes forward. Throws on a circle: the shape is checked before. */
export function order(graph: Graph): State[] {
  const mark = new Uint8Array(graph.states.length)
  const sorted: State[] = []
  for (const start of graph.starts) {
    if (mark[start.index] !== 0) continue
    mark[start.index] = 1
    const stack: [State, number][] = [[start, 0]]
    while (stack.length > 0) {
      const top = stack[stack.length - 1] as [State, number]
      const edge = top[0].edges[top[1]++]
      if (edge === undefined) {
        mark[top[0].index] = 2
        sorted.push(top[0])
        stack.pop()
      } else if (mark[edge.to.index] === 1) throw new Error(`${graph.flow.id}: a circle at ${edge.to.node.id}`)
      else if (mark[edge.to.index] === 0) {
        mark[edge.to.index] = 1
        stack.push([edge.to, 0])
      }
    }
  }
  return sorted.reverse()
}

/** `forbidden`: hazards that are answered no wherever they are asked. */
export function reach(graph: Graph, sorted: readonly State[], forbidden = 0): Reach {
  const count = graph.states.length
  const result = { min: new Int8Array(count).fill(4), max: new Int8Array(count).fill(-1), act: new Uint8Array(count) }
  for (let at = sorted.length - 1; at >= 0; at--) {
    const state = sorted[at] as State
    const i = state.index
    if (state.node.kind === 'outcome') {
      result.min[i] = result.max[i] = state.node.severity ?? 0
      continue
    }
    if (state.node.kind === 'check' && state.shown) result.act[i] = 1
    for (const { to, admitted } of state.edges) {
      if ((admitted & forbidden) !== 0) continue
      if ((result.min[to.index] as number) < (result.min[i] as number)) result.min[i] = result.min[to.index] as number
      if ((result.max[to.index] as number) > (result.max[i] as number)) result.max[i] = result.max[to.index] as number
      if (result.act[to.index]) result.act[i] = 1
    }
  }
  return result
}

/**
 * Invariants 7 and 8, at every state with a hazard question. Let S be the hazards that are there. With `h` in S the
 * walk leaves at the first question about `h`; without it the walk goes on and may end by any other hazard of S that
 * is not yet denied. So severity(S ∪ {h}) ≥ severity(S) for every S exactly when the mildest end of "yes" is no
 * milder than the worst end of "no" in which `h`, and what was denied before, stays denied.
 */
export function checkSeverity(graph: Graph, sorted: readonly State[]): [State, Fault][] {
  const found: [State, Fault][] = []
  const plain = reach(graph, sorted)
  const restricted = new Map<number, Reach>()
  for (const state of graph.states) {
    if (!state.shown) continue
    const yes = state.edges.filter((edge) => edge.answer.id === 'yes')
    const unsure = state.edges.filter((edge) => edge.answer.id === 'unsure')
    const leastYes = Math.min(...yes.map((edge) => plain.min[edge.to.index] as number))
    for (const edge of unsure)
      if (yes.length > 0 && (plain.min[edge.to.index] as number) < leastYes)
        found.push([state, [7, '"not sure" may end milder than "yes"']])
    const { hazard } = state.node
    if (hazard === undefined) continue
    for (const edge of [...yes, ...unsure])
      if (plain.act[edge.to.index]) found.push([state, [7, `${edge.answer.id} leads to a check`]])
    const forbidden = state.monitor.denied | bit(hazard)
    const without = restricted.get(forbidden) ?? reach(graph, sorted, forbidden)
    restricted.set(forbidden, without)
    for (const no of state.edges.filter((edge) => edge.answer.id === 'no'))
      if (leastYes < (without.max[no.to.index] as number))
        found.push([
          state,
          [8, `yes may end at ${leastYes}, no at ${without.max[no.to.index]}: one hazard more says less`],
        ])
  }
  return found
}
