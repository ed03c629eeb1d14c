import type { Household } from '@/lib/core/household'
import type { DraftAnswers } from './answers'
import { placesFor } from './filter'
import { readSystem } from './system'

export const MOST_SYSTEMS = 9
export const MOST_FILTERS = 9

/** `home`, `people`, `system-1` …, `filter-1-1` (the first filter of the first system) …, `devices`, `check`. */
export type Step = string

/** What a screen's button asks for. */
export const BUTTONS = ['next', 'another', 'back', 'leave', 'remove', 'size', 'more'] as const
export type Button = (typeof BUTTONS)[number]

/** Which screen an address names, or null. */
export function findStep(text: string): Step | null {
  return /^(home|people|devices|check|system-[1-9]|filter-[1-9]-[1-9])$/.test(text) ? text : null
}

/** The numbers in `filter-1-2`: `{ system: 1, filter: 2 }`. */
export function numbersOf(step: Step): { system: number; filter: number } {
  const [, system, filter] = step.split('-')
  return { system: Number(system ?? 0), filter: Number(filter ?? 0) }
}

/** The units that a draft is typed in. */
export function unitsOf(draft: DraftAnswers): Household['units'] {
  return draft.home?.units?.[0] === 'metric' ? 'metric' : 'us'
}

/** All screens of a draft in their order; a system without air has no filter screen. */
export function stepsOf(draft: DraftAnswers): Step[] {
  const systems = numbered(draft, (n) => `system-${n}`, MOST_SYSTEMS)
  const filters = systems.flatMap((step) =>
    mayFilter(draft, step) ? numbered(draft, (n) => `filter-${numbersOf(step).system}-${n}`, MOST_FILTERS) : [],
  )
  return ['home', 'people', ...systems, ...filters, 'devices', 'check']
}

function mayFilter(draft: DraftAnswers, step: Step): boolean {
  const read = draft[step] ? readSystem(draft[step], unitsOf(draft)) : undefined
  if (!read) return true
  if (!read.ok) return false
  const { delivery, cool, heat } = read.value.system
  if (delivery === 'room') return cool !== undefined || heat?.source === 'heat-pump'
  return placesFor(delivery).length > 0
}

// The first is always asked; a further one where it was begun.
function numbered(draft: DraftAnswers, name: (n: number) => Step, most: number): Step[] {
  const steps = [name(1)]
  for (let n = 2; n <= most && draft[name(n)] !== undefined; n++) steps.push(name(n))
  return steps
}

/** The screen before one; null before the first. */
export function stepBefore(step: Step, draft: DraftAnswers): Step | null {
  const steps = stepsOf(draft)
  return steps[steps.indexOf(step) - 1] ?? null
}

/** Whether there is room for one more of the same kind behind this screen. */
export function mayAddAnother(step: Step, draft: DraftAnswers): boolean {
  return anotherAfter(step, draft) !== null
}

function anotherAfter(step: Step, draft: DraftAnswers): Step | null {
  const { system } = numbersOf(step)
  const name = step.startsWith('system-') ? (n: number) => `system-${n}` : (n: number) => `filter-${system}-${n}`
  if (!/^(system|filter)-/.test(step)) return null
  const count = numbered(draft, name, MOST_SYSTEMS).length
  return count < MOST_SYSTEMS ? name(count + 1) : null
}

/** Where a button leads, with the draft as it is then. */
export function moved(step: Step, button: Button, draft: DraftAnswers): { step: Step; answers: DraftAnswers } {
  if (button === 'next') {
    const steps = stepsOf(draft)
    return { step: steps[steps.indexOf(step) + 1] ?? 'check', answers: draft }
  }
  if (button === 'back') return { step: stepBefore(step, draft) ?? step, answers: draft }
  if (button === 'remove') {
    const before = stepBefore(step, draft) ?? 'home'
    return { step: before, answers: withoutStep(step, draft) }
  }
  const another = button === 'another' ? anotherAfter(step, draft) : null
  return another ? { step: another, answers: { ...draft, [another]: {} } } : { step, answers: draft }
}

/** Without a further system or filter; those behind it move up one. */
function withoutStep(step: Step, draft: DraftAnswers): DraftAnswers {
  const gone = numbersOf(step)
  const isSystem = step.startsWith('system-')
  const kept = Object.entries(draft).flatMap(([name, typed]): [Step, DraftAnswers[string]][] => {
    const { system, filter } = numbersOf(name)
    if (!/^(system|filter)-/.test(name)) return [[name, typed]]
    if (isSystem) {
      if (system === gone.system) return []
      const moved = system > gone.system ? system - 1 : system
      return [[name.startsWith('system-') ? `system-${moved}` : `filter-${moved}-${filter}`, typed]]
    }
    if (name.startsWith('system-') || system !== gone.system) return [[name, typed]]
    if (filter === gone.filter) return []
    return [[`filter-${system}-${filter > gone.filter ? filter - 1 : filter}`, typed]]
  })
  return Object.fromEntries(kept)
}
