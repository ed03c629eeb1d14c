import { LIMIT_MINUTES, mayTry, TOO_MANY } from '@/lib/access/limits'
import { hashPassword, passwordFault } from '@/lib/access/passwords'
import { plainEmail } from '@/lib/access/sign-in'
import { hashToken } from '@/lib/access/tokens'
import { now } from '@/lib/clock'
import type { Act } from '@/lib/core/viewer'
import { findAccountByEmail } from '@/lib/data/accounts'
import { instant } from '@/lib/data/instant'
import { findAddress, isOpen, takeConfirmation, takeRecovery } from '@/lib/data/mail-links'
import { putOutAlone } from '@/lib/data/outgoing'
import { type Mailed, refused, sendLink, written } from './link-mail'
import { mailSettings } from './mailer'

const HOUR_SECONDS = 60 * 60
const RECOVERY_SECONDS = HOUR_SECONDS
const CONFIRMATION_SECONDS = 3 * 24 * HOUR_SECONDS

/**
 * Whether a link to a new password may be asked for now. The answer never depends on whether there is such an account:
 * what follows from it happens after the page was answered (`sendRecovery`).
 */
export async function askRecovery(headers: Headers, email: string): Promise<Mailed> {
  if (!mailSettings().ok)
    return refused('', 'This installation sends no mail. Ask whoever hosts it to set a new password for you.')
  return (await mayTry('recovery', headers, plainEmail(email))) ? { ok: true } : refused('', TOO_MANY)
}

/** Puts out the mail with a link to a new password, if there is such an account: for one use, within an hour. */
export async function sendRecovery(email: string): Promise<void> {
  const plain = plainEmail(email)
  const account = await findAccountByEmail(plain)
  if (!account) return
  const to = { kind: 'recovery', path: '/forgot', accountId: account.id, email: plain } as const
  await sendLink(to, RECOVERY_SECONDS, (href) => [
    { kind: 'heading', say: 'Choose a new password' },
    {
      kind: 'text',
      say: 'Somebody asked for a new password for your account at Plenum. If that was you, follow this link within an hour; it works once.',
    },
    { kind: 'buttons', links: [{ say: 'Choose a new password', href }] },
    { kind: 'small', say: 'If it was not you, do nothing: your password stays as it is.' },
  ])
}

/** Whether a recovery link still works. */
export function isRecoveryOpen(token: string): Promise<boolean> {
  return isOpen(hashToken(token), 'recovery', instant(now()))
}

/** Sets a new password by a link, once, and ends all sessions. */
export async function recover(headers: Headers, token: string, password: string): Promise<Mailed> {
  const fault = passwordFault(password)
  if (fault) return refused('new-password', fault)
  if (!(await mayTry('recovery-link', headers, hashToken(token)))) return refused('', TOO_MANY)
  const accountId = await takeRecovery(hashToken(token), await hashPassword(password), instant(now()))
  return accountId ? { ok: true } : refused('', 'This link was used already or is over. Ask for a new one.')
}

/** Sends the account that acts a link that proves its address. */
export async function sendConfirmation(headers: Headers, act: Act): Promise<Mailed> {
  const accountId = act.viewer.kind === 'account' ? act.viewer.accountId : ''
  const address = await findAddress(accountId)
  if (!address) return refused('', 'Sign in first.')
  if (address.emailVerified) return { ok: true }
  if (!mailSettings().ok) return refused('', 'This installation sends no mail yet.')
  if (!(await mayTry('confirmation', headers, accountId)))
    return refused('', `A few mails are on their way already. Wait ${LIMIT_MINUTES} minutes, then try again.`)
  await putOutConfirmation(accountId, address.email)
  return { ok: true }
}

/** Sends an account that was just made a link that proves its address, where mail goes out from here. */
export async function sendFirstConfirmation(accountId: string): Promise<void> {
  const address = mailSettings().ok ? await findAddress(accountId) : null
  if (address && !address.emailVerified) await putOutConfirmation(accountId, address.email)
}

function putOutConfirmation(accountId: string, email: string): Promise<void> {
  const to = { kind: 'confirmation', path: '/confirm', accountId, email } as const
  return sendLink(to, CONFIRMATION_SECONDS, (href) => [
    { kind: 'heading', say: 'Is this your address?' },
    {
      kind: 'text',
      say: 'Plenum sends reminders about a home’s heating and cooling to this address once you say that it is yours. The link works once, within three days.',
    },
    { kind: 'buttons', links: [{ say: 'Yes, send my reminders here', href }] },
    { kind: 'small', say: 'If you don’t know what this is about, do nothing, and nothing more is sent.' },
  ])
}

/** Whether a confirmation link still works. */
export function isConfirmationOpen(token: string): Promise<boolean> {
  return isOpen(hashToken(token), 'confirmation', instant(now()))
}

/** Proves an address by a link, once. */
export async function confirm(headers: Headers, token: string): Promise<Mailed> {
  if (!(await mayTry('confirmation-link', headers, hashToken(token)))) return refused('', TOO_MANY)
  const done = await takeConfirmation(hashToken(token), instant(now()))
  return done ? { ok: true } : refused('', 'This link was used already or is over. Ask for a new one under Reminders.')
}

/** Sends somebody the link of an invitation that was just made; `says` completes "Ann invites you …". */
export async function mailInvitation(
  act: Act,
  { to, link, says, invitationId }: { to: string; link: string; says: string; invitationId: string },
): Promise<void> {
  const from = act.viewer.kind === 'account' ? act.viewer.name : 'Whoever hosts this'
  const email = plainEmail(to)
  await putOutAlone({
    key: `invitation ${invitationId} ${email}`,
    ...{ channel: 'mail', kind: 'invitation', accountId: null, to: email, at: act.at },
    ...written([
      { kind: 'heading', say: 'An invitation' },
      { kind: 'text', say: `${from} invites you ${says}. The link works once, within a week.` },
      { kind: 'buttons', links: [{ say: 'See the invitation', href: link }] },
      { kind: 'small', say: 'If you don’t know who this is, do nothing.' },
    ]),
  })
}
