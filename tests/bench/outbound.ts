import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import ical, { ICalAlarmType, ICalCalendarMethod, ICalEventTransparency } from 'ical-generator'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import { sharedPlanner } from '@/lib/core/shared-planner'
import { createAccount } from '@/lib/data/accounts'
import { closeDatabase, database } from '@/lib/data/connection'
import type { StoredHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { keepPlans } from '@/lib/data/kept-plans'
import { migrate } from '@/lib/data/migrate'
import { calendarText, feedEvents, feedTag, linesOfEvents } from '@/lib/outbound/calendar'
import { runReminders } from '@/lib/outbound/runner'
import { openPostOffice } from '../support/post-office'
import { manyHouseholds } from './many-households'
import { atMost, medians, type Row } from './table'

const ON = '2026-11-25'
const ORIGIN = 'https://plenum.example.org'
const COUNT = Number(process.env.DIGESTS || 10_000)

/** The calendar feed against the library that writes it. */
export async function feedRows(): Promise<Row[]> {
  const homes = manyHouseholds(200, ON).map((household, i) => {
    const { name, timeZone } = household
    const stored: StoredHousehold = {
      ...{ id: `home${i}`, name, building: null, timeZone, revision: 1, state: 'open', role: 'owner', household },
      ...{ closedOn: null, accessNote: null, placeNotes: {}, contacts: [], putOffs: [] },
    }
    return { stored, on: ON, plan: planHousehold(household, tables, ON) }
  })
  const whole = feedEvents(homes, { origin: ORIGIN, many: true }).slice(0, 1000)
  const alone = () => {
    const calendar = ical({ name: 'Plenum', method: ICalCalendarMethod.PUBLISH, ttl: 21_600 })
    for (const { uid, day, title, text, address, sequence, on } of whole) {
      const event = calendar.createEvent({
        ...{ id: uid, start: new Date(day), allDay: true, stamp: new Date(on), sequence, summary: title },
        ...{ description: `${text}\n\nRecord it done: ${address}`, url: address },
        transparency: ICalEventTransparency.TRANSPARENT,
      })
      event.createAlarm({ type: ICalAlarmType.display, triggerAfter: 32_400, description: title })
    }
    return calendar.toString()
  }
  // Ours begins at the plans: words, tag and text.
  const ours = () => {
    const events = feedEvents(homes, { origin: ORIGIN, many: true }).slice(0, 1000)
    return feedTag(events, 'Plenum') + calendarText(linesOfEvents(events), { name: 'Plenum' })
  }
  const { generator, product } = await medians(15, { generator: alone, product: ours })
  return [
    { what: `${whole.length} events by the generator alone`, figure: `${generator.toFixed(1)} ms` },
    atMost('calendar feed / the generator alone', product / generator, 1.3),
  ]
}

/** Everybody's weekly letter at once, through a real mail server. */
export async function digestRows(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  process.env.DATA_DIR = folder
  process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
  process.env.MAIL_FROM = 'plenum@example.org'
  process.env.PLENUM_NOW = '2026-11-28T15:00:00Z'
  migrate()
  const office = await openPostOffice()
  process.env.SMTP_URL = office.url
  const at = '2026-11-25T12:00:00.000Z'
  // Brought by one person in one go, then given each to its own: ten thousand imports are not what is measured.
  const everybody = Array.from({ length: COUNT }, (_, i) => ({ id: `account-${i}`, email: `p${i}@example.org` }))
  const first = { kind: 'account', accountId: 'account-0', name: 'p0', administrator: true } as const
  await createAccount({ id: 'account-0', email: 'p0@example.org', name: 'p0', passwordHash: '-', at }, async () => true)
  const homes = manyHouseholds(COUNT, ON).map((household) => ({ ...household, since: '2026-01-01', records: [] }))
  await importHouseholds({ viewer: first, at, door: 'command' }, homes)
  const db = database()
  await db.user.createMany({ data: everybody.slice(1).map((person) => ({ ...person, name: person.id })) })
  await db.$executeRaw`UPDATE "User" SET "emailVerified" = 1`
  await db.$executeRaw`UPDATE "Household" SET "ownerId" = 'account-' || "position"`
  await db.$executeRaw`UPDATE "Membership" SET "accountId" = (SELECT "ownerId" FROM "Household" WHERE "id" = "householdId")`
  const when = { mail: true, weekday: 6, hour: 9, timeZone: 'America/Chicago', since: ON, digestOn: ON }
  const nextAt = '2026-11-28T15:00:00.000Z'
  await db.reminding.createMany({ data: everybody.map(({ id }) => ({ accountId: id, ...when, nextAt })) })
  const planOf = sharedPlanner(tables)
  const plans = keepPlans((stored, on) => planOf(stored.household, on), { version: 1 })
  const start = process.hrtime.bigint()
  const ran = await runReminders({ plans, freezeWatch: [] })
  const seconds = Number(process.hrtime.bigint() - start) / 1e9
  const people = new Set(office.mails.map(({ to }) => (Array.isArray(to) ? '' : to?.text)))
  const ids = new Set(office.mails.map(({ messageId }) => messageId))
  await office.close()
  await closeDatabase()
  rmSync(folder, { recursive: true })
  const each = (1000 * seconds) / COUNT
  const once = office.mails.length === COUNT && people.size === COUNT && ids.size === COUNT
  return [
    { what: `${COUNT} digests, planning and a parsing mail server included`, figure: `${each.toFixed(1)} ms each` },
    {
      what: 'digests that arrived, people, Message-IDs',
      figure: `${office.mails.length}, ${people.size}, ${ids.size}; ${ran.sent} sent`,
      goal: `${COUNT} of each`,
      meets: once,
    },
  ]
}
