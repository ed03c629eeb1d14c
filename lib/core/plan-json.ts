import type { Plan } from './plan-types'

// The order of doors.md; groups that share keys agree on it.
const KEY_ORDER =
  `household task code subject building doer on say mark source households id size medium merv count earliest due latest
  lookOn early late basis state reasons items filter heatHours coolHours fanHours airflowCfm faceVelocityFpm
  dustMicrogramsPerM3 arrestance capacityGrams pressureDropCleanInWg loadedFraction theta q10 q50 q90 workings warnings
  supplies rounds`.split(/\s+/)

/**
 * The plan as the command line and HTTP give it: the documented keys in their documented order, and no others. In
 * pieces, a home each, because the text of ten thousand homes is too long to be held at once.
 */
export function* planJson({ on, households, supplies, rounds }: Plan): Generator<string> {
  yield `{\n  "on": ${json(on, 1)},\n  "households": [`
  let before = '\n'
  for (const household of households) {
    yield `${before}    ${json(household, 2)}`
    before = ',\n'
  }
  yield `${households.length > 0 ? '\n  ]' : ']'},\n  "supplies": ${json(supplies, 1)},\n  "rounds": ${json(rounds, 1)}\n}\n`
}

/** A value as it stands so many levels deep in a text indented by two. */
function json(value: unknown, depth: number): string {
  return JSON.stringify(value, KEY_ORDER, 2).replaceAll('\n', `\n${'  '.repeat(depth)}`)
}
