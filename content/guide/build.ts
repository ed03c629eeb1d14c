import type {
  Action,
  Answer,
  FactDefinition,
  Flow,
  GuideNode,
  Hazard,
  InstructionClass,
  Section,
  Severity,
  When,
} from '@/lib/guide/types'

/** The day on which every text here was last read against its sources. */
export const REVIEWED = '2026-11-25'

type Sets = Record<string, string>

export function button(id: string, text: string, to: string, sets?: Sets, when?: When): Answer {
  return { id, as: 'button', text, to, ...(sets && { sets }), ...(when && { when }) }
}

/** Printed on the screen, never a tap. */
export function printed(id: string, text: string, to: string, sets?: Sets): Answer {
  return { id, as: 'text', text, to, ...(sets && { sets }) }
}

/** Taken for the person when the node is not shown. */
export function skip(to: string, sets?: Sets, when?: When): Answer {
  return button('skip', 'Not asked', to, sets, when)
}

interface GateParts {
  id: string
  hazard: Hazard
  text: string
  /** The outcome of yes and not sure. */
  yes: string
  no: string
  noText: string
  yesText: string
  /** leave: the home is to be left. stop: nothing is to be tried. Both close every check until a clearance. */
  closes: 'leave' | 'stop'
  least: '2' | '3'
  sources: string[]
}

/** A hazard question: only "no" goes on, "not sure" counts as yes, and for gas both are text instead of buttons. */
export function gate(parts: GateParts): GuideNode {
  const denied = `${parts.hazard}Denied`
  const seen = { [denied]: 'no', hazardSeen: parts.closes, least: parts.least }
  const make = parts.hazard === 'gas' ? printed : button
  return {
    id: parts.id,
    kind: 'gate',
    hazard: parts.hazard,
    text: parts.text,
    answers: [
      make('yes', parts.yesText, parts.yes, seen),
      make('unsure', 'Not sure: that counts as yes.', parts.yes, seen),
      button('no', parts.noText, parts.no, { [denied]: 'yes' }),
    ],
    sources: parts.sources,
    reviewed: REVIEWED,
  }
}

interface QuestionParts {
  id: string
  text: string
  answers: Answer[]
  sources?: string[]
  fact?: string
  when?: When
}

export function question({ sources = ['policy'], ...parts }: QuestionParts): GuideNode {
  return { kind: 'question', ...parts, sources, reviewed: REVIEWED }
}

/** Something to look at from where one stands: nothing is touched. */
export function look({ sources = ['practice', 'policy'], ...parts }: QuestionParts): GuideNode {
  return { kind: 'look', ...parts, sources, reviewed: REVIEWED }
}

export interface CheckParts {
  id: string
  action: Action
  /** One line each: what must be true, what to do, how long, when to stop, and what if it does not work. */
  onlyIf: string
  does: string
  time: string
  stopIf: string
  ifNot: string
  says: InstructionClass[]
  answers: Answer[]
  sources?: string[]
  when?: When
  turnsOn?: true
}

export function check(parts: CheckParts): GuideNode {
  const { onlyIf, does, time, stopIf, ifNot, sources = ['practice', 'policy'], ...rest } = parts
  const text = `Only if: ${onlyIf}\nDo: ${does}\nTime: ${time}\nStop if: ${stopIf}\nIf not: ${ifNot}`
  return { kind: 'check', ...rest, text, sources, reviewed: REVIEWED }
}

export interface OutcomeParts {
  id: string
  severity: Severity
  text: string
  says?: InstructionClass[]
  sections: Section[]
  sources: string[]
}

export function outcome(parts: OutcomeParts): GuideNode {
  return { kind: 'outcome', ...parts, reviewed: REVIEWED }
}

interface FlowParts {
  id: string
  title: string
  facts: FactDefinition[]
  nodes: GuideNode[]
}

/** Takes from the nodes those that the start leads to; throws on an answer that leads nowhere or an id used twice. */
export function assemble({ id, title, facts, nodes }: FlowParts): Flow {
  const byId = new Map<string, GuideNode>()
  for (const node of nodes) {
    if (byId.has(node.id)) throw new Error(`flow ${id}: node ${node.id} twice`)
    byId.set(node.id, node)
  }
  const reached = new Set(['gas', 'hazards-now'])
  for (const name of reached) {
    const node = byId.get(name)
    if (node === undefined) throw new Error(`flow ${id}: no node ${name}`)
    for (const answer of node.answers ?? []) reached.add(answer.to)
  }
  const kept = nodes.filter((node) => reached.has(node.id))
  const used = new Set(kept.flatMap(namesUsed))
  return {
    id,
    title,
    start: 'gas',
    changed: 'hazards-now',
    facts: facts.filter((fact) => used.has(fact.id)),
    nodes: kept,
  }
}

/** The marks that a node reads or sets. */
function namesUsed(node: GuideNode): string[] {
  const parts = [node, ...(node.answers ?? []), ...(node.sections ?? [])]
  const sets = (node.answers ?? []).flatMap((answer) => Object.keys(answer.sets ?? {}))
  return [...parts.flatMap((part) => Object.keys(part.when ?? {})), ...sets]
}
