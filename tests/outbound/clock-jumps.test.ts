import { beforeEach, expect, test } from 'vitest'
import { countAttempt } from '@/lib/data/attempts'
import { database } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { later } from '@/lib/data/instant'
import { confirmAddress } from '@/lib/data/mail-links'
import { putOutAlone } from '@/lib/data/outgoing'
import { saveReminding } from '@/lib/data/remindings'
import { passOutbox } from '@/lib/outbound/outbox'
import { nextMoment } from '@/lib/outbound/settle-due'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'
import { openMailer } from '../support/open-mailer'
import { remindingByMail } from '../support/reminding'

// A machine whose battery is flat, or whose clock somebody set wrong and then right again.

freshDatabase()
const WRONG = '2036-03-01T15:00:00.000Z'

const office = remindingByMail()
const { run } = office
beforeEach(async () => {
  await database().outgoing.deleteMany({})
})

test('after the clock stood ten years ahead for a while, the next reminder comes on its day, once', async () => {
  const ann = await someone('ann')
  await confirmAddress(ann.accountId)
  await importHouseholds(as(ann), [aHousehold({ since: '2026-03-01', records: [] })])
  const when = { weekday: 6, hour: 9, timeZone: 'America/Chicago' }
  await saveReminding(as(ann), { mail: true, push: false, ...when, nextAt: nextMoment(when, AT), today: '2026-11-25' })
  await run('2026-11-28T15:00:00Z')
  expect(office.mails).toHaveLength(1)
  await run(WRONG)
  expect(office.mails, 'the wrong clock tells once, not of every week between').toHaveLength(2)
  // Right again: what is settled before the next Saturday says nothing more than once, and the Saturday is kept.
  await run('2026-11-30T15:01:00Z')
  await run('2026-11-30T16:00:00Z')
  const before = office.mails.length
  expect(before).toBeLessThanOrEqual(3)
  for (const day of ['12-01', '12-02', '12-03', '12-04']) await run(`2026-${day}T15:00:00Z`)
  expect(office.mails).toHaveLength(before)
  await run('2026-12-05T15:00:00Z')
  await run('2026-12-05T15:01:00Z')
  expect(office.mails).toHaveLength(before + 1)
})

test('set back by a week, nobody is told of the same week twice', async () => {
  const ben = await someone('ben')
  await database().reminding.deleteMany({})
  await confirmAddress(ben.accountId)
  await importHouseholds(as(ben), [aHousehold({ since: '2026-03-01', records: [] })])
  const when = { weekday: 6, hour: 9, timeZone: 'America/Chicago' }
  await saveReminding(as(ben), { mail: true, push: false, ...when, nextAt: nextMoment(when, AT), today: '2026-11-25' })
  await run('2026-11-28T15:00:00Z')
  expect(office.mails).toHaveLength(1)
  for (const day of ['11-21', '11-24', '11-27', '11-28']) await run(`2026-${day}T15:30:00Z`)
  expect(office.mails.length, 'at most once more, for the week that comes again').toBeLessThanOrEqual(2)
})

test('a mail that a wrong clock put out, or took in hand, goes once the clock is right', async () => {
  const words = { subject: 'About', text: 'Text\n', html: '<p>Text</p>' }
  const to = { channel: 'mail' as const, kind: 'invitation' as const, accountId: null, to: 'ann@example.org', ...words }
  await putOutAlone({ ...to, key: 'put out', at: WRONG })
  await putOutAlone({ ...to, key: 'in hand', at: AT })
  await database().outgoing.updateMany({
    where: { key: 'in hand' },
    data: { leaseBy: 'gone', leaseUntil: later(WRONG, 600) },
  })
  const { ways, close } = openMailer()
  expect(await passOutbox(ways, () => AT)).toMatchObject({ sent: 2 })
  expect(await passOutbox(ways, () => AT)).toMatchObject({ sent: 0 })
  close()
})

test('who was counted by a wrong clock is not barred for years', async () => {
  for (let i = 1; i <= 5; i++) expect(await countAttempt('door', WRONG, 900)).toBe(i)
  expect(await countAttempt('door', AT, 900)).toBe(1)
  expect(await countAttempt('door', later(AT, 60), 900)).toBe(2)
})
