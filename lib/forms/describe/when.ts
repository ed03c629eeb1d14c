import { addDays, addMonths, addYears, type Day } from '@/lib/core/day'
import { FIRST_MEANT, typedPastDay, typedQuantity } from '../quantities'
import type { Answers } from './answers'

export const WHEN = ['ago', 'day', 'unknown'] as const

/**
 * When something was done: a day, about so long ago, or nobody knows (null). The fields are `<name>`, `<name>-ago`,
 * `<name>-unit` and `<name>-day`. Undefined after a fault.
 */
export function readWhen(answers: Answers, name: string, on: Day): Day | null | undefined {
  const way =
    answers.text(name) || (answers.text(`${name}-day`) ? 'day' : answers.text(`${name}-ago`) ? 'ago' : 'unknown')
  if (way === 'day') return answers.take(`${name}-day`, typedPastDay(on))
  if (way !== 'ago') return null
  const count = answers.take(`${name}-ago`, typedQuantity({ min: 0, max: 400, unit: 'so many', whole: true }))
  const unit = answers.text(`${name}-unit`) || 'weeks'
  if (count === undefined) return undefined
  const day = back(on, count, unit)
  return day >= FIRST_MEANT
    ? day
    : answers.fault(`${name}-ago`, 'That is too long ago to be counted here. Choose “I don’t know”.')
}

function back(on: Day, count: number, unit: string): Day {
  if (unit === 'days') return addDays(on, -count)
  if (unit === 'months') return addMonths(on, -count)
  return unit === 'years' ? addYears(on, -count) : addDays(on, -7 * count)
}
