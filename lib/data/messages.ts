import { type Act, type Door, type Instant, may, type Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { newId } from './new-id'
import { findRole, type Refusal, raise, signature } from './scope'

/** What somebody who lives there wrote to whoever looks after the home. */
export interface Message {
  id: string
  text: string
  byName: string
  at: Instant
  door: Door
  readAt: Instant | null
}

// A link may be passed on: nobody can fill the store with it.
const MOST_A_DAY = 30
const DAY_MS = 24 * 60 * 60 * 1000

/** Keeps a message for those who look after the home. `too-many`: this home had as many today as anybody reads. */
export function addMessage(
  act: Act,
  householdId: string,
  text: string,
): Promise<{ ok: true; id: string } | Refusal | { ok: false; because: 'too-many' }> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
    if (!raised.ok) return raised
    const since = new Date(Date.parse(act.at) - DAY_MS).toISOString()
    if ((await tx.message.count({ where: { householdId, at: { gt: since } } })) >= MOST_A_DAY) {
      return { ok: false, because: 'too-many' }
    }
    const id = newId()
    const linkId = act.viewer.kind === 'link' ? act.viewer.linkId : null
    await tx.message.create({
      data: { id, householdId, text, ...signature(act.viewer), linkId, at: act.at, door: act.door },
    })
    return { ok: true, id }
  })
}

/**
 * The messages of a household, the latest first, for who looks after it: a technician sees none. By a renter's link:
 * those written by that link.
 */
export function listMessages(viewer: Viewer, householdId: string): Promise<Message[]> {
  return ask(async (db) => {
    const role = await findRole(db, viewer, householdId)
    if (role === null || !(role === 'renter' || may(role, 'manage'))) return []
    const own = viewer.kind === 'link' ? { linkId: viewer.linkId } : {}
    const rows = await db.message.findMany({ where: { householdId, ...own }, orderBy: { at: 'desc' }, take: 200 })
    return rows.map(({ id, text, byName, at, door, readAt }) => ({ id, text, byName, at, door: door as Door, readAt }))
  })
}

/** Says that a message was read; who wrote it sees that. */
export function markMessageRead(act: Act, householdId: string, messageId: string): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'manage', evenClosed: true })
    if (!raised.ok) return raised
    await tx.message.updateMany({ where: { id: messageId, householdId, readAt: null }, data: { readAt: act.at } })
    return { ok: true }
  })
}
