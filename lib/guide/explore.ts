import type { Monitor } from './monitor'
import { CHANGED, hazardsAdmitted, keyOf, START_MONITOR, watch } from './monitor'
import type { Answer, Flow, GuideNode, Marks, When } from './types'
import { isShown, listAnswers, nodesById } from './walk'

/** One reachable (node, marks) state, with what a watcher beside the walk has noted, and how it was first reached. */
export interface State {
  index: number
  node: GuideNode
  marks: Marks
  monitor: NumberedMonitor
  shown: boolean
  /** `admitted`: the hazards that the answer says are there, as bits. */
  edges: { answer: Answer; to: State; admitted: number }[]
  parent: { state: State; answer: Answer } | null
}

export interface Graph {
  flow: Flow
  states: State[]
  starts: State[]
  /** Whether the flow can turn the equipment on. */
  givesStart: boolean
}

/** More states than this is a flow that nobody can review: throw, never cut in silence. */
export const MAX_STATES = 200_000

/**
 * Every reachable state under every combination of facts. A fact is left open until a node first reads it and is
 * then split into all its values: an exact partition of all households, far smaller than listing them one by one.
 * `live`: only to compare two flows state by state.
 * Throws on a target that does not exist and beyond `limit`.
 */
export function explore(flow: Flow, live: Live = liveNames(flow), limit = MAX_STATES): Graph {
  const nodes = nodesById(flow)
  const open = new Map(flow.facts.filter((fact) => fact.from !== 'asked').map((fact) => [fact.id, fact.values]))
  const note = watcher()
  const known = new Map<string, State[]>()
  const states: State[] = []

  function enter(id: string, allMarks: Marks, monitor: NumberedMonitor, parent: State['parent']): State[] {
    const node = nodes.get(id)
    if (node === undefined) throw new Error(`flow ${flow.id}: no node ${id}`)
    const names = live.get(id) as string[]
    let key = `${id}|${monitor.id}`
    for (const name of names) key += `|${allMarks[name] ?? ''}`
    const found = known.get(key)
    if (found !== undefined) return found
    const entered: State[] = []
    const marks = keep(allMarks, names)
    for (const split of splitBy(namesRead(node), marks, open)) {
      if (states.length >= limit) throw new Error(`flow ${flow.id}: more than ${limit} states`)
      const state: State = {
        index: states.length,
        node,
        marks: split,
        monitor,
        shown: isShown(node, split),
        edges: [],
        parent,
      }
      states.push(state)
      entered.push(state)
    }
    known.set(key, entered)
    return entered
  }

  // "Something changed" is one step from everywhere, with whatever hazard it is.
  const starts = [...enter(flow.start, {}, note.start, null), ...enter(flow.changed, {}, note.changed, null)]
  for (let next = 0; next < states.length; next++) {
    const state = states[next] as State
    for (const answer of listAnswers(state.node, state.marks)) {
      const marks = answer.sets === undefined ? state.marks : { ...state.marks, ...answer.sets }
      const monitor = note.after(state, answer)
      const admitted = state.shown ? hazardsAdmitted(state, answer) : 0
      for (const to of enter(answer.to, marks, monitor, { state, answer })) state.edges.push({ answer, to, admitted })
    }
  }
  return { flow, states, starts, givesStart: flow.nodes.some((node) => node.turnsOn) }
}

// What the checker's own rules read, beside the conditions in the graph.
const READ_AT_CHECKS = [
  'heatSource',
  'delivery',
  'burnsFuel',
  'tenure',
  'breaker',
  'switch',
  'oilButton',
  'setting',
  'resetUsed',
  'tripped',
  'hazardSeen',
]

/** By node, in one order: what decides whether two states are the same. */
export type Live = ReadonlyMap<string, string[]>

/**
 * The marks that anything from a node on may read. A mark that nothing reads any more is dropped, which merges
 * states that can never differ again: the result stays exact.
 */
export function liveNames(flow: Flow): Live {
  const nodes = nodesById(flow)
  const live = new Map<string, Set<string>>()
  for (const [id, node] of nodes) {
    const own =
      node.kind === 'check'
        ? READ_AT_CHECKS.filter((name) => name !== 'tenure' || node.says?.includes('oil-button'))
        : []
    const risk = node.kind === 'outcome' && (node.severity ?? 0) < 2 ? ['vulnerable', 'coldRisk'] : []
    live.set(id, new Set([...namesRead(node), ...own, ...risk]))
  }
  for (let changed = true; changed; ) {
    changed = false
    for (const [id, node] of nodes) {
      const names = live.get(id) as Set<string>
      const before = names.size
      for (const answer of node.answers ?? []) for (const name of live.get(answer.to) ?? []) names.add(name)
      if (names.size > before) changed = true
    }
  }
  return new Map([...live].map(([id, names]) => [id, [...names].sort()]))
}

function keep(marks: Marks, names: readonly string[]): Marks {
  const kept: Record<string, string> = {}
  for (const name of names) {
    const value = marks[name]
    if (value !== undefined) kept[name] = value
  }
  return kept
}

// The names of marks that decide what a node shows.
const readCache = new WeakMap<GuideNode, string[]>()

function namesRead(node: GuideNode): string[] {
  const cached = readCache.get(node)
  if (cached !== undefined) return cached
  const whens: (When | undefined)[] = [node.when, ...(node.answers ?? []).map((answer) => answer.when)]
  for (const section of node.sections ?? []) whens.push(section.when)
  const names = [...new Set(whens.flatMap((when) => Object.keys(when ?? {})))]
  readCache.set(node, names)
  return names
}

function splitBy(names: string[], marks: Marks, open: ReadonlyMap<string, string[]>): Marks[] {
  let splits: Marks[] = [marks]
  for (const name of names) {
    const values = open.get(name)
    if (values === undefined || marks[name] !== undefined) continue
    splits = splits.flatMap((split) => values.map((value) => ({ ...split, [name]: value })))
  }
  return splits
}

/** A monitor with a number of its own: equal ones are one. */
export type NumberedMonitor = Monitor & { id: number }

function watcher() {
  const byKey = new Map<string, NumberedMonitor>()
  function intern(monitor: Monitor): NumberedMonitor {
    const key = keyOf(monitor)
    const found = byKey.get(key)
    if (found !== undefined) return found
    const numbered = { ...monitor, id: byKey.size }
    byKey.set(key, numbered)
    return numbered
  }
  function after(state: State, answer: Answer): NumberedMonitor {
    const { id: _id, ...plain } = state.monitor
    return intern(watch(plain, state, answer))
  }
  return { start: intern(START_MONITOR), changed: intern({ ...START_MONITOR, active: CHANGED }), after }
}

/** How a state is reached, readable: `gas: no → presence: yes → co`. */
export function pathTo(state: State): string {
  const steps = [state.node.id]
  for (let at = state.parent; at !== null; at = at.state.parent) steps.unshift(`${at.state.node.id}: ${at.answer.id}`)
  return steps.join(' → ')
}
