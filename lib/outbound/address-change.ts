import { checkPassword } from '@/lib/access/change-password'
import { mayTry, TOO_MANY } from '@/lib/access/limits'
import { plainEmail } from '@/lib/access/sign-in'
import { hashToken } from '@/lib/access/tokens'
import { now } from '@/lib/clock'
import { findAccountByEmail } from '@/lib/data/accounts'
import { instant } from '@/lib/data/instant'
import { findAddress, isOpen, takeNewAddress } from '@/lib/data/mail-links'
import { type Mailed, refused, sendLink, written } from './link-mail'
import { mailSettings } from './mailer'

const THREE_DAYS_SECONDS = 3 * 24 * 60 * 60

/**
 * Whether an account may ask for another address now. The answer never depends on whether the new one is somebody's
 * already: what follows from that happens after the page was answered (`sendNewAddress`).
 */
export async function askNewAddress(
  headers: Headers,
  accountId: string,
  { email, password }: { email: string; password: string },
): Promise<Mailed> {
  if (!mailSettings().ok) return refused('', 'This installation sends no mail yet.')
  const wrong = await checkPassword(headers, accountId, password)
  if (wrong) return refused('address-password', wrong)
  if (plainEmail(email) === (await findAddress(accountId))?.email) return refused('email', 'This is your e-mail now.')
  return (await mayTry('address', headers, accountId)) ? { ok: true } : refused('', TOO_MANY)
}

/** Puts out the mail that proves the new address, unless somebody has an account with it. */
export async function sendNewAddress(accountId: string, email: string): Promise<void> {
  const plain = plainEmail(email)
  const before = await findAddress(accountId)
  if (!before || (await findAccountByEmail(plain))) return
  const to = { kind: 'address', path: '/address', accountId, email: plain } as const
  await sendLink(to, THREE_DAYS_SECONDS, (href) => [
    { kind: 'heading', say: 'Your new e-mail at Plenum' },
    {
      kind: 'text',
      say: 'Somebody with an account at Plenum wants to sign in with this address from now on, and get their mails here. If that is you, follow this link within three days; it works once.',
    },
    { kind: 'buttons', links: [{ say: 'Yes, use this address', href }] },
    { kind: 'small', say: 'If it is not you, do nothing, and nothing changes.' },
  ])
}

/** Whether a link to a new address still works. */
export function isNewAddressOpen(token: string): Promise<boolean> {
  return isOpen(hashToken(token), 'address', instant(now()))
}

/** Changes an account's address by a link, once, and tells the earlier address of it. */
export async function changeAddressBy(headers: Headers, token: string): Promise<Mailed> {
  if (!(await mayTry('address-link', headers, hashToken(token)))) return refused('', TOO_MANY)
  const at = instant(now())
  const done = await takeNewAddress(hashToken(token), at, ({ accountId, before, after }) => ({
    key: `address-changed ${hashToken(token)}`,
    ...{ channel: 'mail', kind: 'address-changed', accountId, to: before, at },
    ...written([
      { kind: 'heading', say: 'Your e-mail at Plenum was changed' },
      {
        kind: 'text',
        say: `Your account at Plenum signs in with ${after} from now on, and its mails go there. This address is no longer used.`,
      },
      {
        kind: 'small',
        say: 'If you did not do this, somebody else knows your password. Tell whoever hosts Plenum at once: they can set a new one, which signs everybody out.',
      },
    ]),
  }))
  return done ? { ok: true } : refused('', 'This link was used already or is over. Ask for a new one under Account.')
}
