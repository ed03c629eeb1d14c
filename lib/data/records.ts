import type { Fault } from '@/lib/core/fault'
import type { LogRecord } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import type { Entry } from '@/prisma/generated/sqlite/client'
import { type Questions, together } from './connection'
import { putIn, takeOut } from './filter-in-place'
import { insertRows } from './insert'
import { type LogEntry, logEntry } from './log'
import { newId } from './new-id'
import { type RecordRow, recordRow } from './record-rows'
import { type Refusal, raise, signature } from './scope'

/**
 * recorded: it stands now · already: the same had been recorded that day (or sent before, with this key) ·
 * completed: that entry lacked details, which were added by a correction · differs: that entry says otherwise in
 * a detail and still stands; correct it if this one is right.
 */
export type Outcome = 'recorded' | 'already' | 'completed' | 'differs'
export type Recorded =
  | { ok: true; outcome: Outcome; entry: LogEntry; revision: number }
  | Refusal
  | { ok: false; because: 'fault'; faults: Fault[] }

/** Records what was done. `key` is any text that a queue made for this one tap: sent twice, it is one entry. */
export function addRecord(
  act: Act,
  householdId: string,
  record: LogRecord,
  { key = null }: { key?: string | null } = {},
): Promise<Recorded> {
  return recording(act, householdId, record, (tx, row) => addIn(tx, act, householdId, row, key))
}

async function addIn(
  tx: Questions,
  act: Act,
  householdId: string,
  row: RecordRow,
  key: string | null,
): Promise<{ outcome: Outcome; entry: Entry }> {
  const sentBefore =
    key === null ? null : await tx.entry.findUnique({ where: { householdId_key: { householdId, key } } })
  if (sentBefore) return { outcome: 'already', entry: sentBefore }
  const same = await standingOnThatDay(tx, householdId, row)
  if (!same) return { outcome: 'recorded', entry: await insertEntry(tx, act, householdId, row, { key }) }
  const details = ['light', 'fittedMedium', 'fittedMerv', 'doer'] as const
  const differs = details.some(
    (detail) => row[detail] !== null && same[detail] !== null && row[detail] !== same[detail],
  )
  if (differs) return { outcome: 'differs', entry: same }
  if (details.every((detail) => row[detail] === null || same[detail] !== null))
    return { outcome: 'already', entry: same }
  const whole = { ...row }
  for (const detail of details) Object.assign(whole, { [detail]: row[detail] ?? same[detail] })
  return { outcome: 'completed', entry: await correct(tx, act, householdId, same, whole, key) }
}

/** One record inside a transaction that has raised its household, or what is wrong with it in words. */
export async function recordIn(
  tx: Questions,
  act: Act,
  householdId: string,
  { record, key = null }: { record: LogRecord; key?: string | null },
): Promise<{ outcome: Outcome; entry: LogEntry } | string> {
  const row = recordRow(record)
  if (!(await hasSubject(tx, householdId, row))) return goneInWords(row)
  const { outcome, entry } = await addIn(tx, act, householdId, row, key)
  return { outcome, entry: logEntry(entry) }
}

/** Corrects an entry: a new one stands in its place, and the earlier one stays in the log, marked. */
export function correctRecord(act: Act, householdId: string, entryId: string, record: LogRecord): Promise<Recorded> {
  return recording(act, householdId, record, async (tx, row) => {
    const entry = await tx.entry.findFirst({ where: { householdId, id: entryId } })
    if (!entry) return 'There is no such entry in this log.'
    if (entry.undoneAt || entry.correctedBy)
      return 'This entry was undone or corrected meanwhile. Look at the log again.'
    const same = await standingOnThatDay(tx, householdId, row)
    if (same && same.id !== entry.id) return 'The same is recorded on that day already. Undo this entry instead.'
    return { outcome: 'recorded', entry: await correct(tx, act, householdId, entry, row, null) }
  })
}

/** Takes one entry back; it stays in the log, marked. Undoing a correction lets the entry before it stand again. */
export function undoRecord(act: Act, householdId: string, entryId: string): Promise<Recorded> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const undone = await undoIn(tx, act, householdId, entryId)
    return typeof undone === 'string' ? refuse(undone) : { ok: true, ...undone, revision: raised.revision }
  })
}

