import type { LogRecord } from '@/lib/core/household'
import type { Row } from './insert'

/** The columns of `Entry` that say what was done. */
export interface RecordRow {
  on: string
  kind: string
  subject: string
  task: string | null
  light: string | null
  fittedMedium: string | null
  fittedMerv: number | null
  doer: string | null
}

/** A record as columns. */
export function recordRow(record: LogRecord): RecordRow & Row {
  const looked = record.kind !== 'service-done'
  return {
    on: record.on,
    kind: record.kind,
    subject: looked ? record.filter : record.subject,
    task: looked ? null : record.task,
    light: looked ? (record.light ?? null) : null,
    fittedMedium: record.kind === 'filter-changed' ? (record.fitted?.medium ?? null) : null,
    fittedMerv: record.kind === 'filter-changed' ? (record.fitted?.merv ?? null) : null,
    doer: looked ? null : (record.by ?? null),
  }
}

/** Columns as a record; absent keys stay absent. The rows were written from records, so their words are known ones. */
export function recordValue(row: RecordRow): LogRecord {
  if (row.kind === 'service-done') {
    return { on: row.on, kind: row.kind, task: row.task, subject: row.subject, ...given('by', row.doer) } as LogRecord
  }
  const fitted = row.fittedMedium === null ? null : { medium: row.fittedMedium, ...given('merv', row.fittedMerv) }
  return {
    on: row.on,
    kind: row.kind,
    filter: row.subject,
    ...given('light', row.light),
    ...given('fitted', fitted),
  } as LogRecord
}

/** `{ key: value }`, or nothing where the value is null. */
export function given<K extends string, V>(key: K, value: V | null): { [key in K]?: V } {
  return value === null ? {} : ({ [key]: value } as { [key in K]: V })
}
