import { tables } from '@/content/tables'
import type { Day } from '@/lib/core/day'
import { spanInWords } from '@/lib/core/day-words'
import type { Household, Reading } from '@/lib/core/household'
import { type PlanChange, planChanges } from '@/lib/core/plan-changes'
import { type Cover, type Replacement, replaceReadings, type StandingReading } from '@/lib/core/reading-spans'
import { readingInWords } from '@/lib/core/reading-words'
import { householdRules } from '@/lib/forms/rules/household-rules'

/** What bringing some readings would do: to those that stand, and to the dates; or why it cannot be. */
export interface WithReadings {
  replacement: Replacement
  changes: PlanChange[]
  faults: string[]
}

/** Lays readings of one system and source over those that stand, each on its own days unless told. Writes nothing. */
export function withReadings(
  home: Household,
  standing: readonly StandingReading[],
  { fresh, covers, on }: { fresh: readonly Reading[]; covers?: readonly Cover[]; on: Day },
): WithReadings {
  const replacement = replaceReadings(standing, fresh, covers)
  const contradictions = replacement.contradicting.map(
    ({ fresh: brought, standing: other }) =>
      `Already measured ${spanInWords(brought.from, brought.to)} by another reading: ${readingInWords(home, other)}. No day counts twice: take that one out first, or leave these days out.`,
  )
  if (contradictions.length > 0) return { replacement, changes: [], faults: contradictions }
  const gone = new Set(replacement.gone.map(({ id }) => id))
  const kept = standing.filter(({ id }) => !gone.has(id)).map(({ reading }) => reading)
  const after = { ...home, readings: [...kept, ...replacement.rest, ...fresh] }
  const faults = householdRules([after], () => on)
    .filter(({ path }) => path.includes('.readings['))
    .map(({ path, say }) => {
      const at = Number(/readings\[(\d+)\]/.exec(path)?.[1] ?? 0)
      const reading = after.readings[at]
      return `The reading ${reading ? spanInWords(reading.from, reading.to) : ''} ${say}.`
    })
  return { replacement, changes: faults.length > 0 ? [] : planChanges(home, after, tables, on), faults }
}
