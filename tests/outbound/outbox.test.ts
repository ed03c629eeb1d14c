import { afterEach, beforeEach, expect, test } from 'vitest'
import { database } from '@/lib/data/connection'
import { later } from '@/lib/data/instant'
import { listSent, type Message, putOutAlone } from '@/lib/data/outgoing'
import { passOutbox } from '@/lib/outbound/outbox'
import { startChild } from '../support/child'
import { AT, freshDatabase, someone } from '../support/fresh-database'
import { killMails } from '../support/kills/mail'
import { openMailer } from '../support/open-mailer'
import { openPostOffice, type PostOffice } from '../support/post-office'

freshDatabase()

let office: PostOffice
beforeEach(async () => {
  office = await openPostOffice()
  process.env.SMTP_URL = office.url
  process.env.MAIL_FROM = 'Plenum <plenum@example.org>'
  await database().outgoing.deleteMany({})
})
afterEach(() => office.close())

function message(key: string, change: Partial<Message> = {}): Message {
  const words = { subject: `About ${key}`, text: `Text of ${key}\n`, html: `<p>Text of ${key}</p>` }
  return {
    key,
    channel: 'mail',
    kind: 'invitation',
    accountId: null,
    to: 'ann@example.org',
    at: AT,
    ...words,
    ...change,
  }
}

async function pass(at = AT) {
  const { ways, close } = openMailer()
  try {
    return await passOutbox(ways, () => at)
  } finally {
    close()
  }
}

test('a message arrives once, in text and HTML, from the sender and with its own Message-ID', async () => {
  await putOutAlone(message('one'))
  await putOutAlone(message('one'))
  expect(await pass()).toEqual({ sent: 1, later: 0, failed: 0 })
  expect(await pass()).toEqual({ sent: 0, later: 0, failed: 0 })
  expect(office.mails).toHaveLength(1)
  const [mail] = office.mails
  expect(mail).toMatchObject({ subject: 'About one', text: 'Text of one\n', html: '<p>Text of one</p>' })
  expect(mail?.from?.text).toBe('"Plenum" <plenum@example.org>')
  const [row] = await database().outgoing.findMany()
  expect(mail?.messageId).toBe(`<${row?.id}@localhost>`)
  expect(row?.text, 'its links are no longer kept').toBe('')
})

test('several processes side by side send each message once', async () => {
  for (let i = 0; i < 120; i++) await putOutAlone(message(`side-${i}`))
  const children = [1, 2, 3].map(() => startChild('outbox', [], { AT }))
  expect(await Promise.all(children.map(({ over }) => over))).toEqual([0, 0, 0])
  const subjects = office.mails.map(({ subject }) => subject)
  expect(subjects).toHaveLength(120)
  expect(new Set(subjects).size).toBe(120)
})

test('killed between the server’s yes and the note of it: one repeat with the same Message-ID, and none after it', async () => {
  await putOutAlone(message('cut'))
  for (const [killedAt, minutes] of [
    ['the first time', 0],
    ['again', 11],
  ] as const) {
    const taken = new Promise<void>((resolve) => {
      office.beforeSaying(() => {
        resolve()
        return new Promise(() => {})
      })
    })
    const child = startChild('outbox', [], { AT: later(AT, minutes * 60) })
    await taken
    child.process.kill('SIGKILL')
    expect(await child.over, killedAt).toBeNull()
  }
  office.beforeSaying(async () => {})
  expect((await pass(later(AT, 60))).sent, 'another process has it in hand').toBe(0)
  expect((await pass(later(AT, 25 * 60))).sent).toBe(0)
  expect(office.mails).toHaveLength(2)
  expect(new Set(office.mails.map(({ messageId }) => messageId)).size).toBe(1)
  const [row] = await database().outgoing.findMany()
  expect(row?.problem).toContain('stopped twice')
})

test('killed before anything was handed over: nothing is lost and nothing doubled', async () => {
  for (let i = 0; i < 60; i++) await putOutAlone(message(`lost-${i}`))
  let taken = 0
  const some = new Promise<void>((resolve) => {
    office.beforeSaying(async () => {
      if (++taken === 20) resolve()
    })
  })
  const child = startChild('outbox', [], { AT })
  await some
  child.process.kill('SIGKILL')
  await child.over
  await pass(later(AT, 11 * 60))
  const ids = office.mails.map(({ messageId }) => messageId)
  expect(new Set(ids).size).toBe(60)
  // What was in the air when it was killed, at most one on each of its four lines, may have come twice.
  expect(ids.length - 60).toBeLessThanOrEqual(4)
})

test('killed ten times in the middle of sending, no mail is lost, and none comes a third time or as another', async () => {
  const { confirmed, lost, torn } = await killMails(office, { times: 10, pause: (kill) => kill * 12 })
  expect({ lost, torn }).toEqual({ lost: [], torn: [] })
  expect(confirmed).toBeGreaterThan(250)
}, 120_000)

test('"later" is tried again with growing pauses; "never" is reported to the person', async () => {
  const ann = await someone('ann')
  await putOutAlone(message('later', { accountId: ann.accountId, kind: 'digest' }))
  office.answer({ code: 451, say: 'Greylisted, come back later' })
  expect(await pass()).toEqual({ sent: 0, later: 1, failed: 0 })
  expect((await pass(later(AT, 60))).later, 'not at once').toBe(0)
  expect((await pass(later(AT, 5 * 60))).later).toBe(1)
  expect((await pass(later(AT, 15 * 60))).later).toBe(0)
  office.answer(null)
  expect((await pass(later(AT, 20 * 60))).sent).toBe(1)
  await putOutAlone(message('never', { accountId: ann.accountId, kind: 'digest' }))
  office.answer({ code: 550, say: 'No such user here' })
  expect(await pass()).toEqual({ sent: 0, later: 0, failed: 1 })
  expect((await pass(later(AT, 86_400))).failed).toBe(0)
  const [refused] = (await listSent(ann)).filter(({ failedAt }) => failedAt)
  expect(refused?.problem).toContain('No such user here')
})

test('a server that does not answer holds everything up and loses nothing', async () => {
  for (let i = 0; i < 8; i++) await putOutAlone(message(`down-${i}`))
  await office.close()
  const down = await pass()
  expect(down.sent).toBe(0)
  expect(down.later).toBeLessThanOrEqual(4)
  office = await openPostOffice(Number(new URL(office.url).port))
  expect((await pass(later(AT, 5 * 60))).sent).toBe(8)
})
