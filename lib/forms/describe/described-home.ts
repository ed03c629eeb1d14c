import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import { householdRules } from '../rules/household-rules'
import type { DescribeTables, DraftAnswers } from './answers'
import { assemble } from './assemble'
import { readPlace } from './place'
import { readStep, type StepValue } from './read-step'
import { type Step, stepsOf } from './steps'

/** What is wrong with the answers of one screen; empty where nothing is. */
export function stepFaults(
  step: Step,
  draft: DraftAnswers,
  { tables, on }: { tables: DescribeTables; on: Day },
): Fault[] {
  const read = readStep(step, draft, tables, on)
  return read.ok ? [] : read.faults
}

/** The home that a draft describes, or what is still wrong, by screen. */
export function describedHome(
  draft: DraftAnswers,
  { tables, today }: { tables: DescribeTables; today: (timeZone: string) => Day },
): { ok: true; home: Household } | { ok: false; faults: (Fault & { step: Step })[] } {
  const zone = readPlace(draft.home ?? {}, tables)
  const on = today(zone.ok ? zone.value.timeZone : 'UTC')
  const faults: (Fault & { step: Step })[] = []
  const values = stepsOf(draft).flatMap((step): { step: Step; value: StepValue }[] => {
    if (step !== 'check' && draft[step] === undefined) {
      faults.push({ step, path: '', say: 'This screen has not been answered yet.' })
      return []
    }
    const read = readStep(step, draft, tables, on)
    if (read.ok) return [{ step, value: read.value }]
    faults.push(...read.faults.map((fault) => ({ step, ...fault })))
    return []
  })
  if (faults.length > 0) return { ok: false, faults }
  const home = assemble(values, on)
  const clashes = householdRules([home], today)
  if (clashes.length === 0) return { ok: true, home }
  return {
    ok: false,
    faults: clashes.map(({ path, say }) => ({ step: stepOfPath(path), path: '', say: `This ${say}.` })),
  }
}

function stepOfPath(path: string): Step {
  const index = Number(/\[(\d+)\]$/.exec(path.split('.')[1] ?? '')?.[1] ?? 0)
  if (path.includes('.systems')) return `system-${index + 1}`
  if (path.includes('.devices')) return 'devices'
  return path.includes('.filters') ? 'filter-1-1' : 'home'
}

/** The time zone that a draft's days are read in, as far as it is known. */
export function draftZone(draft: DraftAnswers, tables: DescribeTables): string {
  const place = readPlace(draft.home ?? {}, tables)
  // Until it is answered a day is at worst one too early: nothing is refused that a person in these zones may say.
  return place.ok ? place.value.timeZone : 'America/New_York'
}
