import { mailer, mailSettings } from '@/lib/outbound/mailer'
import type { Ways } from '@/lib/outbound/outbox'

/** A way to the mail server that the environment names. */
export function openMailer(): { ways: Ways; close: () => void } {
  const settings = mailSettings()
  if (!settings.ok) throw new Error(settings.missing.join(' '))
  const post = mailer(settings)
  return { ways: { mail: (message) => post.send(message), push: null }, close: () => post.close() }
}
