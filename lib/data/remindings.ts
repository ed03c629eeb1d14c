import type { Day } from '@/lib/core/day'
import type { Task } from '@/lib/core/household'
import type { Act, Instant, Viewer } from '@/lib/core/viewer'
import { ask, type Questions, together } from './connection'
import { later } from './instant'
import { newId } from './new-id'
import { type Message, putOut } from './outgoing'
import { findRole } from './scope'

/** How one person wants to be reminded. */
export interface Reminding {
  mail: boolean
  push: boolean
  /** 0 is Sunday. */
  weekday: number
  hour: number
  timeZone: string
  since: Day
  digestOn: Day
  nextAt: Instant
}

/** Somebody whose moment has come, with everything that a reminder to them needs. */
export interface Reminded extends Reminding {
  accountId: string
  name: string
  email: string
  confirmed: boolean
}

/** An item of which a person is told. */
export interface ReminderLine {
  householdId: string
  task: Task
  subject: string
  latest: Day
  /** In which way it was told: as overdue it is told once. */
  kind: 'digest' | 'overdue' | 'away'
}

/** How the account that asks wants to be reminded, or null where it never said. */
export function findReminding(viewer: Viewer): Promise<Reminding | null> {
  if (viewer.kind !== 'account') return Promise.resolve(null)
  return ask((db) => db.reminding.findUnique({ where: { accountId: viewer.accountId }, omit: { accountId: true } }))
}

/** Keeps how the account that acts wants to be reminded; what it was told before stays told. */
export async function saveReminding(
  act: Act,
  wish: Omit<Reminding, 'since' | 'digestOn'> & { today: Day },
): Promise<boolean> {
  if (act.viewer.kind !== 'account') return false
  const { accountId } = act.viewer
  const { today, ...rest } = wish
  await ask((db) =>
    db.reminding.upsert({
      where: { accountId },
      create: { accountId, ...rest, since: today, digestOn: today },
      update: rest,
    }),
  )
  return true
}

// The next moment is never farther away than a day and what a change of the clocks adds.
const FARTHEST_SECONDS = 2 * 24 * 60 * 60

/**
 * People whose moment has come, the longest waiting first. One that lies farther ahead than any can was set by a clock
 * that was wrong, and has come too.
 */
export function listDue(at: Instant, limit: number): Promise<Reminded[]> {
  return ask(async (db) => {
    const rows = await db.reminding.findMany({
      where: {
        AND: [
          { OR: [{ nextAt: { lte: at } }, { nextAt: { gt: later(at, FARTHEST_SECONDS) } }] },
          { OR: [{ mail: true }, { push: true }] },
        ],
      },
      include: { account: { select: { name: true, email: true, emailVerified: true } } },
      orderBy: { nextAt: 'asc' },
      take: limit,
    })
    return rows.map(({ account: { name, email, emailVerified }, ...reminding }) => {
      return { ...reminding, name, email, confirmed: emailVerified }
    })
  })
}

/** What a person was told of as overdue already, by `toldKey`. */
export function listTold(accountId: string, householdIds: string[]): Promise<Set<string>> {
  return ask(async (db) => {
    const rows = await db.reminded.findMany({
      where: { accountId, householdId: { in: householdIds }, kind: 'overdue' },
    })
    return new Set(rows.map(toldKey))
  })
}

/** One reminder of one window of one item. */
export function toldKey(line: { householdId: string; task: string; subject: string; latest: Day }): string {
  const { householdId, task, subject, latest } = line
  return `${householdId} ${task} ${subject} ${latest}`
}

/**
 * Settles one person's moment: the next one is set and its messages are put out, or neither. Gives false where another
 * process settled it first: of two, one changes the row.
 */
export function settle(
  person: Pick<Reminded, 'accountId' | 'name' | 'nextAt'>,
  next: { nextAt: Instant; digestOn: Day },
  { at, messages, told }: { at: Instant; messages: Message[]; told: ReminderLine[] },
): Promise<boolean> {
  return together(async (tx) => {
    const { accountId, nextAt } = person
    const { count } = await tx.reminding.updateMany({ where: { accountId, nextAt }, data: next })
    if (count === 0) return false
    const ids = []
    for (const message of messages) ids.push(await putOut(tx, message))
    const [first] = messages
    if (first) await noteTold(tx, person, { at, told, channel: first.channel, messageId: ids[0] ?? null })
    return true
  })
}

async function noteTold(
  tx: Questions,
  { accountId, name }: Pick<Reminded, 'accountId' | 'name'>,
  { told, ...rest }: { at: Instant; told: ReminderLine[]; channel: string; messageId: string | null },
): Promise<void> {
  const rows = told.map((line) => ({ id: newId(), ...line, accountId, name, ...rest }))
  if (rows.length > 0) await tx.reminded.createMany({ data: rows })
}

/** A line of a household's log: who was reminded of what, and how. */
export interface RemindedLine extends Omit<ReminderLine, 'householdId'> {
  id: string
  name: string
  at: Instant
  channel: 'mail' | 'push'
}

/** Of what people were reminded in a household, the latest first, by messages that went out; empty for someone else's. */
export function listReminded(viewer: Viewer, householdId: string): Promise<RemindedLine[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    return db.$queryRaw<RemindedLine[]>`
      SELECT r."id", r."task", r."subject", r."latest", r."kind", r."name", r."at", r."channel" FROM "Reminded" r
      WHERE r."householdId" = ${householdId}
        AND NOT EXISTS (SELECT 1 FROM "Outgoing" o WHERE o."id" = r."messageId" AND o."sentAt" IS NULL)
      ORDER BY r."at" DESC, r."id"`
  })
}
