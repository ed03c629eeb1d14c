import { hashToken } from '@/lib/access/tokens'
import { now, today } from '@/lib/clock'
import { addDays } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { LogRecord } from '@/lib/core/household'
import { may, type Viewer } from '@/lib/core/viewer'
import { findHousehold, type StoredHousehold } from '@/lib/data/households'
import { instant, later } from '@/lib/data/instant'
import { findAddress, isUsed, markUsed } from '@/lib/data/mail-links'
import { putOff } from '@/lib/data/put-offs'
import { addRecord } from '@/lib/data/records'
import { type ActLink, LINK_DAYS, readLink } from './act-link'

const LATER_DAYS = 14

/** What a link of a mail would do, for its page to show before anything is done. */
export interface Asked {
  link: ActLink
  viewer: Extract<Viewer, { kind: 'account' }>
  stored: StoredHousehold
  /** Today in the home's zone: the day that would be recorded. */
  on: string
  isUsed: boolean
}

/** What a link stands for, or null: not ours, over, or its person sees the home no more. Changes nothing. */
export async function findAsked(token: string): Promise<Asked | null> {
  const link = readLink(token, today('UTC'))
  if (!link) return null
  const account = await findAddress(link.accountId)
  if (!account) return null
  const viewer = { kind: 'account', accountId: link.accountId, name: account.name, administrator: false } as const
  const stored = await findHousehold(viewer, link.householdId)
  if (!stored || stored.state === 'closed' || !may(stored.role, 'record')) return null
  return { link, viewer, stored, on: today(stored.timeZone), isUsed: await isUsed(hashToken(token)) }
}

export type Acted = { ok: true; householdId: string } | { ok: false; faults: Fault[] }

/** Does what a link stands for, as the person whose mail it stood in: once. */
export async function actOn(token: string): Promise<Acted> {
  const asked = await findAsked(token)
  if (!asked) return refused('This link is over, or leads to a home that is no longer yours. Open Plenum instead.')
  if (asked.isUsed) return refused('This button was used already. The log of the home shows what it did.')
  const { link, viewer, stored, on } = asked
  const at = instant(now())
  const act = { viewer, at, door: 'mail' } as const
  const done =
    link.button === 'later'
      ? await putOff(act, stored.id, { ...link, until: addDays(on, LATER_DAYS), today: on })
      : await addRecord(act, stored.id, recordOf(link, on), { key: `mail ${hashToken(token)}` })
  if (!done.ok) {
    if (done.because === 'fault') return { ok: false, faults: done.faults }
    return refused('Nothing was recorded: the home is closed, or no longer yours.')
  }
  // Noted after: cut off in between, the button does the same once more, and the key of the record makes it one entry.
  await markUsed(hashToken(token), at, later(at, (LINK_DAYS + 2) * 86_400))
  return { ok: true, householdId: stored.id }
}

function recordOf({ task, subject, button }: ActLink, on: string): LogRecord {
  if (button === 'clear') return { on, kind: 'filter-looked', filter: subject, light: 'clear' }
  if (task === 'look-at-filter') return { on, kind: 'filter-looked', filter: subject }
  if (task === 'change-filter' || task === 'wash-filter') return { on, kind: 'filter-changed', filter: subject }
  return { on, kind: 'service-done', task, subject }
}

function refused(say: string): Acted {
  return { ok: false, faults: [{ path: '', say }] }
}