/** The same inside a transaction that has raised its household, or what is wrong in words. */
export async function undoIn(
  tx: Questions,
  act: Act,
  householdId: string,
  entryId: string,
): Promise<{ outcome: Outcome; entry: LogEntry } | string> {
  const entry = await tx.entry.findFirst({ where: { householdId, id: entryId } })
  const isOthers = act.viewer.kind === 'link' && (entry?.door !== 'link' || entry.byName !== act.viewer.name)
  if (!entry || isOthers) return 'There is no such entry in this log.'
  if (entry.correctedBy) return 'This entry was corrected meanwhile. Look at the log again.'
  if (entry.undoneAt) return { outcome: 'already', entry: logEntry(entry) }
  const data = { undoneAt: act.at, undoneBy: signature(act.viewer).byName }
  const undone = await tx.entry.update({ where: { id: entryId }, data })
  await takeOut(tx, householdId, entry)
  const before = await tx.entry.findFirst({ where: { householdId, correctedBy: entryId } })
  if (before) {
    const standing = { correctedBy: null, ...(await putIn(tx, householdId, before)) }
    await tx.entry.update({ where: { id: before.id }, data: standing })
  }
  return { outcome: 'recorded', entry: logEntry(undone) }
}

type Done = { outcome: Outcome; entry: Entry } | string

function recording(
  act: Act,
  householdId: string,
  record: LogRecord,
  deed: (tx: Questions, row: RecordRow) => Promise<Done>,
): Promise<Recorded> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const row = recordRow(record)
    if (!(await hasSubject(tx, householdId, row))) {
      return refuse(goneInWords(row))
    }
    const done = await deed(tx, row)
    if (typeof done === 'string') return refuse(done)
    return { ok: true, outcome: done.outcome, entry: logEntry(done.entry), revision: raised.revision }
  })
}

function goneInWords({ subject }: RecordRow): string {
  return `"${subject}" is not in this home any more. Look at the list again.`
}

function refuse(say: string): Recorded {
  return { ok: false, because: 'fault', faults: [{ path: '', say }] }
}

async function hasSubject(tx: Questions, householdId: string, row: RecordRow): Promise<boolean> {
  const where = { householdId, id: row.subject }
  if ((await tx.filter.count({ where })) > 0) return true
  if (row.kind !== 'service-done') return false
  return (await tx.system.count({ where })) > 0 || (await tx.device.count({ where })) > 0
}

function standingOnThatDay(
  tx: Questions,
  householdId: string,
  { on, kind, subject, task }: RecordRow,
): Promise<Entry | null> {
  return tx.entry.findFirst({
    where: { householdId, on, kind, subject, task, undoneAt: null, correctedBy: null },
    orderBy: { position: 'desc' },
  })
}

async function correct(
  tx: Questions,
  act: Act,
  householdId: string,
  entry: Entry,
  row: RecordRow,
  key: string | null,
): Promise<Entry> {
  await takeOut(tx, householdId, entry)
  // Marked first with its own id, so that it does not count as standing while the new one is put in.
  await tx.entry.update({ where: { id: entry.id }, data: { correctedBy: entry.id } })
  const corrected = await insertEntry(tx, act, householdId, row, { key, position: entry.position })
  await tx.entry.update({ where: { id: entry.id }, data: { correctedBy: corrected.id } })
  return corrected
}

async function insertEntry(
  tx: Questions,
  act: Act,
  householdId: string,
  row: RecordRow,
  { key, position }: { key: string | null; position?: number },
): Promise<Entry> {
  const last = await tx.entry.aggregate({ where: { householdId }, _max: { position: true } })
  const id = newId()
  const before = await putIn(tx, householdId, row)
  const place = { id, householdId, position: position ?? (last._max.position ?? -1) + 1 }
  await insertRows(tx, 'Entry', [
    { ...place, ...row, ...before, ...signature(act.viewer), at: act.at, door: act.door, key },
  ])
  return tx.entry.findUniqueOrThrow({ where: { id } })
}
