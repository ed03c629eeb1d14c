import fc from 'fast-check'
import type { Step, Walk } from '@/lib/guide/address'
import { type Facts, initialMarks } from '@/lib/guide/replay'
import type { Flow } from '@/lib/guide/types'
import { listAnswers, nodesById, settle, take } from '@/lib/guide/walk'

/** Any combination of what the profile and the episode may say, values that no flow knows included. */
export function anyFacts(flow: Flow): fc.Arbitrary<Facts> {
  const outside = flow.facts.filter((fact) => fact.from !== 'asked')
  return fc
    .tuple(...outside.map((fact) => fc.option(fc.constantFrom(...fact.values, 'nonsense'), { nil: undefined })))
    .map((values) =>
      Object.fromEntries(outside.flatMap((fact, i) => (values[i] === undefined ? [] : [[fact.id, values[i]]]))),
    )
}

// Answers that lead on; most random walks should get to the checks.
const LEADS_ON: Record<string, string> = {
  presence: 'yes',
  before: 'no',
  tag: 'no',
  used: 'no',
  cover: 'shut',
  'co-alarm': 'works',
  setting: 'right',
}

/** A walk that a person could take, `choices` picking the answers, one minute each, as far as they reach. */
export function walkBy(flow: Flow, facts: Facts, choices: readonly number[]): Walk {
  const nodes = nodesById(flow)
  let state = settle(nodes, { node: flow.start, marks: initialMarks(flow, facts) })
  const steps: Step[] = []
  for (const choice of choices) {
    const node = nodes.get(state.node)
    if (node === undefined || node.kind === 'outcome') break
    const answers = listAnswers(node, state.marks)
    const wanted = node.kind === 'gate' ? 'no' : LEADS_ON[node.id]
    const calm = answers.filter((answer) => answer.id === wanted)
    const from = calm.length > 0 && choice % 30 !== 0 ? calm : answers
    const answer = from[choice % from.length]
    if (answer === undefined) throw new Error(`${node.id} leads nowhere`)
    steps.push({ node: node.id, answer: answer.id, minute: steps.length })
    state = settle(nodes, take(state, answer))
  }
  return { flow: flow.id, startedAt: 29_000_000, steps }
}

/** Answers to take at random; a presence question is a coin, so walks are long. */
export const anyChoices = fc.array(fc.integer({ min: 1, max: 10_000 }), { maxLength: 45, size: 'max' })

/** The gentlest full walk: hazards denied, in the home, and else the answer named here or the first one. */
export function calmWalk(flow: Flow, facts: Facts, chosen: Record<string, string> = {}): Walk {
  const nodes = nodesById(flow)
  let state = settle(nodes, { node: flow.start, marks: initialMarks(flow, facts) })
  const steps: Step[] = []
  for (;;) {
    const node = nodes.get(state.node)
    if (node === undefined || node.kind === 'outcome') return { flow: flow.id, startedAt: 29_000_000, steps }
    const answers = listAnswers(node, state.marks)
    const wanted =
      chosen[node.id] ??
      (node.kind === 'gate' || node.id === 'before' || node.id === 'tag' || node.id === 'used' ? 'no' : null)
    const answer = wanted === null ? answers[0] : answers.find((each) => each.id === wanted)
    if (answer === undefined) throw new Error(`${node.id} has no answer ${wanted}`)
    steps.push({ node: node.id, answer: answer.id, minute: steps.length })
    state = settle(nodes, take(state, answer))
  }
}
