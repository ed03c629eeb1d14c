/** The answer "something changed", open at every node; no flow has an answer of this name. */
export const CHANGED = 'something-changed'

/** The step that says: the guide was closed here and opened again; no flow has a node of this name. */
export const RESUME = 'resume'

/** One answer in an address: the node it was given at, the answer, and whole minutes since the start. */
export interface Step {
  node: string
  answer: string
  minute: number
}

/** A walk as its address states it: not yet checked against the flow. */
export interface Walk {
  flow: string
  /** Minutes since 1970-01-01T00:00Z. */
  startedAt: number
  steps: Step[]
}

export type ParsedWalk = { kind: 'walk'; walk: Walk } | { kind: 'broken'; because: string }

/** Longer walks than any flow has, with its hazards asked again many times. */
const MAX_STEPS = 300
const ID = '[a-z0-9][a-z0-9-]{0,39}'
const STEP = new RegExp(`^(${ID})\\.(${ID})\\.(\\d{1,6})$`)
const TIME = /^\d{1,9}$/

/** `?flow=no-heat&at=29930220&s=gas.no.0_presence.yes.1&n=2`; `n` tells a link that was cut short. */
export function encodeWalk({ flow, startedAt, steps }: Walk): string {
  const text = steps.map((step) => `${step.node}.${step.answer}.${step.minute}`).join('_')
  return `?flow=${flow}&at=${startedAt}&s=${text}&n=${steps.length}`
}

/** Reads an address; says in plain words what is wrong with one that nobody could have reached by tapping. */
export function parseWalk(search: string): ParsedWalk {
  const found = new URLSearchParams(search)
  const flow = found.get('flow')
  const at = found.get('at')
  const text = found.get('s') ?? ''
  const count = found.get('n')
  if (flow === null || !new RegExp(`^${ID}$`).test(flow)) return broken('The link does not say what the trouble is.')
  if (!TIME.test(at ?? '')) return broken('The link does not say when the walk began.')
  for (const name of ['flow', 'at', 's', 'n'])
    if (found.getAll(name).length > 1) return broken('The link says the same thing twice.')
  const parts = text === '' ? [] : text.split('_')
  if (parts.length > MAX_STEPS) return broken('The link is far too long.')
  if (count !== String(parts.length)) return broken('The link was cut short.')
  const steps: Step[] = []
  for (const part of parts) {
    const [, node = '', answer = '', minute] = STEP.exec(part) ?? []
    if (minute === undefined) return broken('The link holds an answer that can not be read.')
    steps.push({ node, answer, minute: Number(minute) })
  }
  return { kind: 'walk', walk: { flow, startedAt: Number(at), steps } }
}

function broken(because: string): ParsedWalk {
  return { kind: 'broken', because }
}

/** Back: the same walk without its last answer. */
export function withoutLast(walk: Walk): Walk {
  return { ...walk, steps: walk.steps.slice(0, -1) }
}
