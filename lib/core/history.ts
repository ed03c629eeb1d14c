import { type DayNumber, dayNumber } from './day'
import type { Household, Light, LogRecord, Medium, Task } from './household'

/** What was done with one filter, in order of days. */
export interface FilterHistory {
  changes: { on: DayNumber; fitted?: { medium: Medium; merv?: number } }[]
  /** Every look, with the light where it was recorded; a change with the old filter's light is one. */
  looks: { on: DayNumber; light?: Light }[]
}

/** The records of a household by what they are about. */
export interface History {
  filter: (id: string) => FilterHistory
  /** The last day a task was done on a subject; null if never. */
  lastDone: (task: Task, subject: string) => DayNumber | null
}

const NONE: FilterHistory = { changes: [], looks: [] }

/** The last day of one task on one subject. */
interface Done {
  task: Task
  subject: string
  on: DayNumber
}

interface Kept extends FilterHistory {
  id: string
}

/**
 * Sorts a household's records once, so that every question about them is a look-up. A home has a few filters and a few
 * things that are done to it, however long its log: short lists are quicker than maps.
 */
export function historyOf(home: Pick<Household, 'records'>): History {
  const filters: Kept[] = []
  const done: Done[] = []
  for (const record of home.records) addRecord(record, filters, done)
  for (const history of filters) {
    if (history.changes.length > 1) history.changes.sort((a, b) => a.on - b.on || compareFitted(a.fitted, b.fitted))
    if (history.looks.length > 1) history.looks.sort((a, b) => a.on - b.on)
  }
  return {
    filter: (id) => filters.find((one) => one.id === id) ?? NONE,
    lastDone: (task, subject) => doneOf(done, task, subject)?.on ?? null,
  }
}

function doneOf(done: readonly Done[], task: Task, subject: string): Done | undefined {
  for (const one of done) if (one.task === task && one.subject === subject) return one
}

function filterOf(filters: Kept[], id: string): Kept {
  for (const one of filters) if (one.id === id) return one
  const history: Kept = { id, changes: [], looks: [] }
  filters.push(history)
  return history
}

/** Of two changes on one day what they fitted decides, so that the order of entry does not: nothing said comes first. */
function compareFitted(a: FilterHistory['changes'][number]['fitted'], b: typeof a): number {
  const [left, right] = [a, b].map((fitted) => (fitted ? `${fitted.medium} ${fitted.merv ?? ''}` : '')) as [
    string,
    string,
  ]
  return left < right ? -1 : left > right ? 1 : 0
}

function addRecord(record: LogRecord, filters: Kept[], done: Done[]): void {
  const on = dayNumber(record.on)
  if (record.kind === 'filter-looked') {
    filterOf(filters, record.filter).looks.push({ on, light: record.light })
  } else if (record.kind === 'filter-changed') {
    addChange(filterOf(filters, record.filter), on, record)
  } else if (record.task === 'change-filter' || record.task === 'wash-filter') {
    addChange(filterOf(filters, record.subject), on, {})
  } else if (record.task === 'look-at-filter') {
    filterOf(filters, record.subject).looks.push({ on })
  } else {
    const last = doneOf(done, record.task, record.subject)
    if (last) last.on = Math.max(last.on, on)
    else done.push({ task: record.task, subject: record.subject, on })
  }
}

function addChange(
  history: FilterHistory,
  on: DayNumber,
  { light, fitted }: { light?: Light; fitted?: FilterHistory['changes'][number]['fitted'] },
): void {
  history.changes.push({ on, fitted })
  if (light) history.looks.push({ on, light })
}
