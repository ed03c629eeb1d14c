import type { System } from '@/lib/core/household'
import type { Answers } from './describe/answers'

/** The system that a form names, or the only one there is; where neither is, `say` is the fault of its field. */
export function chosenSystem(answers: Answers, systems: readonly System[], say: string): System | undefined {
  const system =
    systems.find(({ id }) => id === answers.text('system')) ?? (systems.length === 1 ? systems[0] : undefined)
  if (!system) answers.fault('system', say)
  return system
}
