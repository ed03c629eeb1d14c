import type { Instant, Viewer } from '@/lib/core/viewer'
import { ask, Prisma, type Questions, together } from './connection'
import { later } from './instant'
import { newId } from './new-id'

export type MessageKind =
  | 'digest'
  | 'overdue'
  | 'recovery'
  | 'confirmation'
  | 'invitation'
  | 'address'
  | 'address-changed'

/** A message to go out. Two with one `key` are one. */
export interface Message {
  key: string
  channel: 'mail' | 'push'
  kind: MessageKind
  accountId: string | null
  to: string
  subject: string
  text: string
  html: string
  at: Instant
}

/** A message that one process has in hand until its lease ends. */
export interface Leased {
  id: string
  channel: 'mail' | 'push'
  kind: MessageKind
  to: string
  subject: string
  text: string
  html: string
  tries: number
  createdAt: Instant
}

/** Longer than any single try may take: the runner gives up on a server after a minute. */
const LEASE_SECONDS = 10 * 60
/** Longer than any pause between two tries. */
const PAUSE_SECONDS = 2 * 24 * 60 * 60

/** Messages that a newer one makes stale, unless a process has them in hand: a digest tells all that a note would. */
const REPLACED: Partial<Record<MessageKind, MessageKind[]>> = { digest: ['digest', 'overdue'], overdue: ['overdue'] }

/** Puts a message out in a transaction that is going on: it goes if that is saved, and only then. Gives its id. */
export async function putOut(tx: Questions, { at, ...message }: Message): Promise<string> {
  const replaced = REPLACED[message.kind]
  if (replaced && message.accountId !== null) {
    const { accountId, channel, to } = message
    const waiting = { sentAt: null, failedAt: null, sendingAt: null, interrupted: 0 }
    // Digests are weekly: after some weeks without a mail server there is one, not one for each week.
    const stale = await tx.outgoing.findMany({
      where: {
        ...{ accountId, channel, to, kind: { in: replaced }, ...waiting },
        OR: [{ leaseUntil: null }, { leaseUntil: { lt: at } }],
      },
      select: { id: true },
    })
    const ids = stale.map(({ id }) => id)
    if (ids.length > 0) {
      await tx.outgoing.deleteMany({ where: { id: { in: ids } } })
      // Nobody was reminded by a message that never went.
      await tx.reminded.deleteMany({ where: { messageId: { in: ids } } })
    }
  }
  const id = newId()
  await tx.$executeRaw`INSERT INTO "Outgoing" ("id", "key", "channel", "kind", "accountId", "to", "subject", "text", "html", "createdAt", "nextTryAt")
    VALUES (${id}, ${message.key}, ${message.channel}, ${message.kind}, ${message.accountId}, ${message.to},
      ${message.subject}, ${message.text}, ${message.html}, ${at}, ${at}) ON CONFLICT ("key") DO NOTHING`
  return id
}

/** Puts a message out on its own. */
export function putOutAlone(message: Message): Promise<string> {
  return together((tx) => putOut(tx, message))
}

/**
 * Takes messages in hand for one process. One whose process ended while it was handing it over is uncertain: it is tried
 * once more with the same Message-ID, and not a third time.
 */
