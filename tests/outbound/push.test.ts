import { execFileSync, spawnSync } from 'node:child_process'
import { createECDH, randomBytes } from 'node:crypto'
import { once } from 'node:events'
import { readFileSync, statSync } from 'node:fs'
import { Agent, createServer, type Server } from 'node:https'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { listPushIds, savePushTarget } from '@/lib/data/push-targets'
import { parsePushTarget } from '@/lib/forms/outbound-forms'
import { canPush, pushKeys } from '@/lib/outbound/push-keys'
import { push } from '@/lib/outbound/pusher'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'
import { readNotice } from '../support/read-notice'

const place = freshDatabase()
const ready = spawnSync('openssl', ['version']).status === 0
if (!ready) console.log('Notices are not tried: this machine has no openssl.')

const browser = createECDH('prime256v1')
const secret = randomBytes(16)
let server: Server
let agent: Agent
let status = 201
let got: { headers: Record<string, unknown>; body: Buffer } | undefined

beforeAll(async () => {
  // Only an installation reached over https sends notices.
  process.env.PUBLIC_URL = 'https://plenum.example.org'
  if (!ready) return
  const [key, cert] = [join(place.folder, 'key.pem'), join(place.folder, 'cert.pem')]
  const made = ['req', '-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', '-subj', '/CN=localhost']
  execFileSync('openssl', [...made, '-addext', 'subjectAltName=DNS:localhost', '-keyout', key, '-out', cert], {
    stdio: 'ignore',
  })
  server = createServer({ key: readFileSync(key), cert: readFileSync(cert) }, (request, response) => {
    const chunks: Buffer[] = []
    request.on('data', (chunk) => chunks.push(chunk))
    request.on('end', () => {
      got = { headers: request.headers, body: Buffer.concat(chunks) }
      response.writeHead(status).end()
    })
  }).listen(0, 'localhost')
  await once(server, 'listening')
  agent = new Agent({ ca: readFileSync(cert) })
  browser.generateKeys()
})
afterAll(() => server?.close())

async function target(name: string): Promise<string> {
  const viewer = await someone(name)
  const endpoint = `https://localhost:${(server.address() as AddressInfo).port}/${name}`
  const keys = { p256dh: browser.getPublicKey('base64url'), auth: secret.toString('base64url') }
  await savePushTarget(as(viewer), { endpoint, ...keys })
  return (await listPushIds(viewer.accountId))[0] ?? ''
}

function message(to: string) {
  const words = { subject: 'Change the filter: wall grille, overdue', text: '', html: '' }
  return { id: 'abcd1234abcd1234', channel: 'push', kind: 'digest', to, tries: 0, createdAt: AT, ...words } as const
}

test.runIf(ready)('what a browser gets can be read with its own keys only, and says what is due', async () => {
  status = 201
  const to = await target('ann')
  expect(await push(message(to), { agent })).toEqual({ kind: 'sent' })
  expect(readNotice(got?.body ?? Buffer.alloc(0), { keys: browser, secret })).toMatchObject({
    title: 'Change the filter: wall grille, overdue',
    path: '/homes',
  })
  expect(got?.headers.authorization).toMatch(/^vapid t=/)
  expect(got?.body.includes('filter')).toBe(false)
})

test.runIf(ready)('a browser that is gone is forgotten, and a busy service is tried again', async () => {
  const to = await target('ben')
  status = 429
  expect((await push(message(to), { agent })).kind).toBe('later')
  status = 410
  expect((await push(message(to), { agent })).kind).toBe('failed')
  expect(await listPushIds('account-ben')).toEqual([])
})

test('the keys are made once and are nobody else’s to read', () => {
  const keys = pushKeys(place.folder)
  expect(pushKeys(place.folder)).toEqual(keys)
  expect(statSync(join(place.folder, 'push-keys.json')).mode & 0o077).toBe(0)
  process.env.PUBLIC_URL = 'http://plenum.example.org'
  expect(canPush()).toBe(false)
  process.env.PUBLIC_URL = 'https://plenum.example.org'
  expect(canPush()).toBe(true)
  process.env.PUBLIC_URL = 'https://plenum.example.org'
})

test('a browser’s address leads to a public service, never into this server’s own network', () => {
  const asked = (endpoint: string) => {
    const form = new FormData()
    for (const [name, value] of Object.entries({ endpoint, p256dh: 'B'.repeat(87), auth: 'a'.repeat(22) }))
      form.set(name, value)
    return parsePushTarget(form).ok
  }
  expect(asked('https://push.example.net/send/abc')).toBe(true)
  for (const inside of [
    'http://push.example.net/x',
    'https://localhost/x',
    'https://127.0.0.1/x',
    'https://[::1]/x',
    'https://2130706433/x',
    'https://nas.local/x',
    'https://push.example.net:8443/x',
    'https://user@push.example.net/x',
    'x',
  ])
    expect(asked(inside), inside).toBe(false)
})
