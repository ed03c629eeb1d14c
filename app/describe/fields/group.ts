import type { Fault } from '@/lib/core/fault'

/** What a group of questions is drawn from: what was typed, and what is wrong with it. */
export interface GroupProps {
  typed: Record<string, string[]>
  faults: Fault[]
}

/** The first text of a field, and its fault. */
export function fieldOf(
  { typed, faults }: GroupProps,
  id: string,
): { defaultValue: string; fault: string | undefined } {
  return { defaultValue: typed[id]?.[0] ?? '', fault: faultOf(faults, id) }
}

/** The chosen answer of a question, and its fault. */
export function choiceOf(
  { typed, faults }: GroupProps,
  name: string,
): { chosen: string | undefined; fault: string | undefined } {
  return { chosen: typed[name]?.[0], fault: faultOf(faults, name) }
}

function faultOf(faults: Fault[], id: string): string | undefined {
  return faults.find(({ path }) => path === id)?.say
}
