import type { Graph, State } from '@/lib/guide/explore'
import { ALL_HAZARDS, FRESH, type Monitor, START_MONITOR } from '@/lib/guide/monitor'
import type { Answer, Flow, GuideNode, Marks, Section } from '@/lib/guide/types'

export function answer(id: string, to: string, change: Partial<Answer> = {}): Answer {
  return { id, as: 'button', text: `Words of ${id}`, to, ...change }
}

export function guideNode(id: string, kind: GuideNode['kind'], change: Partial<GuideNode> = {}): GuideNode {
  return { id, kind, text: `Text of ${id}.`, sources: ['one'], reviewed: '2026-11-01', ...change }
}

export const SECTIONS: Section[] = (['call', 'say', 'dont', 'watch', 'meanwhile', 'tenant'] as const).map((slot) => ({
  slot,
  text: slot,
}))

/** A state as the walk would come to it: every hazard denied, somebody there, everything asked that must be. */
export function stateOf(
  node: GuideNode,
  { marks = {}, monitor = {}, shown = true, answers = node.answers ?? [] }: StateChange = {},
): State {
  const noted: Monitor = {
    ...START_MONITOR,
    ...{ denied: ALL_HAZARDS, fresh: FRESH, present: true, coAlarm: true, whichAsked: true, startLeft: true },
    ...{ off: true, indoorAsked: true },
    ...monitor,
  }
  const edges = answers.map((one) => ({ answer: one, to: {} as State, admitted: 0 }))
  return { index: 0, node, marks, monitor: { ...noted, id: 0 } as State['monitor'], shown, edges, parent: null }
}

interface StateChange {
  marks?: Marks
  monitor?: Partial<Monitor>
  shown?: boolean
  /** The answers that hold with these marks. */
  answers?: Answer[]
}

export function graphOf(nodes: GuideNode[], change: Partial<Graph> & { id?: string } = {}): Graph {
  const { id = 'small', ...graph } = change
  const flow: Flow = { id, title: 'Small', start: 'gas', changed: 'leave', facts: [], nodes }
  return { flow, states: [], starts: [], givesStart: true, ...graph }
}
