import type { Day } from '@/lib/core/day'
import { subjectOfRecord } from '@/lib/core/log-words'
import { subjectInWords } from '@/lib/core/subject-words'
import type { Instant, Viewer } from '@/lib/core/viewer'
import { localDay } from '@/lib/core/zone'
import type { StoredHousehold } from '@/lib/data/households'
import { type LogEntry, type LogFilter, listLog } from '@/lib/data/log'
import { listPauses, type PauseLine } from '@/lib/data/pauses'
import { listReminded, type RemindedLine } from '@/lib/data/remindings'
import type { LogQuery } from '@/lib/forms/log-filter'
import { type GuideLine, isGuideLineAsked, listGuideLines } from './guide-lines'

/** What can be chosen from in the filters of one home's log. */
export interface LogChoices {
  subjects: { id: string; name: string }[]
  people: string[]
}

/** One reminder that went out to one person, and everything of this home that stood in it. */
export interface Reminder {
  id: string
  on: Day
  name: string
  at: string
  channel: RemindedLine['channel']
  items: RemindedLine[]
}

/** What a query asks for of a log, the latest first, and everything that the log could be filtered by. */
export interface LoadedLog {
  entries: LogEntry[]
  reminders: Reminder[]
  /** What the guide wrote down. */
  guide: GuideLine[]
  pauses: PauseLine[]
  all: LogEntry[]
  choices: LogChoices
}

/** The log of a home as a query asks for it. */
export async function loadLog(
  { viewer, at }: { viewer: Viewer; at: Instant },
  { id, household }: StoredHousehold,
  query: LogQuery,
): Promise<LoadedLog> {
  const all = await listLog(viewer, id)
  const allPauses = await listPauses(viewer, id, at)
  const entries = Object.keys(query).length === 0 ? all : await asked(viewer, id, query)
  const allReminders = remindersOf(await listReminded(viewer, id), household.timeZone)
  const allGuide = await listGuideLines(viewer, id)
  const ids = [...new Set([...all.map(({ record }) => subjectOfRecord(record)), ...allPauses.flatMap(subjectsOf)])]
  const subjects = ids.map((subject) => ({ id: subject, name: subjectInWords(household, subject) }))
  const names = [
    ...[...all, ...allPauses].map(({ by }) => by.name),
    ...allReminders.map(({ name }) => name),
    ...allGuide.map(({ by }) => by),
  ]
  const people = [...new Set(names)].sort()
  const reminders = allReminders.filter((reminder) => isAsked(reminder, query))
  const pauses = allPauses.filter((pause) => isPauseAsked(pause, query))
  return {
    entries,
    reminders,
    guide: allGuide.filter((line) => isGuideLineAsked(line, query)),
    pauses,
    all,
    choices: { subjects: subjects.sort((a, b) => (a.name < b.name ? -1 : 1)), people },
  }
}

async function asked(viewer: Viewer, id: string, { kind, who, ...rest }: LogQuery): Promise<LogEntry[]> {
  if (kind === 'reminded' || kind === 'checked' || kind === 'put-off' || kind === 'away') return []
  const filter: LogFilter = { ...rest, ...(kind && { kind }), ...(who && { byName: who }) }
  return listLog(viewer, id, filter)
}

function remindersOf(lines: RemindedLine[], timeZone: string): Reminder[] {
  const groups = new Map<string, Reminder>()
  for (const line of lines) {
    const { at, name, channel } = line
    const key = `${at} ${name} ${channel}`
    const group = groups.get(key) ?? { id: line.id, on: localDay(at, timeZone), name, at, channel, items: [] }
    group.items.push(line)
    groups.set(key, group)
  }
  return [...groups.values()]
}

function isAsked({ on, name, channel, items }: Reminder, { kind, subject, who, door, from, to }: LogQuery): boolean {
  if (kind !== undefined && kind !== 'reminded') return false
  if (subject !== undefined && items.every((item) => item.subject !== subject)) return false
  if (who !== undefined && name !== who) return false
  if (door !== undefined && door !== channel) return false
  return (from === undefined || on >= from) && (to === undefined || on <= to)
}

function subjectsOf(pause: PauseLine): string[] {
  return pause.kind === 'put-off' ? [pause.subject] : []
}

function isPauseAsked(pause: PauseLine, { kind, subject, who, door, from, to }: LogQuery): boolean {
  if (kind !== undefined && kind !== pause.kind) return false
  if (subject !== undefined && !subjectsOf(pause).includes(subject)) return false
  if (who !== undefined && pause.by.name !== who) return false
  if (door !== undefined && pause.door !== door) return false
  return (from === undefined || pause.from >= from) && (to === undefined || pause.from <= to)
}
