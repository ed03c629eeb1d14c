import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith, signUp } from '@/lib/access/sign-up'
import { setSignUps } from '@/lib/data/accounts'
import { database } from '@/lib/data/connection'
import { findAddress } from '@/lib/data/mail-links'
import { putOutAlone } from '@/lib/data/outgoing'
import { sendFirstConfirmation, sendRecovery } from '@/lib/outbound/account-mail'
import { askNewAddress, changeAddressBy, isNewAddressOpen, sendNewAddress } from '@/lib/outbound/address-change'
import { passOutbox } from '@/lib/outbound/outbox'
import { sentWith } from '../support/a-browser'
import { AT, freshDatabase } from '../support/fresh-database'
import { openMailer } from '../support/open-mailer'
import { openPostOffice, type PostOffice } from '../support/post-office'

freshDatabase()

const password = 'four words are enough'
let office: PostOffice
let number = 0

beforeAll(async () => {
  office = await openPostOffice()
  process.env.SMTP_URL = office.url
  process.env.MAIL_FROM = 'plenum@example.org'
})
afterAll(() => office.close())
beforeEach(async () => {
  process.env.PLENUM_NOW = AT
  office.mails.length = 0
  await database().attempt.deleteMany({})
})

async function somebody(): Promise<{ id: string; email: string; next: string }> {
  const email = `ann-${++number}@example.org`
  const made = await createAccountWith({ email, password }, [])
  if (!made.ok) throw new Error('no account')
  return { id: made.accountId, email, next: `ann-${number}@example.net` }
}

/** Passes the outbox and gives the mails that arrived, by address. */
async function pass(): Promise<Record<string, string>> {
  const { ways, close } = openMailer()
  await passOutbox(ways, () => AT)
  close()
  return Object.fromEntries(office.mails.map(({ to, text }) => [[to].flat()[0]?.text ?? '', text ?? '']))
}

async function newAddressLink(id: string, email: string): Promise<string> {
  await sendNewAddress(id, email)
  return /\/address\/([\w-]+)/.exec((await pass())[email] ?? '')?.[1] ?? ''
}

test('an address is changed by the link that went to the new one, once, and the earlier one is told', async () => {
  const { id, email, next } = await somebody()
  expect(await askNewAddress(sentWith(), id, { email: next, password })).toEqual({ ok: true })
  const token = await newAddressLink(id, next)
  expect(await isNewAddressOpen(token)).toBe(true)
  expect(await findAddress(id)).toMatchObject({ email })
  expect(await changeAddressBy(sentWith(), token)).toEqual({ ok: true })
  expect(await findAddress(id)).toMatchObject({ email: next, emailVerified: true })
  expect(await changeAddressBy(sentWith(), token)).toMatchObject({ ok: false })
  expect((await pass())[email]).toContain(next)
  expect((await signIn(sentWith(), { email, password })).ok).toBe(false)
  expect((await signIn(sentWith(), { email: next, password })).ok).toBe(true)
})

test('whether a new address is somebody’s already makes no difference to what is answered, only to what is sent', async () => {
  const [ann, ben] = [await somebody(), await somebody()]
  const free = await askNewAddress(sentWith(), ann.id, { email: ann.next, password })
  expect(await askNewAddress(sentWith(), ann.id, { email: ben.email, password })).toEqual(free)
  await sendNewAddress(ann.id, ben.email)
  expect(await pass()).toEqual({})
})

test('an address that became somebody’s meanwhile is not taken from them', async () => {
  const [ann, ben] = [await somebody(), await somebody()]
  const [one, other] = [
    await newAddressLink(ann.id, 'both@example.net'),
    await newAddressLink(ben.id, 'both@example.net'),
  ]
  expect(await changeAddressBy(sentWith(), one)).toEqual({ ok: true })
  expect(await changeAddressBy(sentWith(), other)).toMatchObject({ ok: false })
  expect(await findAddress(ben.id)).toMatchObject({ email: ben.email })
})

test('no wrong password, no own address, no old link; and many tries are slowed down', async () => {
  const { id, email, next } = await somebody()
  const wrong = await askNewAddress(sentWith(), id, { email: next, password: 'something else' })
  expect(wrong).toMatchObject({ faults: [{ path: 'address-password' }] })
  expect(await askNewAddress(sentWith(), id, { email, password })).toMatchObject({ faults: [{ path: 'email' }] })
  const token = await newAddressLink(id, next)
  process.env.PLENUM_NOW = new Date(Date.parse(AT) + 3 * 86_400_000 + 1000).toISOString()
  expect(await isNewAddressOpen(token)).toBe(false)
  expect(await changeAddressBy(sentWith(), token)).toMatchObject({ ok: false })
  const answers = []
  for (let i = 0; i < 12; i++) answers.push((await askNewAddress(sentWith(), id, { email: next, password })).ok)
  expect([answers[0], answers.at(-1)]).toEqual([true, false])
})

test('what was on its way to the earlier address opens nothing, and a waiting reminder goes to the new one', async () => {
  const { id, email, next } = await somebody()
  const token = await newAddressLink(id, next)
  await sendRecovery(email)
  const message = { key: `digest ${id}`, channel: 'mail', kind: 'digest', accountId: id, to: email, at: AT } as const
  await putOutAlone({ ...message, subject: 'Due', text: 'Due', html: '<p>Due</p>' })
  expect(await changeAddressBy(sentWith(), token)).toEqual({ ok: true })
  expect(await database().mailLink.count({ where: { accountId: id, usedAt: null } })).toBe(0)
  expect((await pass())[next]).toBe('Due')
})

test('a new account is sent the link that proves its address, and an e-mail that was taken is sent none', async () => {
  await setSignUps({ viewer: { kind: 'system' }, at: AT, door: 'command' }, true)
  const made = await signUp(sentWith(), { email: 'new@example.org', password })
  const again = await signUp(sentWith(), { email: 'new@example.org', password: 'another password' })
  expect([made, again].map((answer) => answer.ok && answer.cookies)).toEqual([null, null])
  const ids = [made, again].map((answer) => (answer.ok ? answer.made : null))
  expect(ids).toEqual([expect.any(String), null])
  await sendFirstConfirmation(ids[0] ?? '')
  expect((await pass())['new@example.org']).toMatch(/\/confirm\/[\w-]{20,}/)
})
