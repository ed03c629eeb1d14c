import { dateInWords, plural } from '@/lib/core/day-words'
import { mediumInWords, sizeTextInWords } from '@/lib/core/filter-words'
import type { Household } from '@/lib/core/household'
import type { Item, Plan, Round } from '@/lib/core/plan-types'
import { homeInWords, subjectInWords } from '@/lib/core/subject-words'
import { doerInWords, stateInWords, taskInWords } from '@/lib/core/words'
import { table, wrapped } from './text-table'

/**
 * The plan for people at a terminal: what is due by household, then what to buy and the visits.
 * `columns` is the width of the screen in characters; below 60 the table becomes a list.
 */
export function planText(plan: Plan, households: readonly Household[], columns: number): string {
  const byId = new Map(households.map((household) => [household.id, household]))
  const parts = [`Plan of ${dateInWords(plan.on)}`]
  for (const { id, items, warnings } of plan.households) {
    const household = byId.get(id)
    if (!household) throw new Error(`the plan has a household that was not asked for: ${id}`)
    parts.push(household.name)
    parts.push(
      items.length === 0 ? 'Nothing is due: no equipment is described.' : dueTable(items, household, plan, columns),
    )
    for (const { say } of warnings) parts.push(wrapped(`Note: ${say}`, columns))
  }
  const buy = plan.supplies.map(({ size, medium, merv, count }) => [
    String(count),
    sizeTextInWords(size),
    mediumInWords(medium, merv),
  ])
  if (buy.length > 0) parts.push('To buy for the next 12 months', table(['how many', 'size', 'filter'], buy, columns))
  if (plan.rounds.length > 0) parts.push('Visits', table(['day', 'who', 'where and what'], visits(plan, byId), columns))
  return `${parts.join('\n\n')}\n`
}

function dueTable(items: readonly Item[], household: Household, plan: Plan, columns: number): string {
  const rows = items.map((item) => [
    stateInWords(item.state),
    dateInWords(item.due, plan.on),
    `${taskInWords(item.task)}: ${subjectInWords(household, item.subject)}`,
    doerInWords(item.doer),
    item.reasons[0]?.say ?? '',
  ])
  return table(['state', 'due', 'what', 'who', 'why'], rows, columns)
}

function visits(plan: Plan, byId: Map<string, Household>): string[][] {
  return plan.rounds.map((round) => [
    dateInWords(round.on, plan.on),
    doerInWords(round.doer),
    whereAndWhat(round, byId),
  ])
}

function whereAndWhat({ building, items }: Round, byId: Map<string, Household>): string {
  const homes = new Set(items.map(({ household }) => household))
  const [only] = homes
  const home = homes.size === 1 && only !== undefined ? (byId.get(only) ?? { name: only }) : { name: building }
  const where = homeInWords(home)
  const tasks = [...new Set(items.map(({ task }) => taskInWords(task)))].join(', ')
  return `${where}: ${tasks}${homes.size > 1 ? ` in ${plural(homes.size, 'home')}` : ''}`
}
