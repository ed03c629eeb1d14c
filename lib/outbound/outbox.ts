import { newToken } from '@/lib/access/tokens'
import { later } from '@/lib/data/instant'
import { forgetOver } from '@/lib/data/mail-links'
import { beginSending, endSending, forgetSettled, type Leased, lease, type Result, release } from '@/lib/data/outgoing'
import type { Delivery } from './mailer'

/** A way out for each kind of message; one that is not there leaves its messages waiting. */
export interface Ways {
  mail: ((message: Leased) => Promise<Delivery>) | null
  push: ((message: Leased) => Promise<Delivery>) | null
}

const AT_ONCE = 50
const SIDE_BY_SIDE = 4
const MINUTE = 60
// Four days; a mail server that is down longer is noticed.
const BACK_OFF_SECONDS = [5, 15, 60, 240, 720, 1440, 1440, 1440].map((minutes) => minutes * MINUTE)
const KEEP_SECONDS = 400 * 24 * 60 * 60

export interface Passed {
  sent: number
  later: number
  failed: number
}

/**
 * Sends what waits. Each message is leased by one process, noted before it is handed over and noted after; several
 * processes may do this side by side. `now` is asked anew for each step. Stops early where the server does not answer.
 */
export async function passOutbox(ways: Ways, now: () => string): Promise<Passed> {
  const by = newToken()
  const passed: Passed = { sent: 0, later: 0, failed: 0 }
  const channels = (['mail', 'push'] as const).filter((channel) => ways[channel] !== null)
  try {
    for (;;) {
      const messages = await lease(by, now(), { limit: AT_ONCE, channels })
      if (messages.length === 0) break
      const isDown = await sendAll(messages, ways, { by, now, passed })
      if (isDown) break
    }
  } finally {
    await release(by)
  }
  await forgetSettled(later(now(), -KEEP_SECONDS))
  await forgetOver(now())
  return passed
}

interface Pass {
  by: string
  now: () => string
  passed: Passed
}

async function sendAll(messages: Leased[], ways: Ways, pass: Pass): Promise<boolean> {
  const queue = [...messages]
  let isDown = false
  async function work(): Promise<void> {
    for (let message = queue.shift(); message && !isDown; message = queue.shift()) {
      isDown ||= (await sendOne(message, ways, pass)) === 'down'
    }
  }
  await Promise.all(Array.from({ length: SIDE_BY_SIDE }, work))
  return isDown
}

async function sendOne(message: Leased, ways: Ways, { by, now, passed }: Pass): Promise<Delivery['kind']> {
  const way = ways[message.channel]
  if (!way || !(await beginSending(message.id, by, now()))) return 'later'
  const delivery = await way(message)
  const result = resultOf(message, delivery, now())
  await endSending(message.id, by, now(), result)
  passed[result.kind]++
  return delivery.kind
}

function resultOf(message: Leased, delivery: Delivery, at: string): Result {
  if (delivery.kind === 'sent') return { kind: 'sent' }
  if (delivery.kind === 'failed') return { kind: 'failed', problem: delivery.problem }
  return wait(message, at, delivery.problem)
}

function wait({ tries }: Leased, at: string, problem: string): Result {
  const seconds = BACK_OFF_SECONDS[tries]
  return seconds === undefined
    ? { kind: 'failed', problem: `${problem} Given up after ${tries + 1} tries.` }
    : { kind: 'later', nextTryAt: later(at, seconds), problem }
}