export async function lease(
  by: string,
  at: Instant,
  { limit, channels }: { limit: number; channels: Message['channel'][] },
): Promise<Leased[]> {
  if (channels.length === 0) return []
  // What lies farther ahead than any lease or pause goes was written by a clock that was wrong: it is over.
  const isFree = Prisma.sql`("leaseUntil" < ${at} OR "leaseUntil" > ${later(at, 2 * LEASE_SECONDS)})`
  const isTime = Prisma.sql`("nextTryAt" <= ${at} OR "nextTryAt" > ${later(at, PAUSE_SECONDS)})`
  return together(async (tx) => {
    await tx.$executeRaw`UPDATE "Outgoing" SET "interrupted" = "interrupted" + 1, "sendingAt" = NULL
      WHERE "sendingAt" IS NOT NULL AND "sentAt" IS NULL AND "failedAt" IS NULL AND ${isFree}`
    await tx.$executeRaw`UPDATE "Outgoing" SET "failedAt" = ${at},
        "problem" = 'The server stopped twice while it sent this. It may have arrived, and is not sent a third time.'
      WHERE "interrupted" > 1 AND "sentAt" IS NULL AND "failedAt" IS NULL`
    return tx.$queryRaw<Leased[]>`UPDATE "Outgoing" SET "leaseBy" = ${by}, "leaseUntil" = ${later(at, LEASE_SECONDS)}
      WHERE "id" IN (SELECT "id" FROM "Outgoing"
        WHERE "sentAt" IS NULL AND "failedAt" IS NULL AND ${isTime}
          AND "channel" IN (${Prisma.join(channels)})
          AND ("leaseUntil" IS NULL OR ${isFree})
        ORDER BY "nextTryAt" LIMIT ${limit})
      RETURNING "id", "channel", "kind", "to", "subject", "text", "html", "tries", "createdAt"`
  })
}

/** Notes that a message is being handed over; false where the lease has gone to another process. */
export async function beginSending(id: string, by: string, at: Instant): Promise<boolean> {
  const count = await ask(
    (db) => db.$executeRaw`UPDATE "Outgoing" SET "sendingAt" = ${at}, "leaseUntil" = ${later(at, LEASE_SECONDS)}
      WHERE "id" = ${id} AND "leaseBy" = ${by} AND "sentAt" IS NULL AND "failedAt" IS NULL`,
  )
  return count === 1
}

export type Result =
  | { kind: 'sent' }
  | { kind: 'later'; nextTryAt: Instant; problem: string }
  | { kind: 'failed'; problem: string }

/** Notes what became of a message, and lets it go. What was sent is no longer kept: its links open things. */
export async function endSending(id: string, by: string, at: Instant, result: Result): Promise<void> {
  const free = Prisma.sql`"sendingAt" = NULL, "leaseBy" = NULL, "leaseUntil" = NULL, "tries" = "tries" + 1`
  const bare = Prisma.sql`"text" = '', "html" = ''`
  const set =
    result.kind === 'sent'
      ? Prisma.sql`"sentAt" = ${at}, "problem" = NULL, ${bare}`
      : result.kind === 'failed'
        ? Prisma.sql`"failedAt" = ${at}, "problem" = ${result.problem}, ${bare}`
        : Prisma.sql`"nextTryAt" = ${result.nextTryAt}, "problem" = ${result.problem}`
  await ask((db) => db.$executeRaw`UPDATE "Outgoing" SET ${free}, ${set} WHERE "id" = ${id} AND "leaseBy" = ${by}`)
}

/** Lets go of what was not begun. */
export async function release(by: string): Promise<void> {
  await ask(
    (db) => db.$executeRaw`UPDATE "Outgoing" SET "leaseBy" = NULL, "leaseUntil" = NULL
      WHERE "leaseBy" = ${by} AND "sendingAt" IS NULL`,
  )
}

/** Forgets messages that were settled before a moment. */
export async function forgetSettled(before: Instant): Promise<void> {
  await ask((db) =>
    db.outgoing.deleteMany({ where: { OR: [{ sentAt: { lt: before } }, { failedAt: { lt: before } }] } }),
  )
}

/** What a person may know of a message to them. */
export interface Sent {
  id: string
  kind: MessageKind
  createdAt: Instant
  sentAt: Instant | null
  failedAt: Instant | null
  problem: string | null
}

/** The latest messages to the account that asks. */
export function listSent(viewer: Viewer, limit = 5): Promise<Sent[]> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return []
    const rows = await db.outgoing.findMany({
      where: { accountId: viewer.accountId, kind: { in: ['digest', 'overdue', 'confirmation'] } },
      select: { id: true, kind: true, createdAt: true, sentAt: true, failedAt: true, problem: true },
      orderBy: { createdAt: 'desc' },
      take: limit,
    })
    return rows.map((row) => ({ ...row, kind: row.kind as MessageKind }))
  })
}
