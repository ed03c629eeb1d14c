import { isDay } from '@/lib/core/day'
import { CHANGED, RESUME } from './address'
import type { Flow, GuideNode, GuideSource } from './types'
import { ACTIONS, CLASSES, HAZARDS, NODE_KINDS, SLOTS } from './types'
import type { Violation } from './violation'

/** Faults with which a flow can not be walked at all. */
export const NO_TARGET = 'an answer leads to a node that does not exist'
export const IN_A_CIRCLE = 'the answers lead back to this node'

const MUST_SAY_NOW = ['gas smell', 'co alarm', 'smoke', 'get everyone out']

/** Faults of the data that need no walk: invariants 1, 2, 10, 11, 12, 17, 18 and 20. */
export function checkShape(flow: Flow, sources: readonly GuideSource[]): Violation[] {
  const found: Violation[] = []
  function broken(invariant: number, node: string, because: string) {
    found.push({ flow: flow.id, invariant, node, because, path: '' })
  }
  const ids = new Set<string>()
  for (const node of flow.nodes) {
    if (ids.has(node.id)) broken(1, node.id, 'two nodes with one id')
    ids.add(node.id)
  }
  const reached = new Set([flow.start, flow.changed])
  const byId = new Map(flow.nodes.map((node) => [node.id, node]))
  for (const id of reached) for (const answer of byId.get(id)?.answers ?? []) reached.add(answer.to)
  for (const id of reached) if (!ids.has(id)) broken(1, id, NO_TARGET)
  for (const id of ids) if (!reached.has(id)) broken(20, id, 'nothing leads to this node')

  const circle = findCircle(flow, byId)
  if (circle !== null) broken(1, circle, IN_A_CIRCLE)

  for (const node of flow.nodes) {
    for (const [invariant, because] of nodeFaults(node)) broken(invariant, node.id, because)
    for (const because of sourceFaults(node, sources)) broken(20, node.id, because)
  }
  for (const because of startFaults(byId.get(flow.start))) broken(10, flow.start, because)
  for (const because of changedFaults(byId.get(flow.changed))) broken(11, flow.changed, because)
  return found
}

/** A node that can be reached from itself: a question asked twice could be answered in two ways. */
function findCircle(flow: Flow, byId: ReadonlyMap<string, GuideNode>): string | null {
  const done = new Set<string>()
  const above = new Set<string>()
  function visit(id: string): string | null {
    if (above.has(id)) return id
    if (done.has(id)) return null
    above.add(id)
    for (const answer of byId.get(id)?.answers ?? []) {
      const found = visit(answer.to)
      if (found !== null) return found
    }
    above.delete(id)
    done.add(id)
    return null
  }
  return visit(flow.start)
}

function* nodeFaults(node: GuideNode): Generator<[number, string]> {
  const answers = node.answers ?? []
  if (node.id === RESUME || answers.some((answer) => answer.id === CHANGED)) yield [1, 'a name that addresses use']
  if (!NODE_KINDS.includes(node.kind)) yield [1, `kind ${node.kind} is not on the closed list`]
  if (node.kind === 'outcome') {
    if (answers.length > 0) yield [node.severity === 3 ? 12 : 1, 'an outcome has answers']
    if (node.severity === undefined || ![0, 1, 2, 3].includes(node.severity)) yield [1, 'an outcome without a severity']
  } else if (!answers.some((answer) => answer.id !== 'skip')) yield [1, 'no answer leads on']
  if (node.when !== undefined && !answers.some((answer) => answer.id === 'skip')) yield [1, 'conditional, and no skip']
  if (node.kind === 'gate') {
    if (node.hazard === undefined || !HAZARDS.includes(node.hazard)) yield [2, 'a gate without a hazard of the list']
    if (node.when !== undefined) yield [3, 'a hazard question may not depend on anything']
    if (node.fact !== undefined) yield [3, 'a fact may not answer a hazard question']
    for (const id of ['yes', 'no', 'unsure'])
      if (!answers.some((answer) => answer.id === id)) yield [7, `no answer ${id}`]
    if (node.hazard === 'gas')
      for (const answer of answers)
        if (answer.id !== 'no' && answer.as !== 'text') yield [10, `gas: ${answer.id} must be text, never a tap`]
  } else if (node.hazard !== undefined) yield [2, 'only a gate may have a hazard']
  if (node.kind === 'check') {
    if (node.action === undefined || !ACTIONS.includes(node.action))
      yield [2, `action ${node.action} is not on the closed list`]
    const says = node.says ?? []
    if (says.length === 0) yield [2, 'a check without an instruction class']
    const starts = ['thermostat-on', 'breaker', 'switch-on', 'oil-button', 'batteries', 'emergency-heat']
    if (
      (says.some((name) => starts.includes(name)) || node.action === 'breaker' || node.action === 'reset') &&
      !node.turnsOn
    )
      yield [4, 'turns the equipment on without counting as a start']
    if (node.turnsOn)
      for (const answer of answers)
        if (answer.id === 'done' && answer.sets?.resetUsed !== 'yes') yield [5, 'a start that is not remembered']
  } else if (node.action !== undefined || node.turnsOn) yield [2, 'only a check may have an action']
  for (const part of [node, ...(node.sections ?? [])])
    for (const name of part.says ?? [])
      if (!CLASSES.includes(name)) yield [2, `instruction class ${name} is not on the list`]
  for (const part of node.sections ?? [])
    if (!SLOTS.includes(part.slot)) yield [13, `slot ${part.slot} is not on the list`]
  if (node.kind === 'wait' && !((node.minutes ?? 0) >= 5)) yield [18, 'a wait of less than five minutes']
}

function* sourceFaults(node: GuideNode, sources: readonly GuideSource[]): Generator<string> {
  if (!isDay(node.reviewed)) yield 'no day of review'
  if (node.sources.length === 0) yield 'no source'
  for (const id of node.sources) {
    const source = sources.find((each) => each.id === id)
    if (source === undefined) yield `source ${id} is not in the list`
    else if (source.changed !== undefined && source.changed > node.reviewed)
      yield `source ${id} changed on ${source.changed}, after the review of ${node.reviewed}`
  }
}

function* startFaults(start: GuideNode | undefined): Generator<string> {
  if (start?.kind !== 'gate' || start.hazard !== 'gas') yield 'a flow begins with the gas question'
}

function* changedFaults(node: GuideNode | undefined): Generator<string> {
  if (node === undefined) return
  if (node.kind !== 'outcome' || node.severity !== 3) yield '"something changed" must lead to an emergency outcome'
  const text = node.text.toLowerCase()
  for (const phrase of MUST_SAY_NOW) if (!text.includes(phrase)) yield `"something changed" does not say "${phrase}"`
}
