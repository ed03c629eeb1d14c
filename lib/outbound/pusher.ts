import type { Agent } from 'node:https'
import webPush from 'web-push'
import { publicUrl } from '@/lib/access/public-url'
import type { Leased } from '@/lib/data/outgoing'
import { dropPushTarget, findPushTarget } from '@/lib/data/push-targets'
import type { Delivery } from './mailer'
import { pushKeys } from './push-keys'

const DAY_SECONDS = 24 * 60 * 60
const TIMEOUT_MS = 20_000

/** Hands a notice to the service that reaches a browser (RFC 8030). What it says is encrypted for that browser only. */
export async function push(message: Leased, { agent }: { agent?: Agent } = {}): Promise<Delivery> {
  const target = await findPushTarget(message.to)
  if (!target) return { kind: 'failed', problem: 'This browser asked for no more notices.' }
  const { endpoint, p256dh, auth } = target
  try {
    // Web Push carries at most 4096 bytes; the notice leads to the page that says everything.
    const notice = JSON.stringify({ title: message.subject.slice(0, 300), path: '/homes', tag: message.id })
    await webPush.sendNotification({ endpoint, keys: { p256dh, auth } }, notice, {
      vapidDetails: { subject: publicUrl(), ...pushKeys() },
      ...{ TTL: DAY_SECONDS, timeout: TIMEOUT_MS, topic: message.id, agent },
    })
    return { kind: 'sent' }
  } catch (error) {
    if (!(error instanceof webPush.WebPushError)) return { kind: 'later', problem: String(error).slice(0, 300) }
    const problem = `The notice service answered ${error.statusCode}.`
    // RFC 8030, 7.3: the subscription is over.
    if (error.statusCode === 404 || error.statusCode === 410) {
      await dropPushTarget(message.to)
      return { kind: 'failed', problem: 'This browser asked for no more notices.' }
    }
    return { kind: error.statusCode === 429 || error.statusCode >= 500 ? 'later' : 'failed', problem }
  }
}
