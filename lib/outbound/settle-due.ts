import { publicUrl } from '@/lib/access/public-url'
import { addDays } from '@/lib/core/day'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { instantAt, localDay } from '@/lib/core/zone'
import { later } from '@/lib/data/instant'
import type { KeptPlans } from '@/lib/data/kept-plans'
import type { Message } from '@/lib/data/outgoing'
import { listPushIds } from '@/lib/data/push-targets'
import { listDue, listTold, type Reminded, type ReminderLine, settle, toldKey } from '@/lib/data/remindings'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { digestMail, type Told } from './digest'
import { lastSlot, type Tidings, tidingsFor } from './reminders'

/** What reminders are made with. */
export interface Means {
  plans: KeptPlans<HouseholdPlan>
  /** Sentences for a house that stands empty in the cold. */
  freezeWatch: readonly string[]
  /** Whether mails, and notices in browsers, can go out at all. */
  canMail: boolean
  canPush: boolean
  at: string
}

const AT_ONCE = 200

/** Settles everybody whose moment has come: each is looked at once, by whichever process comes first. */
export async function settleDue(means: Means): Promise<{ people: number; messages: number }> {
  const counts = { people: 0, messages: 0 }
  for (;;) {
    const due = await listDue(means.at, AT_ONCE)
    for (const person of due) {
      const put = await settlePerson(person, means).catch((error) => letWait(person, means.at, error))
      counts.people++
      counts.messages += put
    }
    if (due.length < AT_ONCE) return counts
  }
}

const HOUR_SECONDS = 60 * 60

/** Whose reminder cannot be made is asked again in an hour, and nobody else waits for that. */
async function letWait(person: Reminded, at: string, error: unknown): Promise<number> {
  // Where the database is away nobody can be settled: the whole pass is tried again.
  if (error instanceof DatabaseUnavailable) throw error
  console.error(`The reminder of account ${person.accountId} could not be made:`, error)
  const next = { nextAt: later(at, HOUR_SECONDS), digestOn: person.digestOn }
  await settle(person, next, { at, messages: [], told: [] })
  return 0
}

async function settlePerson(person: Reminded, means: Means): Promise<number> {
  const { at } = means
  const on = localDay(at, person.timeZone)
  const nextAt = nextMoment(person, at)
  const channels = await channelsOf(person, means)
  // Nothing is settled that could not be told: the digest waits for a way out.
  if (channels.length === 0) {
    await settle(person, { nextAt, digestOn: person.digestOn }, { at, messages: [], told: [] })
    return 0
  }
  const slot = lastSlot(on, person.weekday)
  // A digest of a day still to come was sent by a clock that was wrong, and counts for nothing.
  const isDigest = slot > person.digestOn || person.digestOn > on
  const tidings = await tidingsFor(person, at, means.plans, means.freezeWatch)
  const { told, advice } = isDigest ? tidings : { told: await newlyOverdue(person, tidings), advice: [] }
  const kind = isDigest ? 'digest' : 'overdue'
  const messages = told.length + advice.length === 0 ? [] : channels.map((channel) => message(channel))
  const lines = told.map((one): ReminderLine => {
    const { task, subject, latest, state } = one.item
    return { householdId: one.stored.id, task, subject, latest, kind: state === 'overdue' ? 'overdue' : 'digest' }
  })
  const settled = await settle(
    person,
    { nextAt, digestOn: isDigest ? slot : person.digestOn },
    { at, messages, told: lines },
  )
  return settled ? messages.length : 0

  function message({ channel, to }: Channel): Message {
    const mail = digestMail(person, told, { kind, origin: publicUrl(), advice })
    // The day is part of the key: whatever goes wrong with a clock, one day has one message of a kind.
    return {
      key: `${kind} ${channel} ${person.accountId} ${to} ${on}`,
      channel,
      kind,
      accountId: person.accountId,
      to,
      at,
      ...mail,
    }
  }
}

interface Channel {
  channel: 'mail' | 'push'
  to: string
}

async function channelsOf(
  { mail, push, confirmed, email, accountId }: Reminded,
  { canMail, canPush }: Means,
): Promise<Channel[]> {
  const browsers = push && canPush ? await listPushIds(accountId) : []
  return [
    ...(mail && confirmed && canMail ? [{ channel: 'mail' as const, to: email }] : []),
    ...browsers.map((to) => ({ channel: 'push' as const, to })),
  ]
}

/** What became overdue since the person asked to be told, and was not told as overdue yet. */
async function newlyOverdue(person: Reminded, { told }: Tidings): Promise<Told[]> {
  const overdue = told.filter(({ item }) => item.state === 'overdue' && item.latest >= person.since)
  if (overdue.length === 0) return []
  const before = await listTold(person.accountId, [...new Set(overdue.map(({ stored }) => stored.id))])
  return overdue.filter(({ stored, item }) => !before.has(toldKey({ householdId: stored.id, ...item })))
}

/** The next time that a clock in the person's zone shows the chosen hour, after a moment. */
export function nextMoment({ hour, timeZone }: { hour: number; timeZone: string }, at: string): string {
  const today = localDay(at, timeZone)
  const moment = instantAt(today, hour, timeZone)
  return moment > at ? moment : instantAt(addDays(today, 1), hour, timeZone)
}
