import { database } from '@/lib/data/connection'
import { later } from '@/lib/data/instant'
import { putOutAlone } from '@/lib/data/outgoing'
import { passOutbox } from '@/lib/outbound/outbox'
import { killAfter, startChild } from '../child'
import { AT } from '../moment'
import { openMailer } from '../open-mailer'
import type { PostOffice } from '../post-office'
import type { Kills, Survived } from './kill'

const MAILS_A_KILL = 30

/**
 * Kills a process in the middle of sending, again and again over the same outbox; then one sends the rest. `lost` never
 * came and nobody was told so; `torn` came more than twice, or again with another Message-ID; `twice` came once more.
 */
export async function killMails(office: PostOffice, { times, pause }: Kills): Promise<Survived & { twice: number }> {
  let at = AT
  for (let kill = 0; kill < times; kill++) {
    for (let i = 0; i < MAILS_A_KILL; i++) await putOut(`${kill}-${i}`, at)
    const child = startChild('outbox', [], { AT: at })
    await killAfter(child, pause(kill))
    // What it had in hand is free again after ten minutes.
    at = later(at, 11 * 60)
  }
  for (let i = 0; i < 3; i++, at = later(at, 25 * 60 * 60)) {
    const { ways, close } = openMailer()
    await passOutbox(ways, () => at)
    close()
  }
  const rows = await database().outgoing.findMany()
  const came = new Map<string, string[]>()
  for (const { subject, messageId } of office.mails)
    came.set(String(subject), [...(came.get(String(subject)) ?? []), String(messageId)])
  const told = new Set(rows.flatMap(({ key, problem }) => (problem?.includes('stopped twice') ? [key] : [])))
  const all = [...came]
  return {
    confirmed: rows.filter(({ sentAt }) => sentAt !== null).length,
    lost: rows.filter(({ key }) => !came.has(key) && !told.has(key)).map(({ key }) => key),
    torn: all.filter(([, ids]) => ids.length > 2 || new Set(ids).size > 1).map(([key]) => key),
    twice: all.filter(([, ids]) => ids.length === 2).length,
  }
}

function putOut(key: string, at: string): Promise<string> {
  const words = { subject: key, text: `Text of ${key}\n`, html: `<p>Text of ${key}</p>` }
  return putOutAlone({ key, channel: 'mail', kind: 'invitation', accountId: null, to: 'ann@example.org', at, ...words })
}
