import { CHANGED, type Step, type Walk } from './address'
import type { EpisodeEvent, EpisodeKind } from './episode'
import type { Answer, GuideNode } from './types'

/** Whether an answer is the first of a walk: in a home it is written down that a check was begun. */
export function beginsWalk(walk: Walk, answer: Answer | typeof CHANGED): boolean {
  return walk.steps.length === 0 && answer !== CHANGED
}

/** An event with the step of a walk that it came from; one recorded by hand has a key of its own. */
export interface KeyedEvent extends EpisodeEvent {
  key: string
}

/**
 * What an answer does to the memory of a trouble: a start given, a trip, a hazard met. An answer with any is a write:
 * it is sent, not linked to.
 */
export function eventKinds(node: GuideNode, answer: Answer | typeof CHANGED): EpisodeKind[] {
  if (answer === CHANGED) return ['hazard-leave']
  const { sets = {} } = answer
  const kinds: EpisodeKind[] = []
  if (sets.resetUsed === 'yes' || (node.turnsOn && answer.id === 'done')) kinds.push('start-spent')
  if (sets.tripped === 'yes') kinds.push('trip')
  if (sets.hazardSeen === 'leave') kinds.push('hazard-leave')
  if (sets.hazardSeen === 'stop') kinds.push('hazard-stop')
  return kinds
}

/** The key of the `index`-th step of a walk; the events of that step begin with it. */
export function stepKey({ flow, startedAt }: Walk, index: number, { node, answer }: Omit<Step, 'minute'>): string {
  return `${flow}.${startedAt}.${index}.${node}.${answer}`
}

/** The events of one answer, given at `minute` (since 1970-01-01T00:00Z) as the next step of the walk. */
export function bookedEvents(
  walk: Walk,
  node: GuideNode,
  answer: Answer | typeof CHANGED,
  { minute, on }: { minute: number; on: EpisodeEvent['on'] },
): KeyedEvent[] {
  const id = answer === CHANGED ? CHANGED : answer.id
  const key = stepKey(walk, walk.steps.length, { node: node.id, answer: id })
  const kinds = eventKinds(node, answer)
  if (beginsWalk(walk, answer)) kinds.unshift('trouble-began')
  return kinds.map((kind, i) => ({ kind, on, at: minute, key: `${key}.${i}` }))
}

/**
 * What was remembered before this walk, and by it in steps that its address no longer holds: whoever goes back to
 * before a start or a hazard does not undo it. Events of steps that the address holds are in the walk already.
 */
export function eventsBeside(walk: Walk, events: readonly KeyedEvent[]): KeyedEvent[] {
  const held = new Set(walk.steps.map((step, index) => stepKey(walk, index, step)))
  return events.filter(({ key }) => !held.has(key.replace(/\.\d+$/, '')))
}
