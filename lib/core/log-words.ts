import { mediumInWords } from './filter-words'
import type { LogRecord, Task } from './household'
import type { Door } from './viewer'
import { doerInWords, lightInWords, taskDoneInWords } from './words'

/**
 * What a line of the log is about: the three kinds of record, what was put off, who was away, reminders, and what the
 * guide wrote down.
 */
export const LOG_KINDS = [
  'filter-changed',
  'filter-looked',
  'service-done',
  'put-off',
  'away',
  'reminded',
  'checked',
] as const
export type LogKind = (typeof LOG_KINDS)[number]

const KINDS: Record<LogKind, string> = {
  'filter-changed': 'Filters changed',
  'filter-looked': 'Filters looked at',
  'service-done': 'Services and care',
  'put-off': 'Put off',
  away: 'Nobody at home',
  reminded: 'Reminders sent',
  checked: 'Self-checks, hazards and visits',
}

/** `Filters changed`: for a choice. */
export function logKindInWords(kind: LogKind): string {
  return KINDS[kind]
}

const DOORS: Record<Door, string> = {
  page: 'on a page here',
  file: 'with a household file',
  link: 'by a link',
  mail: 'by a button in a mail',
  program: 'by a program',
  command: 'on the command line',
}

/** `on a page here`, to complete "recorded …". */
export function doorInWords(door: Door): string {
  return DOORS[door]
}

/** The task that a record answers: `filter-changed` answers `change-filter`. */
export function taskOfRecord(record: LogRecord): Task {
  if (record.kind === 'filter-changed') return 'change-filter'
  return record.kind === 'filter-looked' ? 'look-at-filter' : record.task
}

/** The filter, system or device that a record is about. */
export function subjectOfRecord(record: LogRecord): string {
  return record.kind === 'service-done' ? record.subject : record.filter
}

/** `Filter changed`. */
export function recordInWords(record: LogRecord): string {
  return taskDoneInWords(taskOfRecord(record))
}

/** What else was written down, each a short sentence part: `Hardly any light comes through`, `pleated, MERV 11 went in`. */
export function detailsInWords(record: LogRecord): string[] {
  if (record.kind === 'service-done') return record.by ? [`done by ${doneBy(record.by)}`] : []
  const details = record.light ? [lightInWords(record.light)] : []
  if (record.kind === 'filter-changed' && record.fitted)
    details.push(`${mediumInWords(record.fitted.medium, record.fitted.merv)} went in`)
  return details
}

function doneBy(by: 'resident' | 'technician'): string {
  return by === 'resident' ? 'the people of the home' : doerInWords(by)
}
