import type { Day } from '@/lib/core/day'
import type { Act, Door, Instant, Viewer } from '@/lib/core/viewer'
import type { Brief } from '@/lib/guide/brief'
import type { Severity } from '@/lib/guide/types'
import type * as Rows from '@/prisma/generated/sqlite/client'
import { ask, together } from './connection'
import { newId } from './new-id'
import { findRole, type Refusal, raise, signature } from './scope'

export interface NewBrief {
  on: Day
  page: Brief
  severity: Severity | null
  /** The id of the outcome at which the walk ended. */
  outcome: string | null
  roomF: number | null
  /** The walk it was made of: made twice, it is one page. */
  key: string
}

export interface StoredBrief {
  id: string
  on: Day
  page: Brief
  severity: Severity | null
  roomF: number | null
  byName: string
  at: Instant
  door: Door
  /** Until when a link shows it, or null. */
  sharedUntil: Instant | null
}

/** Writes the page for the technician into the household's log. */
export function saveBrief(act: Act, householdId: string, brief: NewBrief): Promise<{ ok: true; id: string } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record', evenClosed: true })
    if (!raised.ok) return raised
    const { key, page, ...rest } = brief
    const known = await tx.brief.findUnique({ where: { householdId_key: { householdId, key } } })
    if (known) return { ok: true, id: known.id }
    const row = { id: newId(), householdId, key, page: JSON.stringify(page), ...rest }
    const { id } = await tx.brief.create({ data: { ...row, at: act.at, door: act.door, ...signature(act.viewer) } })
    return { ok: true, id }
  })
}

/** One page, or null where there is none or it is someone else's. */
export function findBrief(viewer: Viewer, householdId: string, id: string): Promise<StoredBrief | null> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return null
    const row = await db.brief.findFirst({ where: { householdId, id } })
    return row && briefValue(row)
  })
}

/** All pages of a household, the latest first; empty for someone else's. */
export function listBriefs(viewer: Viewer, householdId: string): Promise<StoredBrief[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    return (await db.brief.findMany({ where: { householdId }, orderBy: { at: 'desc' } })).map(briefValue)
  })
}

/** Lets a link show the page until a moment; a new link ends the one before, `null` ends it without another. */
export function shareBrief(
  act: Act,
  householdId: string,
  id: string,
  link: { tokenHash: string; expiresAt: Instant } | null,
): Promise<{ ok: true } | Refusal> {
  return together(async (tx) => {
    const raised = await raise(tx, act.viewer, householdId, { deed: 'record', evenClosed: true })
    if (!raised.ok) return raised
    const data = link ?? { tokenHash: null, expiresAt: null }
    const { count } = await tx.brief.updateMany({ where: { householdId, id }, data })
    return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
  })
}

/** The page that a link shows, or null: unknown, ended and expired links look alike. */
export function findSharedBrief(tokenHash: string, at: Instant): Promise<StoredBrief | null> {
  return ask(async (db) => {
    const row = await db.brief.findFirst({ where: { tokenHash, expiresAt: { gt: at } } })
    return row && briefValue(row)
  })
}

function briefValue(row: Rows.Brief): StoredBrief {
  return {
    id: row.id,
    on: row.on,
    page: JSON.parse(row.page),
    severity: row.severity as Severity | null,
    roomF: row.roomF,
    byName: row.byName,
    at: row.at,
    door: row.door as Door,
    sharedUntil: row.expiresAt,
  }
}
