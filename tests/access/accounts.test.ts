import { readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { changePassword, resetPassword } from '@/lib/access/change-password'
import { acceptInvitation, createInvitation, findOffer } from '@/lib/access/invite'
import { LIMITS } from '@/lib/access/limits'
import { currentViewer, type SessionCookie, signIn, signOut } from '@/lib/access/sign-in'
import { createAccountWith, signUp } from '@/lib/access/sign-up'
import { deleteAccount, listAccounts, setSignUps } from '@/lib/data/accounts'
import { findHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase } from '../support/fresh-database'
import { storedText } from '../support/stored'

const place = freshDatabase()
const PASSWORD = 'four words are enough'
const SYSTEM = { kind: 'system' } as const

// The tests of this file are one story, in its order.
let ann: SessionCookie[] = []

async function cookiesFor(email: string, password = PASSWORD): Promise<SessionCookie[]> {
  const signedIn = await signIn(sentWith(), { email, password })
  if (!signedIn.ok) throw new Error(signedIn.faults[0]?.say)
  return signedIn.cookies
}

async function viewerOf(cookies: SessionCookie[]) {
  const viewer = await currentViewer(sentWith(cookies))
  if (!viewer) throw new Error('nobody is signed in')
  return viewer
}

// An invitation is good for a week from when it is made, by the clock of whoever signs up.
const NOW = new Date().toISOString()

test('all faults of a sign-up come at once', async () => {
  const asked = await signUp(sentWith(), { email: 'no address', password: 'short' })
  expect(asked).toMatchObject({ ok: false, faults: [{ path: 'email' }, { path: 'password' }] })
})

test('the first account is the administrator and is signed in at once', async () => {
  const made = await signUp(sentWith(), { email: ' Ann@Example.org ', password: PASSWORD, name: 'Ann' })
  ann = made.ok ? (made.cookies ?? []) : []
  expect(await currentViewer(sentWith(ann))).toMatchObject({ name: 'Ann', administrator: true })
  expect(ann[0]?.options).toMatchObject({ httpOnly: true, sameSite: 'lax', path: '/' })
})

test('the secret is made once, for its user only', () => {
  const file = join(place.folder, 'secret')
  expect(statSync(file).mode & 0o777).toBe(0o600)
  expect(readFileSync(file, 'utf8')).toHaveLength(43)
})

test('later sign-ups are closed until the administrator opens them', async () => {
  const asked = { email: 'ben@example.org', password: PASSWORD }
  expect(await signUp(sentWith(), asked)).toMatchObject({
    ok: false,
    faults: [{ say: expect.stringContaining('closed') }],
  })
  await setSignUps(as(await viewerOf(ann)), true)
  expect(await signUp(sentWith(), asked)).toEqual({ ok: true, cookies: null, made: expect.any(String) })
  const ben = await cookiesFor(asked.email)
  expect(await viewerOf(ben)).toMatchObject({ name: 'ben', administrator: false })
  expect(await setSignUps(as(await viewerOf(ben)), true)).toEqual({ ok: false, because: 'not-allowed' })
})

test('a sign-up with an e-mail that is taken answers alike and changes nothing', async () => {
  const answer = await signUp(sentWith(), { email: 'ben@example.org', password: 'another password' })
  // `made` stays in the server, for the mail that asks whether the address is theirs; the page tells neither.
  expect(answer).toEqual({ ok: true, cookies: null, made: null })
  expect(await listAccounts(SYSTEM)).toHaveLength(2)
  expect((await signIn(sentWith(), { email: 'ben@example.org', password: 'another password' })).ok).toBe(false)
  await setSignUps(as(await viewerOf(ann)), false)
})

test('a wrong password and an unknown e-mail answer alike', async () => {
  const wrong = await signIn(sentWith(), { email: 'ben@example.org', password: 'wrong password' })
  const unknown = await signIn(sentWith(), { email: 'nobody@example.org', password: 'wrong password' })
  expect(wrong).toEqual(unknown)
})

test('a link to sign up works once, and its token is not stored', async () => {
  const invited = await createInvitation(as(await viewerOf(ann), NOW), { kind: 'sign-up' })
  const token = invited.ok ? invited.token : ''
  expect((await storedText()).includes(token)).toBe(false)
  expect(await signUp(sentWith(), { email: 'cy@example.org', password: PASSWORD, token })).toEqual({
    ok: true,
    cookies: null,
    made: expect.any(String),
  })
  const again = await signUp(sentWith(), { email: 'dee@example.org', password: PASSWORD, token })
  expect(again).toMatchObject({ ok: false, faults: [{ say: expect.stringContaining('used already') }] })
  expect(await listAccounts(SYSTEM)).toHaveLength(3)
})

test('a link into a home signs its holder up and lets them in, as one', async () => {
  const viewer = await viewerOf(ann)
  const imported = await importHouseholds(as(viewer), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const invited = await createInvitation(as(viewer, NOW), { kind: 'member', householdId: home, role: 'adult' })
  const token = invited.ok ? invited.token : ''
  expect(await findOffer(token, AT)).toMatchObject({ kind: 'member', from: 'Ann' })
  // Someone whose e-mail is taken uses nothing up.
  await signUp(sentWith(), { email: 'ben@example.org', password: PASSWORD, token })
  await signUp(sentWith(), { email: 'eve@example.org', password: PASSWORD, token })
  expect((await findHousehold(await viewerOf(await cookiesFor('eve@example.org')), home))?.role).toBe('adult')
  const ben = await viewerOf(await cookiesFor('ben@example.org'))
  expect(await acceptInvitation(as(ben), token)).toEqual({ ok: false, because: 'gone' })
})

test('a new password ends the other sessions and keeps this one', async () => {
  const [phone, desk] = [await cookiesFor('ben@example.org'), await cookiesFor('ben@example.org')]
  const next = 'five words are enough too'
  expect(await changePassword(sentWith(desk), { current: 'wrong', next })).toMatchObject({
    ok: false,
    faults: [{ path: 'current' }],
  })
  expect(await currentViewer(sentWith(phone))).not.toBeNull()
  expect(await changePassword(sentWith(desk), { current: PASSWORD, next })).toEqual({ ok: true })
  expect(await currentViewer(sentWith(phone))).toBeNull()
  expect(await currentViewer(sentWith(desk))).not.toBeNull()
  expect((await signIn(sentWith(), { email: 'ben@example.org', password: PASSWORD })).ok).toBe(false)
  await resetPassword('ben@example.org', PASSWORD)
  expect(await currentViewer(sentWith(desk))).toBeNull()
})

test('signing out ends the session itself, not only its cookie', async () => {
  const cookies = await cookiesFor('ben@example.org')
  const cleared = await signOut(sentWith(cookies))
  expect(cleared[0]).toMatchObject({ value: '', options: { maxAge: 0 } })
  expect(await currentViewer(sentWith(cookies))).toBeNull()
})

test('a cookie that somebody made up is nobody', async () => {
  expect(await currentViewer(sentWith([{ name: 'plenum.session_token', value: 'made.up', options: {} }]))).toBeNull()
  expect(await currentViewer(sentWith())).toBeNull()
})

test('tries are limited by e-mail, whatever address they claim to come from', async () => {
  const email = 'cy@example.org'
  for (let i = 0; i < LIMITS.email; i++)
    await signIn(sentWith([], { 'x-forwarded-for': `10.0.0.${i}` }), { email, password: 'a wrong one' })
  const right = await signIn(sentWith([], { 'x-forwarded-for': '10.9.9.9' }), { email, password: PASSWORD })
  expect(right).toMatchObject({ ok: false, faults: [{ say: expect.stringContaining('15 minutes') }] })
  expect((await signIn(sentWith(), { email: 'ben@example.org', password: PASSWORD })).ok).toBe(true)
})

test('tries are limited by the address that the proxy saw, whatever e-mail they are for', async () => {
  const seen = (i: number) => sentWith([], { 'x-forwarded-for': `10.1.1.${i}, 192.0.2.7` })
  const asked = (i: number) => ({ email: `many-${i}@example.org`, password: PASSWORD })
  for (let i = 0; i < LIMITS.address; i++) await signUp(seen(i), asked(i))
  expect(await signUp(seen(0), asked(99))).toMatchObject({ faults: [{ say: expect.stringContaining('15 minutes') }] })
  const other = await signUp(sentWith([], { 'x-forwarded-for': '192.0.2.8' }), asked(99))
  expect(other).toMatchObject({ faults: [{ say: expect.stringContaining('closed') }] })
})

test('cookies are Secure where the address is https', async () => {
  const { library } = await import('@/lib/access/library')
  const { closeDatabase } = await import('@/lib/data/connection')
  process.env.PUBLIC_URL = 'https://home.example.org'
  try {
    // The library is made anew with a new connection.
    await closeDatabase()
    expect((await cookiesFor('ben@example.org'))[0]).toMatchObject({
      name: expect.stringContaining('__Secure-'),
      options: { secure: true },
    })
    expect(library().options.advanced.useSecureCookies).toBe(true)
  } finally {
    delete process.env.PUBLIC_URL
    await closeDatabase()
  }
})

test('the command makes an account with its homes, or neither', async () => {
  const refused = await createAccountWith({ email: 'fay@example.org', password: PASSWORD }, [
    aHousehold(),
    aHousehold(),
  ])
  expect(refused).toMatchObject({ ok: false, faults: [{ path: 'households[1].id' }] })
  const made = await createAccountWith({ email: 'fay@example.org', password: PASSWORD }, [aHousehold()])
  expect(made.ok && made.ids).toHaveLength(1)
  expect(await listHomes(await viewerOf(await cookiesFor('fay@example.org')))).toHaveLength(1)
  const taken = await createAccountWith({ email: 'FAY@example.org', password: PASSWORD }, [])
  expect(taken).toMatchObject({ ok: false, faults: [{ path: 'email' }] })
})

test('where the administrator goes, the oldest account takes over', async () => {
  const viewer = await viewerOf(ann)
  await deleteAccount(as(viewer), viewer.accountId)
  expect(await currentViewer(sentWith(ann))).toBeNull()
  const left = await listAccounts(SYSTEM)
  expect(left.filter(({ administrator }) => administrator).map(({ email }) => email)).toEqual(['ben@example.org'])
})
