import { CHANGED, RESUME, type Step, type Walk } from './address'
import type { Answer, Flow, GuideNode, Marks } from './types'
import { FRESH_HAZARDS, getNode } from './types'
import { listAnswers, nodesById, settle, take, type WalkState } from './walk'

/** What the profile and the episode say; a fact left out has the first value of its list, the cautious one. */
export type Facts = Readonly<Record<string, string>>

/** Whole minutes after which an answer about hazards is too old to act on. */
export const FRESH_MINUTES = 15

export interface TakenStep extends Step {
  text: string
}

export type Replay =
  | { kind: 'broken'; because: string; node: GuideNode; answers: Answer[] }
  | {
      kind: 'at'
      node: GuideNode
      /** Only these may be offered. */
      answers: Answer[]
      marks: Marks
      /** Every answer so far, with the words of its button, the oldest first. */
      taken: TakenStep[]
      /** Whether a hazard was answered yes or not sure: the page records it and closes the household's checks. */
      hazardSeen: 'no' | 'leave' | 'stop'
      /** Whether the one start was given in this walk: to be recorded at once. */
      startSpent: boolean
      tripped: boolean
    }
  | {
      kind: 'hazards-again'
      /** The question to ask now. Its "no" goes on to the next one, and at last to where the person was. */
      node: GuideNode
      answers: Answer[]
      marks: Marks
      taken: TakenStep[]
      /** Where the person was. */
      resumesAt: GuideNode
      /** How many of these questions are still to come, this one included. */
      left: number
    }

interface ReplayParts {
  flow: Flow
  facts: Facts
  walk: Walk
  /** Minutes since 1970-01-01T00:00Z. */
  now: number
}

/**
 * Walks the answers of an address from the start, so that no address skips a question. After more than 15 minutes
 * without an answer the hazards are asked again before the walk goes on; the answers to those are steps of the
 * address too. A step that the walk could not have taken makes the address broken, and it starts at the hazards.
 */
export function replay({ flow, facts, walk, now }: ReplayParts): Replay {
  const nodes = nodesById(flow)
  const again = againGates(flow)
  function broken(because: string): Replay {
    const node = getNode(flow, flow.start)
    return { kind: 'broken', because, node, answers: listAnswers(node, initialMarks(flow, facts)) }
  }
  if (walk.flow !== flow.id) return broken('The link belongs to another part of the guide.')
  if (walk.startedAt > now) return broken('The link begins in the future.')

  let state: WalkState = settle(nodes, { node: flow.start, marks: initialMarks(flow, facts) })
  let pending: GuideNode[] = []
  let lastMinute = 0
  let startSpent = false
  const taken: TakenStep[] = []

  function sleep(until: number) {
    if (until - lastMinute <= FRESH_MINUTES || taken.length === 0) return
    const here = nodes.get(state.node)
    // An outcome stays as it is: there is nothing left to do under old answers.
    if (here?.kind !== 'outcome') pending = again
  }

  for (const step of walk.steps) {
    if (step.minute < lastMinute) return broken('The times in the link run backwards.')
    if (walk.startedAt + step.minute > now) return broken('The link holds an answer from the future.')
    if (step.node === RESUME) {
      if (step.answer !== RESUME) return broken('The link holds an answer that does not exist.')
      if (taken.length > 0 && nodes.get(state.node)?.kind !== 'outcome') pending = again
      lastMinute = step.minute
      continue
    }
    sleep(step.minute)
    const asked = pending[0]
    const node = asked ?? (nodes.get(state.node) as GuideNode)
    if (step.node !== node.id) return broken('The link skips a question.')
    if (step.answer === CHANGED) {
      state = { node: flow.changed, marks: { ...state.marks, hazardSeen: 'leave' } }
      pending = []
    } else {
      const answer = listAnswers(node, state.marks).find((each) => each.id === step.answer)
      if (answer === undefined) return broken('The link holds an answer that does not exist.')
      if (node.turnsOn && (answer.sets?.resetUsed === 'yes' || answer.id === 'done')) startSpent = true
      if (asked !== undefined && answer.id === goOn(asked)) pending = pending.slice(1)
      else {
        state = settle(nodes, take(state, answer))
        pending = []
      }
    }
    lastMinute = step.minute
    const words = step.answer === CHANGED ? 'Something changed' : wordsOf(node, step.answer)
    taken.push({ ...step, text: words })
  }
  sleep(now - walk.startedAt)

  const node = nodes.get(state.node) as GuideNode
  const { marks } = state
  const [asked] = pending
  if (asked !== undefined)
    return {
      kind: 'hazards-again',
      node: asked,
      answers: listAnswers(asked, marks),
      marks,
      taken,
      resumesAt: node,
      left: pending.length,
    }
  const seen = marks.hazardSeen
  return {
    kind: 'at',
    node,
    answers: listAnswers(node, marks),
    marks,
    taken,
    hazardSeen: seen === 'leave' || seen === 'stop' ? seen : 'no',
    startSpent,
    tripped: marks.tripped === 'yes',
  }
}

function wordsOf(node: GuideNode, id: string): string {
  return node.answers?.find((answer) => answer.id === id)?.text ?? id
}

/** Gas, whether the person is in the home, CO, fire and a bang: asked in this order after a resume. */
function againGates(flow: Flow): GuideNode[] {
  const first = (match: (node: GuideNode) => boolean) => flow.nodes.find(match)
  const gates = FRESH_HAZARDS.map((hazard) => first((node) => node.kind === 'gate' && node.hazard === hazard))
  const presence = first((node) => node.answers?.some((answer) => answer.sets?.presence === 'yes') ?? false)
  const [gas, ...others] = gates
  return [gas, presence, ...others].filter((node) => node !== undefined)
}

/** The one answer of a repeated question that leads on. */
function goOn(node: GuideNode): string {
  return node.kind === 'gate' ? 'no' : 'yes'
}

/**
 * The marks a walk begins with: every fact of the profile and the episode, unknown ones as the first value.
 * A value that the flow does not know counts as unknown.
 */
export function initialMarks(flow: Flow, facts: Facts): Marks {
  const marks: Record<string, string> = {}
  for (const fact of flow.facts) {
    if (fact.from === 'asked') continue
    const value = facts[fact.id]
    marks[fact.id] = value !== undefined && fact.values.includes(value) ? value : (fact.values[0] as string)
  }
  return marks
}

/** The same walk, opened again after a closed phone or a lost page: the hazards are asked anew. */
export function withResume(walk: Walk, now: number): Walk {
  return { ...walk, steps: [...walk.steps, { node: RESUME, answer: RESUME, minute: now - walk.startedAt }] }
}

/** The same walk with one more answer, given now. */
export function withAnswer(walk: Walk, node: GuideNode, answer: string, now: number): Walk {
  return { ...walk, steps: [...walk.steps, { node: node.id, answer, minute: now - walk.startedAt }] }
}
