import type { Instant } from '@/lib/core/viewer'
import { ask, type Questions, together } from './connection'
import { type Message, putOut } from './outgoing'
import { holdAccount } from './scope'

/** A link of a mail that works once. */
export interface NewMailLink {
  tokenHash: string
  kind: 'recovery' | 'confirmation' | 'address'
  accountId: string
  email: string
  expiresAt: Instant
}

/** Keeps a link and puts out the mail that it stands in; earlier ones of its kind for the account work no more. */
export function putOutLink(link: NewMailLink, message: Message): Promise<void> {
  return together(async (tx) => {
    await holdAccount(tx, link.accountId)
    await tx.mailLink.deleteMany({ where: { accountId: link.accountId, kind: link.kind } })
    await tx.mailLink.create({ data: link })
    await putOut(tx, message)
  })
}

/** Whether a link still opens what it is for. */
export function isOpen(tokenHash: string, kind: NewMailLink['kind'], at: Instant): Promise<boolean> {
  return ask(async (db) => (await db.mailLink.count({ where: open(tokenHash, kind, at) })) > 0)
}

/** Uses a recovery link: another password, all sessions ended, the address proven. Gives the account, or null. */
export function takeRecovery(tokenHash: string, passwordHash: string, at: Instant): Promise<string | null> {
  return together(async (tx) => {
    const accountId = await take(tx, tokenHash, 'recovery', at)
    if (accountId === null) return null
    await tx.account.updateMany({
      where: { userId: accountId, providerId: 'credential' },
      data: { password: passwordHash },
    })
    await tx.session.deleteMany({ where: { userId: accountId } })
    return accountId
  })
}

/** Uses a confirmation link: the account's address counts as proven, if it still is the one the link was sent to. */
export function takeConfirmation(tokenHash: string, at: Instant): Promise<boolean> {
  return together(async (tx) => (await take(tx, tokenHash, 'confirmation', at)) !== null)
}

/**
 * Uses a link that was sent to a new address: from now on the account has that one, proven, and `notice` goes to the
 * earlier one. False where the link is over, or the address has become another account's meanwhile.
 */
export function takeNewAddress(
  tokenHash: string,
  at: Instant,
  notice: (to: { accountId: string; before: string; after: string }) => Message,
): Promise<boolean> {
  return together(async (tx) => {
    const { count } = await tx.mailLink.updateMany({ where: open(tokenHash, 'address', at), data: { usedAt: at } })
    if (count === 0) return false
    const { accountId, email: after } = await tx.mailLink.findUniqueOrThrow({ where: { tokenHash } })
    const before = accountId && (await tx.user.findUnique({ where: { id: accountId } }))?.email
    if (!accountId || !before || !after || (await tx.user.count({ where: { email: after } })) > 0) return false
    await tx.user.update({ where: { id: accountId }, data: { email: after, emailVerified: true } })
    // What was on its way to the earlier address opens nothing any more, or goes to the new one.
    await tx.mailLink.deleteMany({ where: { accountId, kind: { not: 'act' }, usedAt: null } })
    const waiting = { accountId, to: before, channel: 'mail', sentAt: null, failedAt: null, sendingAt: null }
    await tx.outgoing.updateMany({ where: { ...waiting, kind: { in: ['digest', 'overdue'] } }, data: { to: after } })
    await putOut(tx, notice({ accountId, before, after }))
    return true
  })
}

async function take(tx: Questions, tokenHash: string, kind: NewMailLink['kind'], at: Instant): Promise<string | null> {
  const { count } = await tx.mailLink.updateMany({ where: open(tokenHash, kind, at), data: { usedAt: at } })
  if (count === 0) return null
  const { accountId, email } = await tx.mailLink.findUniqueOrThrow({ where: { tokenHash } })
  const proven = await tx.user.updateMany({
    where: { id: accountId ?? '', email: email ?? '' },
    data: { emailVerified: true },
  })
  return proven.count === 1 ? accountId : null
}

function open(tokenHash: string, kind: NewMailLink['kind'], at: Instant) {
  return { tokenHash, kind, usedAt: null, expiresAt: { gt: at } }
}

/** Whether a signed link was used already. */
export function isUsed(tokenHash: string): Promise<boolean> {
  return ask(async (db) => (await db.mailLink.count({ where: { tokenHash } })) > 0)
}

/** Notes that a signed link was used; it is forgotten once it would be over anyway. */
export async function markUsed(tokenHash: string, at: Instant, expiresAt: Instant): Promise<void> {
  await ask(
    (db) => db.$executeRaw`INSERT INTO "MailLink" ("tokenHash", "kind", "expiresAt", "usedAt")
      VALUES (${tokenHash}, 'act', ${expiresAt}, ${at}) ON CONFLICT ("tokenHash") DO NOTHING`,
  )
}

/** Forgets links that are over. */
export async function forgetOver(at: Instant): Promise<void> {
  await ask((db) => db.mailLink.deleteMany({ where: { expiresAt: { lt: at } } }))
}

/** The name, address and state of an account, or null. For lib/access and lib/outbound, which show it to its owner. */
export function findAddress(
  accountId: string,
): Promise<{ name: string; email: string; emailVerified: boolean } | null> {
  return ask((db) =>
    db.user.findUnique({ where: { id: accountId }, select: { name: true, email: true, emailVerified: true } }),
  )
}

/** Counts an address as proven without a link: whoever hosts this typed it. */
export async function confirmAddress(accountId: string): Promise<void> {
  await ask((db) => db.user.updateMany({ where: { id: accountId }, data: { emailVerified: true } }))
}
