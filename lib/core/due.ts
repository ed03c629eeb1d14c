import { type DayNumber, dayText } from './day'
import type { Doer, Task } from './household'
import type { Basis, Item, Reason, State } from './plan-types'
import type { Figures, TaskRow } from './tables'

/** An item while its days are still numbers. */
export interface Due {
  task: Task
  subject: string
  doer: Doer
  earliest: DayNumber
  due: DayNumber
  latest: DayNumber
  basis: Basis
  reasons: Reason[]
}

/** Overdue once `latest` has passed, due from `due` on, soon within two weeks before it. */
export function stateOf(due: DayNumber, latest: DayNumber, on: DayNumber, figures: Figures): State {
  if (latest < on) return 'overdue'
  if (due <= on) return 'due'
  return due <= on + figures.soonDays.value ? 'soon' : 'later'
}

export function itemOf(due: Due, on: DayNumber, figures: Figures): Item {
  return {
    task: due.task,
    subject: due.subject,
    doer: due.doer,
    earliest: dayText(due.earliest),
    due: dayText(due.due),
    latest: dayText(due.latest),
    basis: due.basis,
    state: stateOf(due.due, due.latest, on, figures),
    reasons: due.reasons,
  }
}

const taskReasons = new WeakMap<TaskRow, Reason>()

/** Why a task is done at all, from its row; one value for all that do it. */
export function taskReason(row: TaskRow): Reason {
  let reason = taskReasons.get(row)
  if (!reason) {
    reason = sourced(row.reason, row.mark, row.source)
    taskReasons.set(row, reason)
  }
  return reason
}

/** A reason with its source, where it has one. */
export function sourced(say: string, mark: Reason['mark'], source: string | undefined): Reason {
  return source === undefined ? { say, mark } : { say, mark, source }
}

/** The window of a task with a fixed period: a quarter of it before, a tenth of it after. */
export function periodWindow(
  due: DayNumber,
  periodDays: number,
): { earliest: DayNumber; due: DayNumber; latest: DayNumber } {
  return { earliest: due - Math.floor(periodDays / 4), due, latest: due + Math.floor(periodDays / 10) }
}
