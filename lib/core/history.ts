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

/** Sorts a household's records once, so that every question about them is a look-up. */
export function historyOf(home: Pick<Household, 'records'>): History {
  const filters = new Map<string, FilterHistory>()
  const done = new Map<Task, Map<string, DayNumber>>()
  const of = (id: string) => {
    const known = filters.get(id)
    if (known) return known
    const history: FilterHistory = { changes: [], looks: [] }
    filters.set(id, history)
    return history
  }
  for (const record of home.records) addRecord(record, of, done)
  for (const history of filters.values()) {
    history.changes.sort((a, b) => a.on - b.on || compareFitted(a.fitted, b.fitted))
    history.looks.sort((a, b) => a.on - b.on)
  }
  return {
    filter: (id) => filters.get(id) ?? NONE,
    lastDone: (task, subject) => done.get(task)?.get(subject) ?? null,
  }
}

/** Of two changes on one day what they fitted decides, so that the order of entry does not: nothing said comes first. */
function compareFitted(a: FilterHistory['changes'][number]['fitted'], b: typeof a): number {
  const [left, right] = [a, b].map((fitted) => (fitted ? `${fitted.medium} ${fitted.merv ?? ''}` : '')) as [
    string,
    string,
  ]
  return left < right ? -1 : left > right ? 1 : 0
}

function addRecord(
  record: LogRecord,
  of: (id: string) => FilterHistory,
  done: Map<Task, Map<string, DayNumber>>,
): void {
  const on = dayNumber(record.on)
  if (record.kind === 'filter-looked') {
    of(record.filter).looks.push({ on, light: record.light })
  } else if (record.kind === 'filter-changed') {
    addChange(of(record.filter), on, record)
  } else if (record.task === 'change-filter' || record.task === 'wash-filter') {
    addChange(of(record.subject), on, {})
  } else if (record.task === 'look-at-filter') {
    of(record.subject).looks.push({ on })
  } else {
    const subjects = done.get(record.task) ?? new Map<string, DayNumber>()
    subjects.set(record.subject, Math.max(on, subjects.get(record.subject) ?? on))
    done.set(record.task, subjects)
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
