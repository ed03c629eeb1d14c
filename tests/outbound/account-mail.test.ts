import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { currentViewer, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import type { Viewer } from '@/lib/core/viewer'
import { database } from '@/lib/data/connection'
import { findAddress } from '@/lib/data/mail-links'
import {
  askRecovery,
  confirm,
  isRecoveryOpen,
  mailInvitation,
  recover,
  sendConfirmation,
  sendRecovery,
} from '@/lib/outbound/account-mail'
import { mailSettings } from '@/lib/outbound/mailer'
import { passOutbox } from '@/lib/outbound/outbox'
import { sentWith } from '../support/a-browser'
import { AT, as, freshDatabase } from '../support/fresh-database'
import { openMailer } from '../support/open-mailer'
import { openPostOffice, type PostOffice } from '../support/post-office'

freshDatabase()

const PASSWORD = 'four words are enough'
let office: PostOffice
let ann: Extract<Viewer, { kind: 'account' }>

beforeAll(async () => {
  office = await openPostOffice()
  process.env.SMTP_URL = office.url
  process.env.MAIL_FROM = 'plenum@example.org'
  const made = await createAccountWith({ email: 'ann@example.org', password: PASSWORD }, [])
  if (!made.ok) throw new Error('no account')
  ann = { kind: 'account', accountId: made.accountId, name: 'ann', administrator: false }
})
afterAll(() => office.close())
beforeEach(async () => {
  process.env.PLENUM_NOW = AT
  office.mails.length = 0
  await database().attempt.deleteMany({})
})

async function pass(): Promise<void> {
  const { ways, close } = openMailer()
  await passOutbox(ways, () => AT)
  close()
}

function linkIn(path: string): string {
  return new RegExp(`${path}/([\\w-]+)`).exec(office.mails.at(-1)?.text ?? '')?.[1] ?? ''
}

test('a new password by a link that works once and ends every session', async () => {
  const signedIn = await signIn(sentWith(), { email: 'ann@example.org', password: PASSWORD })
  await sendRecovery(' Ann@Example.org ')
  await pass()
  expect(office.mails[0]?.to).toMatchObject({ text: 'ann@example.org' })
  const token = linkIn('/forgot')
  expect(await isRecoveryOpen(token)).toBe(true)
  expect(await recover(sentWith(), token, 'short')).toMatchObject({ faults: [{ path: 'new-password' }] })
  expect(await recover(sentWith(), token, 'five words are enough too')).toEqual({ ok: true })
  expect(await recover(sentWith(), token, 'six words are enough as well')).toMatchObject({ ok: false })
  expect(await currentViewer(sentWith(signedIn.ok ? signedIn.cookies : []))).toBeNull()
  expect((await signIn(sentWith(), { email: 'ann@example.org', password: 'five words are enough too' })).ok).toBe(true)
})

test('whether there is an account makes no difference to what is answered, only to what is sent', async () => {
  const known = await askRecovery(sentWith(), 'ann@example.org')
  expect(await askRecovery(sentWith(), 'nobody@example.org')).toEqual(known)
  await sendRecovery('nobody@example.org')
  await pass()
  expect(office.mails).toHaveLength(0)
})

test('a link is over after its time, and once a newer one was asked for', async () => {
  await sendRecovery('ann@example.org')
  await pass()
  const first = linkIn('/forgot')
  await sendRecovery('ann@example.org')
  await pass()
  const second = linkIn('/forgot')
  expect([await isRecoveryOpen(first), await isRecoveryOpen(second)]).toEqual([false, true])
  process.env.PLENUM_NOW = '2026-11-25T10:00:01.000Z'
  expect(await isRecoveryOpen(second)).toBe(false)
})

test('an address is confirmed by its link, once, and no other link confirms it', async () => {
  await database().user.update({ where: { id: ann.accountId }, data: { emailVerified: false } })
  await sendRecovery('ann@example.org')
  expect(await sendConfirmation(sentWith(), as(ann))).toEqual({ ok: true })
  await pass()
  const recovery = office.mails.map(({ text }) => /\/forgot\/([\w-]+)/.exec(text ?? '')?.[1]).find(Boolean) ?? ''
  const token = office.mails.map(({ text }) => /\/confirm\/([\w-]+)/.exec(text ?? '')?.[1]).find(Boolean) ?? ''
  expect((await confirm(sentWith(), recovery)).ok).toBe(false)
  expect((await findAddress(ann.accountId))?.emailVerified).toBe(false)
  expect(await confirm(sentWith(), token)).toEqual({ ok: true })
  expect((await findAddress(ann.accountId))?.emailVerified).toBe(true)
  expect((await confirm(sentWith(), token)).ok).toBe(false)
})

test('asking again and again is slowed down', async () => {
  const answers = []
  for (let i = 0; i < 12; i++) answers.push((await askRecovery(sentWith(), 'zoe@example.org')).ok)
  expect(answers[0]).toBe(true)
  expect(answers.at(-1)).toBe(false)
})

test('an invitation goes to whom it is for; what somebody wrote is no markup there', async () => {
  const act = as({ ...ann, name: '<b>Ann</b>' })
  await mailInvitation(act, {
    to: 'ben@example.org',
    link: 'https://plenum.example.org/invitation/x',
    says: 'to <i>a home</i>',
    invitationId: 'i1',
  })
  await pass()
  expect(office.mails[0]?.text).toContain('<b>Ann</b> invites you to <i>a home</i>.')
  expect(office.mails[0]?.html).toContain('&lt;b&gt;Ann&lt;/b&gt;')
})

test('a mail server or a sender that cannot be is said before anything is sent', () => {
  const before = { ...process.env }
  for (const [url, from, missing] of [
    ['', '', 2],
    ['http://mail.example.org', 'plenum@example.org', 1],
    ['smtp://mail.example.org', 'plenum', 1],
    ['smtp://mail.example.org', 'a@example.org\r\nBcc: b@example.org', 1],
    ['smtp://mail.example.org', 'a@example.org, b@example.org', 1],
    ['smtps://u:p@mail.example.org:465', 'Plenum <a@example.org>', 0],
  ] as const) {
    process.env.SMTP_URL = url
    process.env.MAIL_FROM = from
    const settings = mailSettings()
    expect(settings.ok ? 0 : settings.missing.length).toBe(missing)
  }
  process.env = before
})
