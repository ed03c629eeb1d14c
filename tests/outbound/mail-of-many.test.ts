import { afterEach, beforeEach, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import type { Viewer } from '@/lib/core/viewer'
import { importHouseholds } from '@/lib/data/import'
import { keepPlans } from '@/lib/data/kept-plans'
import { confirmAddress } from '@/lib/data/mail-links'
import { listReminded, saveReminding } from '@/lib/data/remindings'
import { runReminders } from '@/lib/outbound/runner'
import { nextMoment } from '@/lib/outbound/settle-due'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { openPostOffice, type PostOffice } from '../support/post-office'

freshDatabase()
const NOW = '2026-11-28T15:00:00Z'
const IN_FULL = 30

let office: PostOffice
let ann: Extract<Viewer, { kind: 'account' }>
let number = 0

beforeEach(async () => {
  office = await openPostOffice()
  process.env.SMTP_URL = office.url
  process.env.MAIL_FROM = 'plenum@example.org'
  process.env.PLENUM_NOW = '2026-11-28T14:00:00Z'
  ann = await someone(`ann-${number++}`)
  await confirmAddress(ann.accountId)
  const when = { weekday: 6, hour: 15, timeZone: 'UTC' }
  const nextAt = nextMoment(when, '2026-11-28T14:00:00.000Z')
  await saveReminding(as(ann), { mail: true, push: false, ...when, nextAt, today: '2026-11-25' })
})
afterEach(() => office.close())

/** Homes whose one item is a filter that is overdue: as many as are asked for, in each of two buildings. */
async function bring(each: number): Promise<string[]> {
  const homes = ['Fern House', 'Elm Court'].flatMap((building) =>
    Array.from({ length: each }, (_, i) =>
      aHousehold({
        ...{ id: `${building}-${i}`, name: `Flat ${i + 1}`, building, since: '2026-03-01', devices: [], readings: [] },
        records: [
          { on: '2026-03-20', kind: 'filter-changed', filter: 'hall' },
          ...(['heating-service', 'cooling-service', 'outdoor-unit-clear'] as const).map((task) => ({
            ...{ on: '2026-10-20', kind: 'service-done' as const, task, subject: 'main' },
          })),
        ],
      }),
    ),
  )
  const imported = await importHouseholds(as(ann), homes)
  if (!imported.ok) throw new Error('not brought')
  return imported.ids
}

/** Sends what is due; gives the mail, and the titles in it that name a home. */
async function send(): Promise<{ subject: string; text: string; titles: string[] }> {
  process.env.PLENUM_NOW = NOW
  const plans = keepPlans<HouseholdPlan>((stored, on) => planHousehold(stored.household, tables, on), { version: 1 })
  await runReminders({ plans, freezeWatch: [] })
  const mail = office.mails.at(-1)
  const text = String(mail?.text)
  return { subject: String(mail?.subject), text, titles: text.match(/^.+: .+ \(.+\)$/gm) ?? [] }
}

test('of one name in two buildings each is told with its building, building by building', async () => {
  await bring(2)
  const { subject, titles, text } = await send()
  expect(titles.map((title) => /\((.+)\)/.exec(title)?.[1])).toEqual([
    'Flat 1, Elm Court',
    'Flat 2, Elm Court',
    'Flat 1, Fern House',
    'Flat 2, Fern House',
  ])
  expect(subject).toMatch(/, overdue, and 3 more things$/)
  expect(text).not.toMatch(/more things? in/)
  // The look was due in spring: a mail of November names no day gone by.
  expect(text).toContain('MERV 8, in the wall grille; arrow into the wall. You, as soon as you can.')
  expect(text).toContain('Hold it up to a lamp now: much light means it can stay.')
})

test('of many homes the first are told in full, the rest counted, and all of them have been told', async () => {
  const ids = await bring(120)
  const { subject, titles, text } = await send()
  expect(subject).toMatch(/, overdue, and 239 more things$/)
  expect(titles).toHaveLength(IN_FULL)
  expect(text).toContain('210 more things in 210 homes\n\n210 of them overdue.\n\nWhich homes need a visit')
  expect(text).toMatch(/on which days: https?:\/\/\S+\/rounds\n/)
  expect(text.length).toBeLessThan(60_000)
  expect(await listReminded(ann, ids.at(-1) ?? '')).toHaveLength(1)
})
