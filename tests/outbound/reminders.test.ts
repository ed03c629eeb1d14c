import { afterEach, beforeEach, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import type { Viewer } from '@/lib/core/viewer'
import { clearAway, saveAway } from '@/lib/data/aways'
import { database } from '@/lib/data/connection'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { keepPlans } from '@/lib/data/kept-plans'
import { listLog } from '@/lib/data/log'
import { confirmAddress } from '@/lib/data/mail-links'
import { putOff } from '@/lib/data/put-offs'
import { listReminded, saveReminding } from '@/lib/data/remindings'
import { actOn, findAsked } from '@/lib/outbound/act'
import { runReminders } from '@/lib/outbound/runner'
import { nextMoment } from '@/lib/outbound/settle-due'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { openPostOffice, type PostOffice } from '../support/post-office'

freshDatabase()
const plans = keepPlans<HouseholdPlan>((stored, on) => planHousehold(stored.household, tables, on), { version: 1 })
const ZONE = 'America/Chicago'

let office: PostOffice
let ann: Extract<Viewer, { kind: 'account' }>
let home = ''
let number = 0

beforeEach(async () => {
  office = await openPostOffice()
  process.env.SMTP_URL = office.url
  process.env.MAIL_FROM = 'plenum@example.org'
  await database().reminding.deleteMany({})
  await database().outgoing.deleteMany({})
  at('2026-11-25T12:00:00Z')
  ann = await someone(`ann-${number++}`)
  await confirmAddress(ann.accountId)
  // The filter was changed in spring: by now it is overdue, whatever the dust.
  const old = aHousehold({
    since: '2026-03-01',
    records: [{ on: '2026-03-20', kind: 'filter-changed', filter: 'hall' }],
  })
  const imported = await importHouseholds(as(ann), [old])
  home = imported.ok ? (imported.ids[0] ?? '') : ''
})
afterEach(() => office.close())

function at(moment: string): void {
  process.env.PLENUM_NOW = moment
}

/** Ann wants her mail on Saturdays at nine. */
async function wish(today = '2026-11-25'): Promise<void> {
  const when = { weekday: 6, hour: 9, timeZone: ZONE }
  const nextAt = nextMoment(when, process.env.PLENUM_NOW ?? '')
  await saveReminding(as(ann), { mail: true, push: false, ...when, nextAt, today })
}

async function run(moment: string) {
  at(moment)
  return runReminders({ plans, freezeWatch: ['Ask somebody to look in.'] })
}

/** The links of the buttons of the latest mail. */
function buttons(): Record<string, string> {
  const html = String(office.mails.at(-1)?.html)
  return Object.fromEntries(
    [...html.matchAll(/\/act\/([^"]+)"[^>]*>([^<]+)</g)].map(([, token, say]) => [String(say), String(token)]),
  )
}

test('one mail on the chosen weekday and hour, in the person’s own zone, and none in between', async () => {
  await wish()
  for (const quiet of ['2026-11-26T15:00:00Z', '2026-11-27T15:00:00Z', '2026-11-28T14:59:00Z']) await run(quiet)
  expect(office.mails).toHaveLength(0)
  // Nine o'clock in Chicago is 15:00 UTC in winter.
  await run('2026-11-28T15:00:00Z')
  await run('2026-11-28T15:01:00Z')
  await run('2026-11-29T15:00:00Z')
  expect(office.mails).toHaveLength(1)
  const [mail] = office.mails
  expect(mail?.subject).toMatch(/, overdue, and \d more things$/)
  expect(mail?.text).toContain('16 × 25 × 1, pleated, MERV 8, in the wall grille; arrow into the wall.')
  expect(mail?.html).toContain('16 × 25 × 1, pleated, MERV 8, in the wall grille; arrow into the wall.')
  expect(Object.keys(buttons())).toEqual(
    expect.arrayContaining(['Done today', 'Looked: light comes through', 'Remind me in two weeks']),
  )
  const reminded = await listReminded(ann, home)
  expect(reminded).toContainEqual(
    expect.objectContaining({ task: 'change-filter', subject: 'hall', channel: 'mail', name: ann.name }),
  )
})

test('after a week without the server there is one mail, not seven', async () => {
  await wish()
  await run('2026-12-13T03:00:00Z')
  expect(office.mails).toHaveLength(1)
})

test('after weeks without a mail server there is one mail: the newest', async () => {
  await wish()
  const { port } = new URL(office.url)
  await office.close()
  for (const day of ['2026-11-28', '2026-12-05', '2026-12-12']) await run(`${day}T15:00:00Z`)
  expect(await listReminded(ann, home), 'nobody was reminded by a mail that has not gone').toEqual([])
  office = await openPostOffice(Number(port))
  await run('2026-12-12T21:00:00Z')
  expect(office.mails).toHaveLength(1)
  const days = new Set((await listReminded(ann, home)).map(({ at }) => at.slice(0, 10)))
  expect([...days]).toEqual(['2026-12-12'])
})

test('something that becomes overdue is told on its day, once', async () => {
  await database().household.deleteMany({})
  const imported = await importHouseholds(as(ann), [
    aHousehold({
      since: '2026-03-01',
      devices: [{ id: 'co1', kind: 'co-alarm', made: '2017-01-01', endOfLife: '2026-11-15' }],
      filters: [],
      systems: [],
      records: [{ on: '2026-11-20', kind: 'service-done', task: 'alarm-test', subject: 'co1' }],
      readings: [],
    }),
  ])
  const id = imported.ok ? (imported.ids[0] ?? '') : ''
  const { household } = await getHousehold(ann, id)
  const item = planHousehold(household, tables, '2026-11-25').items.find(({ task }) => task === 'alarm-replace')
  if (!item) throw new Error('no alarm')
  const dayAfter = new Date(Date.parse(item.latest) + 86_400_000).toISOString().slice(0, 10)
  const dayOf = new Date(Date.parse(item.latest)).toISOString().slice(0, 10)
  at(`${dayOf}T12:00:00Z`)
  await wish(dayOf)
  await run(`${dayOf}T15:00:00Z`)
  const before = office.mails.filter(({ subject }) => subject?.startsWith('Overdue')).length
  await run(`${dayAfter}T15:00:00Z`)
  await run(`${dayAfter}T16:00:00Z`)
  const told = office.mails.filter(({ text }) => text?.includes('Overdue: ')).length
  expect(before).toBe(0)
  expect(told).toBe(1)
})

test('nothing is sent when there is nothing to say, or before the address is confirmed', async () => {
  await wish()
  await database().user.update({ where: { id: ann.accountId }, data: { emailVerified: false } })
  expect((await run('2026-11-28T15:00:00Z')).messages).toBe(0)
  await confirmAddress(ann.accountId)
  for (const { task, subject } of planHousehold((await getHousehold(ann, home)).household, tables, '2026-12-05').items)
    await putOff(as(ann), home, { task, subject, until: '2026-12-20', today: '2026-12-05' })
  expect((await run('2026-12-05T15:00:00Z')).messages).toBe(0)
  expect(office.mails).toHaveLength(0)
})

test('a button shows what it does, records it once under the person’s name, and moves the day', async () => {
  await wish()
  await run('2026-11-28T15:00:00Z')
  const token = buttons()['Done today'] ?? ''
  const before = await listLog(ann, home)
  expect((await findAsked(token))?.link).toMatchObject({ button: 'done', subject: expect.any(String) })
  expect(await listLog(ann, home), 'looking at it changes nothing').toEqual(before)
  expect(await actOn(token)).toMatchObject({ ok: true })
  expect(await actOn(token)).toMatchObject({ ok: false })
  const added = (await listLog(ann, home)).filter(({ id }) => before.every((entry) => entry.id !== id))
  expect(added).toHaveLength(1)
  expect(added[0]).toMatchObject({ door: 'mail', by: { name: ann.name }, record: { on: '2026-11-28' } })
  expect(await actOn(buttons()['Remind me in two weeks'] ?? '')).toMatchObject({ ok: true })
  expect((await getHousehold(ann, home)).putOffs[0]?.until).toBe('2026-12-12')
})

test('a button that somebody changed, or that is older than a month, opens nothing', async () => {
  await wish()
  await run('2026-11-28T15:00:00Z')
  const token = buttons()['Done today'] ?? ''
  for (const wrong of [`${token}x`, token.slice(0, -1), token.replace(/^./, 'A'), 'x.y', '', `${token}.z`])
    expect(await findAsked(wrong)).toBeNull()
  at('2027-01-15T15:00:00Z')
  expect(await findAsked(token)).toBeNull()
})

test('while nobody is at home the mail is a freeze watch in the cold months, and as before afterwards', async () => {
  await saveAway(as(ann), home, { today: '2026-11-25', until: '2026-12-20' })
  await wish()
  await run('2026-11-28T15:00:00Z')
  expect(office.mails).toHaveLength(1)
  expect(office.mails[0]?.subject).toBe('Freeze watch: Larkspur Court 2')
  expect(office.mails[0]?.text).toContain('Ask somebody to look in.')
  await clearAway(as(ann), home)
  await run('2026-12-05T15:00:00Z')
  expect(office.mails[1]?.subject).toContain('overdue')
})

test('over both changes of the clock the mail comes at nine by the wall clock', () => {
  const wishes = { hour: 9, timeZone: ZONE }
  expect(nextMoment(wishes, '2026-10-31T15:00:00.000Z')).toBe('2026-11-01T15:00:00.000Z')
  expect(nextMoment(wishes, '2026-10-31T13:00:00.000Z')).toBe('2026-10-31T14:00:00.000Z')
  expect(nextMoment(wishes, '2027-03-13T15:00:00.000Z')).toBe('2027-03-14T14:00:00.000Z')
  // The hour from two to three is left out that night: the mail comes at three.
  expect(nextMoment({ hour: 2, timeZone: ZONE }, '2027-03-14T07:00:00.000Z')).toBe('2027-03-14T08:00:00.000Z')
})
