import { afterAll, beforeAll, expect, test } from 'vitest'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { confirmAddress } from '@/lib/data/mail-links'
import { cookieText, sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { aPicture } from '../support/a-picture'
import { type RunningApp, startApp } from '../support/app'
import { openPostOffice, type PostOffice } from '../support/post-office'
import { besideApp } from '../support/signed-in'
import { type Answered, ask, sendForm, wordsOf } from '../support/web-form'

// What somebody tries who has no account, or one of his own: the built app, over HTTP, with a real mail server.

const ASKED = { email: 'ann@example.org', password: 'four words are enough' }
const NAME = '<script>alert(1)</script>"\'><img src=x onerror=alert(2)>\u202e'
let app: RunningApp
let post: PostOffice
let home = ''
let cookie = ''

beforeAll(async () => {
  post = await openPostOffice()
  app = await startApp({ databaseUrl: null, env: { SMTP_URL: post.url, MAIL_FROM: 'plenum@example.org' } })
  const back = besideApp(app)
  const made = await createAccountWith({ ...ASKED, name: NAME }, [aHousehold({ name: NAME, building: NAME })])
  if (!made.ok) throw new Error(made.faults[0]?.say)
  await confirmAddress(made.accountId)
  home = `${app.address}/home/${made.ids[0]}`
  const signed = await signIn(sentWith(), ASKED)
  cookie = cookieText(signed.ok ? signed.cookies : null)
  await back()
})
afterAll(async () => {
  await app.stop()
  await post.close()
})

const cookiesOf = (answer: Answered) => [answer.headers['set-cookie'] ?? []].flat()
const sessionIn = (answer: Answered) => /plenum\.session_token=([^;]*)/.exec(cookiesOf(answer).join('\n'))?.[1] ?? ''

test('a session that was planted before somebody signs in is not theirs after, and opens nothing', async () => {
  const planted = 'plenum.session_token=planted-by-somebody.c2lnbmF0dXJl'
  const answer = await sendForm(`${app.address}/sign-in`, ASKED, { headers: { cookie: planted } })
  expect(answer.status).toBe(303)
  expect(sessionIn(answer)).not.toBe('')
  expect(sessionIn(answer)).not.toContain('planted')
  expect(cookiesOf(answer).find((line) => line.startsWith('plenum.session_token'))).toMatch(/HttpOnly/i)
  expect(cookiesOf(answer).find((line) => line.startsWith('plenum.session_token'))).toMatch(/SameSite=lax/i)
  expect((await ask(home, { headers: { cookie: planted } })).status).toBe(307)
  // Twice signed in are two sessions: neither is told by the other.
  const again = await sendForm(`${app.address}/sign-in`, ASKED)
  expect(sessionIn(again)).not.toBe(sessionIn(answer))
})

test('a session of which any sign was changed is nobody’s', async () => {
  const [name, value] = cookie.split(/=(.*)/s) as [string, string]
  expect((await ask(home, { headers: { cookie } })).status).toBe(200)
  const plain = decodeURIComponent(value)
  for (let at = 0; at < plain.length; at += 5) {
    // The last sign of a signature in base64 says four bits only: another with the same four would be the same one.
    const sign = /[A-Za-f]/.test(plain.charAt(at)) ? 'z' : 'A'
    const other = `${plain.slice(0, at)}${sign}${plain.slice(at + 1)}`
    const { status } = await ask(home, { headers: { cookie: `${name}=${encodeURIComponent(other)}` } })
    expect([at, status]).toEqual([at, 307])
  }
})

test('after signing in nobody is led to another site, however its address is written', async () => {
  const tricks = ['//evil.example', '/\\evil.example', 'https://evil.example', '/\t/evil.example', '/.//evil.example']
  for (const next of [...tricks, 'javascript:alert(1)', '/%2f/evil.example', '\\/evil.example', ' //evil.example']) {
    const page = `${app.address}/sign-in?next=${encodeURIComponent(next)}`
    const signed = await sendForm(page, ASKED)
    const there = await ask(page, { headers: { cookie } })
    for (const answer of [signed, there]) {
      const to = new URL(String(answer.headers.location), app.address)
      expect([next, answer.status >= 300 && answer.status < 400, to.origin]).toEqual([next, true, app.address])
    }
  }
})

test('a link to a new password leads here, whatever host was asked for', async () => {
  const evil = { 'x-forwarded-host': 'evil.example', 'x-forwarded-proto': 'https', forwarded: 'host=evil.example' }
  await sendForm(`${app.address}/forgot`, { email: ASKED.email }, { headers: evil })
  const host = { ...evil, host: 'evil.example', origin: 'http://evil.example' }
  await sendForm(`${app.address}/forgot`, { email: ASKED.email }, { headers: host }).catch(() => {})
  await expect.poll(() => post.mails.length, { timeout: 100_000, interval: 500 }).toBeGreaterThan(0)
  for (const mail of post.mails) {
    const links = [...`${mail.text} ${mail.html}`.matchAll(/https?:\/\/[^\s"<>]+/g)].map(
      ([link]) => new URL(link).origin,
    )
    expect(new Set(links)).toEqual(new Set([app.address]))
  }
})

test('tries are counted by the line they came over, whatever address they claim', async () => {
  const said: string[] = []
  for (let i = 0; i < 12; i++) {
    const claim = `198.51.100.${i}`
    const headers = { 'x-forwarded-for': claim, 'x-real-ip': claim, forwarded: `for=${claim}` }
    const typed = { email: 'bob@example.org', password: 'not his at all' }
    said.push(wordsOf(await sendForm(`${app.address}/sign-in`, typed, { headers })))
  }
  expect(said[0]).toContain('do not go together')
  expect(said.at(-1)).toContain('Too many tries')
})

test('what a name holds is shown as a name, on pages, on a label and in a list', async () => {
  const pages = ['', '/details', '/people', '/log', '/year', '/filters/hall/label', '/why/hall', '/renters', '/away']
  for (const address of [...pages.map((page) => `${home}${page}`), `${app.address}/homes`, `${app.address}/account`]) {
    const { status, text } = await ask(address, { headers: { cookie } })
    expect(status).toBe(200)
    expect([address, text.includes('<script>alert(1)'), text.includes('<img src=x')]).toEqual([address, false, false])
    expect(text).toContain('alert(1)')
  }
})

test('a picture that is also a script is refused or made anew, and what is served is a picture and nothing else', async () => {
  const script = Buffer.from('GIF89a/*\u0000\u0000*/=1;alert(1)//')
  const html = Buffer.from('<!doctype html><script>alert(1)</script>')
  const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')
  const behind = Buffer.concat([await aPicture(), Buffer.from('<script>alert(1)</script>')])
  for (const [name, bytes] of Object.entries({
    'a.gif': script,
    'a.jpg': html,
    'a.png': svg,
    '../../a.webp': behind,
  })) {
    const form = new FormData()
    form.set('photo', new File([new Uint8Array(bytes)], name, { type: 'image/jpeg' }))
    form.set('about', 'filter hall')
    const encoded = new Response(form)
    const sent = await ask(`${home}/photos/add`, {
      method: 'POST',
      body: Buffer.from(await encoded.arrayBuffer()),
      headers: { cookie, origin: app.address, 'content-type': encoded.headers.get('content-type') ?? '' },
    })
    const isTaken = String(sent.headers.location).includes('did=added')
    expect([name, sent.status, isTaken]).toEqual([name, 303, name.endsWith('.webp')])
  }
  const { text } = await ask(`${home}/photos`, { headers: { cookie } })
  const served = new Set([...text.matchAll(/\/home\/\w+\/photos\/(\w{16})/g)].map(([path]) => path))
  expect(served.size).toBe(1)
  for (const path of served) {
    const { headers, text: bytes } = await ask(`${app.address}${path}`, { headers: { cookie } })
    expect(headers).toMatchObject({ 'content-type': 'image/webp', 'x-content-type-options': 'nosniff' })
    expect(headers['cache-control']).toMatch(/private|no-store/)
    expect(bytes).not.toContain('alert(1)')
  }
})
