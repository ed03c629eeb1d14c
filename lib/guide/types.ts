import type { Day } from '@/lib/core/day'
import type { Mark } from '@/lib/core/tables'

/**
 * The guide as data. The state of a walk is (node, marks): the graph is the whole truth, no condition hides in code.
 * The same shape is exported by `guide -- --json`.
 */
export interface Flow {
  id: string
  title: string
  start: string
  /** The node that "something changed" leads to from every node: hazard text, terminal. */
  changed: string
  facts: FactDefinition[]
  nodes: GuideNode[]
}

export interface FactDefinition {
  id: string
  /** The first value stands for an unknown household: the cautious case, or the one that is asked. */
  values: string[]
  /** household: the profile. episode: recorded since the trouble began. asked: only an answer sets it. */
  from: 'household' | 'episode' | 'asked'
}

/** Hazards in the order in which they are asked: those that empty the home first. */
export const HAZARDS = ['gas', 'co', 'fire', 'flood', 'steam', 'people', 'shock', 'water', 'boom', 'oil'] as const
export type Hazard = (typeof HAZARDS)[number]

/** Asked again after every start, wait, resume or 15 minutes. */
export const FRESH_HAZARDS = ['gas', 'co', 'fire', 'boom'] as const satisfies readonly Hazard[]

/** All that a person is ever asked to do; a check without one of these does not pass the checker. */
export const ACTIONS = ['filter', 'thermostat', 'air-path', 'breaker', 'reset'] as const
export type Action = (typeof ACTIONS)[number]

export const NODE_KINDS = ['gate', 'question', 'check', 'look', 'wait', 'outcome'] as const
export type NodeKind = (typeof NODE_KINDS)[number]

export const SLOTS = ['call', 'say', 'dont', 'watch', 'meanwhile', 'tenant'] as const
export type Slot = (typeof SLOTS)[number]

/** 0 self (solved or normal) · 1 schedule · 2 urgent (same day) · 3 emergency (leave). */
export type Severity = 0 | 1 | 2 | 3

/** Instruction classes: what a text tells a person to do. Closed; which hazard forbids which stands in matrix.ts. */
export const CLASSES = [
  'leave',
  'phone-away',
  'phone-here',
  'thermostat-off',
  'thermostat-on',
  'breaker',
  'switch-on',
  'oil-button',
  'windows',
  'find-leak',
  'main-valve',
  'filter',
  'registers',
  'clear-space',
  'vent-clearing',
  'batteries',
  'fan-on',
  'emergency-heat',
  'space-heater',
  'warm-room',
  'warm-place',
  'keep-warm',
  'cool-place',
  'car',
  'towel',
  'co-alarm-unit',
] as const
export type InstructionClass = (typeof CLASSES)[number]

/** What is known of a walk: facts, and what answers have set. */
export type Marks = Readonly<Record<string, string>>

/** Holds when every named mark has one of its values; a mark never set has none. */
export type When = Readonly<Record<string, readonly string[]>>

export interface Answer {
  id: string
  /** text: printed on the screen, never a tap (gas yes and not sure). */
  as: 'button' | 'text'
  text: string
  to: string
  sets?: Record<string, string>
  when?: When
}

export interface Section {
  slot: Slot
  text: string
  when?: When
  says?: InstructionClass[]
}

export interface GuideNode {
  id: string
  kind: NodeKind
  hazard?: Hazard
  /** A question that a known fact answers instead of the person. */
  fact?: string
  action?: Action
  /** This check gives the equipment another start: it spends the one reset. */
  turnsOn?: boolean
  minutes?: number
  severity?: Severity
  /** Lines by `\n`; a check's lines begin `Only if:`, `Do:`, `Time:`, `Stop if:`, `If not:`. */
  text: string
  says?: InstructionClass[]
  /** Shown only with these marks; otherwise passed through its answer `skip`. */
  when?: When
  answers?: Answer[]
  sections?: Section[]
  sources: string[]
  reviewed: Day
}

/** Where a safety sentence comes from. */
export interface GuideSource {
  id: string
  name: string
  mark: Mark
  /** The day on which the source was seen to have changed: texts reviewed before it are flagged. */
  changed?: Day
}

export function findNode(flow: Flow, id: string): GuideNode | null {
  return flow.nodes.find((node) => node.id === id) ?? null
}

/** Throws on an id that the flow does not have. */
export function getNode(flow: Flow, id: string): GuideNode {
  const node = findNode(flow, id)
  if (node === null) throw new Error(`flow ${flow.id} has no node ${id}`)
  return node
}
