import { subjectOfRecord } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import type { Viewer } from '@/lib/core/viewer'
import type { StoredHousehold } from '@/lib/data/households'
import { type LogEntry, type LogFilter, listLog } from '@/lib/data/log'
import type { LogQuery } from '@/lib/forms/log-filter'

/** What can be chosen from in the filters of one home's log. */
export interface LogChoices {
  subjects: { id: string; name: string }[]
  people: string[]
}

/** The entries that a query asks for, the latest first, and everything that the log could be filtered by. */
export async function loadLog(
  viewer: Viewer,
  { id, household }: StoredHousehold,
  query: LogQuery,
): Promise<{ entries: LogEntry[]; all: LogEntry[]; choices: LogChoices }> {
  const all = await listLog(viewer, id)
  const entries = Object.keys(query).length === 0 ? all : await asked(viewer, id, query)
  const ids = [...new Set(all.map(({ record }) => subjectOfRecord(record)))]
  const subjects = ids.map((subject) => ({ id: subject, name: subjectInWords(household, subject) }))
  const people = [...new Set(all.map(({ by }) => by.name))].sort()
  return { entries, all, choices: { subjects: subjects.sort((a, b) => (a.name < b.name ? -1 : 1)), people } }
}

async function asked(viewer: Viewer, id: string, { kind, who, ...rest }: LogQuery): Promise<LogEntry[]> {
  if (kind === 'reminded') return []
  const filter: LogFilter = { ...rest, ...(kind && { kind }), ...(who && { byName: who }) }
  return listLog(viewer, id, filter)
}
