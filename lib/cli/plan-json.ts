import type { Plan } from '@/lib/core/plan-types'

// The order of doors.md; groups that share keys agree on it.
const KEY_ORDER =
  `household task code subject building doer on say mark source households id size medium merv count earliest due latest
  lookOn early late basis state reasons items filter heatHours coolHours fanHours airflowCfm faceVelocityFpm
  dustMicrogramsPerM3 arrestance capacityGrams pressureDropCleanInWg loadedFraction theta q10 q50 q90 workings warnings
  supplies rounds`.split(/\s+/)

/** The plan as the command line and HTTP give it: the documented keys in their documented order, and no others. */
export function planJson(plan: Plan): string {
  return `${JSON.stringify(plan, KEY_ORDER, 2)}\n`
}
