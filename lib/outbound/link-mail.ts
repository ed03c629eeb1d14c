import { publicUrl } from '@/lib/access/public-url'
import { hashToken, newToken } from '@/lib/access/tokens'
import { now } from '@/lib/clock'
import type { Fault } from '@/lib/core/fault'
import { instant, later } from '@/lib/data/instant'
import { type NewMailLink, putOutLink } from '@/lib/data/mail-links'
import { type Block, mailHtml, mailText } from './mail-html'

export type Mailed = { ok: true } | { ok: false; faults: Fault[] }

/** To whom a link goes, and the page that it opens. */
export interface LinkMail {
  kind: NewMailLink['kind']
  path: string
  accountId: string
  email: string
}

/** Puts out a mail with a new link that works once; earlier ones of its kind for the account work no more. */
export async function sendLink(to: LinkMail, seconds: number, blocks: (href: string) => Block[]): Promise<void> {
  const { kind, path, accountId, email } = to
  const token = newToken()
  const tokenHash = hashToken(token)
  const at = instant(now())
  await putOutLink(
    { tokenHash, kind, accountId, email, expiresAt: later(at, seconds) },
    {
      ...{ key: `${kind} ${tokenHash}`, channel: 'mail', kind, accountId, to: email, at },
      ...written(blocks(`${publicUrl()}${path}/${token}`)),
    },
  )
}

/** A mail out of its blocks; the heading is its subject. */
export function written(blocks: Block[]): { subject: string; text: string; html: string } {
  const subject = blocks[0]?.kind === 'heading' ? blocks[0].say : 'Plenum'
  return { subject, text: mailText(blocks), html: mailHtml(subject, blocks) }
}

/** An answer with one fault. */
export function refused(path: string, say: string): Mailed {
  return { ok: false, faults: [{ path, say }] }
}
