import fc from 'fast-check'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { hashToken, newToken } from '@/lib/access/tokens'
import { parseForgot } from '@/lib/forms/outbound-forms'
import { readLink } from '@/lib/outbound/act-link'
import { written } from '@/lib/outbound/link-mail'
import { type Mailer, mailer } from '@/lib/outbound/mailer'
import { freshDatabase } from '../support/fresh-database'
import { aPlantedHome, type PlantedHome } from '../support/planted-home'
import { openPostOffice, type PostOffice } from '../support/post-office'
import { storedText } from '../support/stored'

freshDatabase()

let post: PostOffice
let sender: Mailer
let planted: PlantedHome

beforeAll(async () => {
  post = await openPostOffice()
  sender = mailer({ url: post.url, from: 'Plenum <plenum@example.org>' })
  planted = await aPlantedHome()
})
afterAll(async () => {
  sender.close()
  await post.close()
})

const BREAKS = ['\r\n', '\n', '\r', '\u2028', '\u0085', '\u0000', '=?utf-8?q?=0D=0ABcc:x?=', '\r\n\r\n', '\r\n ']
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(...BREAKS, 'Bcc: evil@example.net', 'X-Evil: 1', '<script>', '\u202e', '🏠'),
      fc.string({ unit: 'grapheme', maxLength: 9 }),
    ),
    { minLength: 1, maxLength: 7 },
  )
  .map((parts) => parts.join(''))
const HEADERS = ['auto-submitted', 'content-type', 'date', 'from', 'message-id', 'mime-version', 'subject', 'to']

test('whatever stands in a name or a subject, a mail has its own headers, one recipient and one body', async () => {
  let count = 0
  const property = fc.asyncProperty(hostile, hostile, async (name, home) => {
    const before = post.mails.length
    const made = written([
      { kind: 'heading', say: `${name} invites you into ${home}` },
      { kind: 'text', say: home },
    ])
    const id = `m${count++}`
    const at = '2026-11-25T18:00:00.000Z'
    const message = {
      id,
      channel: 'mail',
      kind: 'invitation',
      accountId: 'a',
      to: 'bob@example.org',
      createdAt: at,
      tries: 0,
      ...made,
    }
    expect(await sender.send(message as never)).toEqual({ kind: 'sent' })
    const [mail, ...others] = post.mails.slice(before)
    expect(others).toEqual([])
    expect([...(mail?.headers.keys() ?? [])].sort()).toEqual(HEADERS)
    expect([mail?.to].flat().flatMap((to) => to?.value.map(({ address }) => address))).toEqual(['bob@example.org'])
    expect(mail?.bcc ?? mail?.cc).toBeUndefined()
    expect(String(mail?.html)).not.toContain('<script>')
  })
  await fc.assert(property, { numRuns: 80, endOnFailure: true })
}, 120_000)

test('no address with a break, a blank, a comma or a second one in it is taken for an e-mail', () => {
  fc.assert(
    fc.property(hostile, fc.constantFrom('ann@example.org', '@', ','), fc.nat({ max: 20 }), (text, valid, at) => {
      const email = `${valid.slice(0, at)}${text}${valid.slice(at)}`
      const form = new FormData()
      form.set('email', email)
      const read = parseForgot(form)
      if (read.ok) expect(read.value.email).toMatch(/^[^\s\p{Cc}<>,;:"@]+@[^\s\p{Cc}<>,;:"@]+$/u)
    }),
    { numRuns: 2000 },
  )
})

test('a button of a mail of which any sign was changed, left out or doubled opens nothing', () => {
  const { act } = planted.tokens
  const today = new Date().toISOString().slice(0, 10)
  expect(readLink(act, today)).toMatchObject({ householdId: planted.home })
  for (let at = 0; at < act.length; at++) {
    const [before, sign, after] = [act.slice(0, at), act[at] ?? '', act.slice(at + 1)]
    for (const other of [sign === 'A' ? 'B' : 'A', '', sign + sign, '.', '='])
      if (other !== sign) expect([at, other, readLink(`${before}${other}${after}`, today)]).toEqual([at, other, null])
  }
})

test('what opens something by itself has 256 bits, and the database keeps none of it', async () => {
  const made = Array.from({ length: 2000 }, newToken)
  expect(new Set(made).size).toBe(made.length)
  for (const token of made) expect(Buffer.from(token, 'base64url')).toHaveLength(32)
  const text = await storedText()
  const { brief, invitation, renter, api, feed } = planted.tokens
  for (const token of [brief, invitation, renter, api.replace('plenum_', ''), feed.replace('.ics', '')]) {
    expect(token).toMatch(/^[\w-]{43}$/)
    expect(text).not.toContain(token)
  }
  // So that the last line says something: what is kept of one is found.
  expect(text).toContain(hashToken(renter))
  // A session's cookie is signed: what the database keeps of it does not open it.
  const [session] = planted.cookies.owner
  expect(text).not.toContain(session?.value)
})
