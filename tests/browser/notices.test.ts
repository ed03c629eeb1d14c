import { execFileSync } from 'node:child_process'
import { createECDH, randomBytes } from 'node:crypto'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { Agent, createServer, type Server } from 'node:https'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { findAccountByEmail } from '@/lib/data/accounts'
import { findPushTarget, listPushIds, savePushTarget } from '@/lib/data/push-targets'
import { push } from '@/lib/outbound/pusher'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, newPage, screenshot } from '../support/browser'
import { readNotice } from '../support/read-notice'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

// No browser here reaches a service for notices. So `pushManager.subscribe` answers with a subscription of the shape
// that RFC 8030 and the Push API describe; all that comes before it and after it is real: the page, the worker, what
// the server sends, its encryption, and the notice that the worker shows.
const keys = createECDH('prime256v1')
keys.generateKeys()
const secret = randomBytes(16)
const SUBSCRIBE = `PushManager.prototype.subscribe = async function (options) {
  const key = options.applicationServerKey
  window.askedWith = { visible: options.userVisibleOnly, key: typeof key === 'string' ? key : 'bytes' }
  return { toJSON: () => ({ endpoint: 'https://push.example.net/send/ann', keys: {
    p256dh: '${keys.getPublicKey('base64url')}', auth: '${secret.toString('base64url')}' } }) }
}`

let app: RunningApp
let back: () => Promise<void>
let service: Server
let agent: Agent
const got: { headers: Record<string, unknown>; body: Buffer }[] = []

beforeAll(async () => {
  app = await startApp({ env: { PUBLIC_URL: 'https://plenum.example.org' } })
  back = besideApp(app)
  process.env.PUBLIC_URL = 'https://plenum.example.org'
  await anAccount('ann')
  const [key, cert] = [join(app.folder, 'key.pem'), join(app.folder, 'cert.pem')]
  const made = ['req', '-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', '-subj', '/CN=localhost']
  const named = ['-addext', 'subjectAltName=DNS:localhost']
  execFileSync('openssl', [...made, ...named, '-keyout', key, '-out', cert], { stdio: 'ignore' })
  service = createServer({ key: readFileSync(key), cert: readFileSync(cert) }, (request, response) => {
    const chunks: Buffer[] = []
    request.on('data', (chunk) => chunks.push(chunk))
    request.on('end', () => {
      got.push({ headers: request.headers, body: Buffer.concat(chunks) })
      response.writeHead(201).end()
    })
  }).listen(0, 'localhost')
  await once(service, 'listening')
  agent = new Agent({ ca: readFileSync(cert) })
}, 120_000)
afterAll(async () => {
  service?.close()
  await back?.()
  delete process.env.PUBLIC_URL
  await app?.stop()
})

test('a browser asks for notices, gets one that only it can read, shows it, and is let go', async () => {
  const page = await newPage({ baseURL: app.address })
  await signInOn(page, app.address, 'ann')
  await page.context().grantPermissions(['notifications'], { origin: app.address })
  await page.addInitScript(SUBSCRIBE)
  await page.goto('/account/reminders')
  const ask = page.getByRole('button', { name: 'Show notices in this browser' })
  await ask.click()
  await page.getByText('Say first when you want to be reminded').waitFor()
  await page.getByLabel('Send none').check()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved.').waitFor()
  await ask.click()
  await page.getByText('This browser shows a notice').waitFor()
  expect(await axeFindings(page)).toEqual([])
  await screenshot(page, 'notices')
  const { publicKey } = JSON.parse(readFileSync(join(app.folder, 'push-keys.json'), 'utf8'))
  expect(await page.evaluate('window.askedWith')).toEqual({ visible: true, key: publicKey })

  const account = await findAccountByEmail('ann@example.org')
  const [id = ''] = await listPushIds(account?.id ?? '')
  const target = await findPushTarget(id)
  expect(target).toMatchObject({ endpoint: 'https://push.example.net/send/ann' })
  // The same browser at an address of this machine: the form lets no such address through.
  const endpoint = `https://localhost:${(service.address() as AddressInfo).port}/ann`
  const viewer = { kind: 'account', accountId: account?.id ?? '', name: 'ann', administrator: true } as const
  const act = { viewer, at: new Date().toISOString(), door: 'page' } as const
  await savePushTarget(act, { ...(target as NonNullable<typeof target>), endpoint })
  const to = (await listPushIds(viewer.accountId)).find((found) => found !== id) ?? ''
  const words = { subject: 'Change the filter: wall grille, overdue', text: '', html: '' }
  const message = { id: 'abcd1234abcd1234', channel: 'push', kind: 'digest', to, tries: 0, ...words } as const
  expect(await push({ ...message, createdAt: act.at }, { agent })).toEqual({ kind: 'sent' })
  expect(got[0]?.headers).toMatchObject({ 'content-encoding': 'aes128gcm', urgency: expect.any(String) })
  const notice = readNotice(got[0]?.body ?? Buffer.alloc(0), { keys, secret })

  // What was decrypted is handed to the real worker, as the browser would after decrypting it itself.
  const session = await page.context().newCDPSession(page)
  const registered = new Promise<string>((resolve) =>
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      if (registrations[0]) resolve(registrations[0].registrationId)
    }),
  )
  await session.send('ServiceWorker.enable')
  await session.send('ServiceWorker.deliverPushMessage', {
    origin: app.address,
    registrationId: await registered,
    data: JSON.stringify(notice),
  })
  const shown = `navigator.serviceWorker.ready.then(async (worker) => {
    for (let i = 0; i < 100; i++) {
      const [one] = await worker.getNotifications()
      if (one) return { title: one.title, path: one.data.path }
      await new Promise((resolve) => setTimeout(resolve, 50))
    }
  })`
  expect(await page.evaluate(shown)).toEqual({ title: words.subject, path: '/homes' })

  await page.reload()
  await page.getByRole('button', { name: 'End them everywhere' }).click()
  await page.getByText('No browser shows notices any more.').waitFor()
  expect(await listPushIds(viewer.accountId)).toEqual([])
})

test('a browser that may not show notices is told where that can be changed', async () => {
  const page = await newPage({ baseURL: app.address })
  await signInOn(page, app.address, 'ann')
  await page.addInitScript("Notification.requestPermission = async () => 'denied'")
  await page.goto('/account/reminders')
  await page.getByRole('button', { name: 'Show notices in this browser' }).click()
  await page.getByText('Its settings for this site can change that').waitFor()
})
