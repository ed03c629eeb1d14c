import type { Day } from '@/lib/core/day'
import type { LogRecord } from '@/lib/core/household'
import type { Door, Instant, Viewer } from '@/lib/core/viewer'
import type { Entry } from '@/prisma/generated/sqlite/client'
import { ask } from './connection'
import { recordValue } from './record-rows'
import { findRole } from './scope'

/** One line of the log: what, by whom, when, through which door, and whether it still stands. */
export interface LogEntry {
  id: string
  record: LogRecord
  by: { accountId: string | null; name: string }
  at: Instant
  door: Door
  standing: boolean
  undone: { by: string; at: Instant } | null
  /** The entry that stands in its place. */
  correctedBy: string | null
}

/** What of a log to show; everything left out is not asked for. Days are those on which it was done, both included. */
export interface LogFilter {
  from?: Day
  to?: Day
  kind?: LogRecord['kind']
  subject?: string
  byAccount?: string
  /** A name as the log shows it; people whose account is gone have only that. */
  byName?: string
  door?: Door
  standingOnly?: boolean
}

/** The log of a household, the latest day first; empty for someone else's. */
export function listLog(viewer: Viewer, householdId: string, filter: LogFilter = {}): Promise<LogEntry[]> {
  return ask(async (db) => {
    // The log names people: it is not shown by a renter's link.
    if (viewer.kind === 'link' || !(await findRole(db, viewer, householdId))) return []
    const { from, to, kind, subject, byAccount, byName, door, standingOnly } = filter
    const entries = await db.entry.findMany({
      where: {
        householdId,
        on: { ...(from && { gte: from }), ...(to && { lte: to }) },
        ...{ kind, subject, byAccount, byName, door },
        ...(standingOnly && { undoneAt: null, correctedBy: null }),
      },
      orderBy: [{ on: 'desc' }, { at: 'desc' }, { position: 'desc' }],
    })
    return entries.map(logEntry)
  })
}

/** A row of the log as a value. */
export function logEntry(row: Entry): LogEntry {
  return {
    id: row.id,
    record: recordValue(row),
    by: { accountId: row.byAccount, name: row.byName },
    at: row.at,
    door: row.door as Door,
    standing: row.undoneAt === null && row.correctedBy === null,
    undone: row.undoneAt === null ? null : { by: row.undoneBy ?? '', at: row.undoneAt },
    correctedBy: row.correctedBy,
  }
}
