import { checkSeverity, order } from './check-severity'
import { checkShape, IN_A_CIRCLE, NO_TARGET } from './check-shape'
import { checkState, type Fault } from './check-states'
import { explore, type Graph, pathTo, type State } from './explore'
import { CLASSES, type Flow, type GuideNode, type GuideSource } from './types'
import type { Violation } from './violation'
import { askFaults, type Readability, readingFaults, wordFaults } from './words'

export interface Report {
  violations: Violation[]
  /** Reachable (node, marks) states that were checked, by flow. */
  states: Record<string, number>
}

export interface CheckParts {
  sources: readonly GuideSource[]
  /** Left out: reading grade and sentence length are not checked. */
  readability?: Readability
}

/** Checks every invariant of every flow over every reachable state and every combination of facts. */
export function checkFlows(flows: readonly Flow[], parts: CheckParts): Report {
  const report: Report = { violations: [], states: {} }
  for (const flow of flows) {
    const { violations, graph } = checkFlow(flow, parts)
    report.violations.push(...violations)
    report.states[flow.id] = graph?.states.length ?? 0
  }
  return report
}

/** One flow. Without a graph the shape is too broken to walk. */
export function checkFlow(flow: Flow, parts: CheckParts): { violations: Violation[]; graph: Graph | null } {
  const violations = [...checkShape(flow, parts.sources), ...checkWords(flow, parts)]
  if (violations.some(({ because }) => because === NO_TARGET || because === IN_A_CIRCLE))
    return { violations, graph: null }
  const graph = explore(flow)
  return { violations: [...violations, ...checkWalks(graph)], graph }
}

/** Everything that depends on the state of a walk. Each fault is told once a node, with the first path to it. */
export function checkWalks(graph: Graph): Violation[] {
  const violations = new Map<string, Violation>()
  function add(state: State, [invariant, because]: Fault) {
    const key = `${invariant}|${state.node.id}|${because}`
    if (!violations.has(key))
      violations.set(key, { flow: graph.flow.id, invariant, node: state.node.id, because, path: pathTo(state) })
  }
  for (const state of graph.states) for (const fault of checkState(graph, state)) add(state, fault)
  for (const [state, fault] of checkSeverity(graph, order(graph))) add(state, fault)
  return [...violations.values()]
}

function checkWords(flow: Flow, { readability }: CheckParts): Violation[] {
  return flow.nodes.flatMap((node) =>
    [...wordsOf(node, readability)].map(([invariant, because]) => ({
      flow: flow.id,
      invariant,
      node: node.id,
      because,
      path: '',
    })),
  )
}

function* wordsOf(node: GuideNode, readability: Readability | undefined): Generator<Fault> {
  yield* wordFaults(node)
  yield* askFaults(node.text, node.says ?? [])
  for (const section of node.sections ?? []) yield* askFaults(section.text, section.says ?? [])
  for (const answer of node.answers ?? []) {
    // A printed answer carries an instruction of its own; a button only what the person says.
    const says = answer.as === 'text' ? (['leave'] as const) : CLASSES
    yield* askFaults(answer.text, says)
  }
  if (readability !== undefined) yield* readingFaults(node, readability)
}
