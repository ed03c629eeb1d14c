import { compareDays, type Day } from './day'
import type { Household, Task } from './household'
import { planHousehold } from './plan'
import type { HouseholdPlan } from './plan-types'
import { subjectInWords } from './subject-words'
import type { Tables } from './tables'

/** One item whose day another description of the home moves; null: it is not there before, or not after. */
export interface PlanChange {
  task: Task
  /** In words: `wall grille`. */
  subject: string
  before: Day | null
  after: Day | null
}

/** What another description of the same home does to its dates on one day: what moves, comes and goes, by day. */
export function planChanges(before: Household, after: Household, tables: Tables, on: Day): PlanChange[] {
  const was = dues(planHousehold(before, tables, on), before)
  const will = dues(planHousehold(after, tables, on), after)
  return [...new Set([...was.keys(), ...will.keys()])]
    .flatMap((key): PlanChange[] => {
      const [old, fresh] = [was.get(key), will.get(key)]
      const any = fresh ?? old
      if (!any || old?.due === fresh?.due) return []
      return [{ task: any.task, subject: any.subject, before: old?.due ?? null, after: fresh?.due ?? null }]
    })
    .sort((a, b) => compareDays(a.after ?? a.before ?? '', b.after ?? b.before ?? ''))
}

function dues(plan: HouseholdPlan, home: Household): Map<string, { task: Task; subject: string; due: Day }> {
  return new Map(
    plan.items.map(({ task, subject, due }) => [
      JSON.stringify([task, subject]),
      { task, subject: subjectInWords(home, subject), due },
    ]),
  )
}
