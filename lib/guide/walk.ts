import type { Answer, Flow, GuideNode, Marks, Section, When } from './types'

/** A place in a walk. */
export interface WalkState {
  node: string
  marks: Marks
}

/** Whether every named mark has one of its values. */
export function holds(when: When | undefined, marks: Marks): boolean {
  if (when === undefined) return true
  for (const key in when) {
    const value = marks[key]
    if (value === undefined || !when[key]?.includes(value)) return false
  }
  return true
}

/** Whether the person sees this node; otherwise its answer `skip` is taken for them. */
export function isShown(node: GuideNode, marks: Marks): boolean {
  return holds(node.when, marks)
}

/** The answers open in a state: those of a shown node, or the one `skip` of a node that is passed through. */
export function listAnswers(node: GuideNode, marks: Marks): Answer[] {
  const shown = isShown(node, marks)
  return (node.answers ?? []).filter((answer) => (answer.id === 'skip') !== shown && holds(answer.when, marks))
}

/** The sections of an outcome that apply. */
export function listSections(node: GuideNode, marks: Marks): Section[] {
  return (node.sections ?? []).filter((section) => holds(section.when, marks))
}

/** Takes an answer: the only way from one state to another. */
export function take(state: WalkState, answer: Answer): WalkState {
  return { node: answer.to, marks: answer.sets === undefined ? state.marks : { ...state.marks, ...answer.sets } }
}

/** Passes through nodes that are not shown. Throws when a flow goes in circles or gives no single way on. */
export function settle(nodes: ReadonlyMap<string, GuideNode>, from: WalkState): WalkState {
  let state = from
  for (let passed = 0; passed <= nodes.size; passed++) {
    const node = nodes.get(state.node)
    if (node === undefined) throw new Error(`no node ${state.node}`)
    if (isShown(node, state.marks)) return state
    const [skip, ...others] = listAnswers(node, state.marks)
    if (skip === undefined || others.length > 0) throw new Error(`${node.id}: not shown, and no single skip`)
    state = take(state, skip)
  }
  throw new Error(`skips go in a circle at ${state.node}`)
}

export function nodesById(flow: Flow): Map<string, GuideNode> {
  return new Map(flow.nodes.map((node) => [node.id, node]))
}
