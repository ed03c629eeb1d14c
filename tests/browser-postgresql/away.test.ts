import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { closeDatabase } from '@/lib/data/connection'
import { cookieText, sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { createDatabase, type PostgresServer, startPostgres, TEMPLATE } from '../support/postgres'
import { ask, sendForm, wordsOf } from '../support/web-form'

// Two processes of the app on one server and one data folder, over HTTP and without scripts, while the server goes away.
const ASKED = { email: 'ann@example.org', password: 'four words are enough' }
const before = { DATABASE_URL: process.env.DATABASE_URL, DATA_DIR: process.env.DATA_DIR }
let server: PostgresServer
let folder = ''
let databaseUrl = ''
let apps: RunningApp[] = []
let home = ''
let cookie = ''

beforeAll(async () => {
  server = await startPostgres({ fsync: 'on' })
  folder = mkdtempSync(join(tmpdir(), 'plenum-two-'))
  databaseUrl = await createDatabase(server.port, 'two', TEMPLATE)
  Object.assign(process.env, { DATABASE_URL: databaseUrl, DATA_DIR: folder })
  const made = await createAccountWith(ASKED, [aHousehold()])
  home = made.ok ? (made.ids[0] ?? '') : ''
  const signedIn = await signIn(sentWith(), ASKED)
  cookie = cookieText(signedIn.ok ? signedIn.cookies : null)
  await closeDatabase()
  apps = await Promise.all([startApp({ folder, databaseUrl }), startApp({ folder, databaseUrl })])
}, 180_000)

afterAll(async () => {
  await Promise.all(apps.map((app) => app.stop()))
  await closeDatabase()
  server?.remove()
  rmSync(folder, { recursive: true, force: true })
  for (const [key, value] of Object.entries(before)) {
    if (value === undefined) delete process.env[key]
    else process.env[key] = value
  }
})

const see = (app: RunningApp, path: string) => ask(`${app.address}${path}`, { headers: { cookie } })

async function untilWell(app: RunningApp): Promise<void> {
  const end = performance.now() + 10_000
  while ((await see(app, '/healthz')).status !== 200) {
    if (performance.now() > end) throw new Error('the app did not find its database again')
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
}

test('a session of one process is known to the other, and what one saves the other shows', async () => {
  for (const app of apps) expect(wordsOf(await see(app, `/home/${home}`))).toContain('Larkspur Court 2')
  const [one, two] = apps as [RunningApp, RunningApp]
  const saved = await sendForm(`${one.address}/account`, { name: 'Ann of the hill' }, { headers: { cookie } })
  expect(saved.status).toBeLessThan(400)
  expect(wordsOf(await see(two, '/account'))).toContain('Ann of the hill')
})

test('while the server is away the pages say so, nothing is taken for saved, and both find it again by themselves', async () => {
  server.stop()
  for (const app of apps) {
    // The first question may meet a connection that broke; from then on it is known that nobody answers.
    await see(app, '/homes')
    for (const path of ['/', '/homes', `/home/${home}`])
      expect(wordsOf(await see(app, path)), path).toMatch(/The database does not answer.*Nothing was saved.*Try again/)
    expect(await see(app, '/healthz')).toMatchObject({ status: 503, text: '{"ok":false}' })
    const refused = await sendForm(`${app.address}/sign-in`, ASKED)
    expect(wordsOf(refused)).toMatch(/database does not answer/)
    expect(refused.text).toContain(`value="${ASKED.email}"`)
    expect(refused.text).not.toContain(ASKED.password)
    // What needs no database goes on: nobody with a cold house waits for one.
    expect((await ask(`${app.address}/check`)).status).toBe(200)
    expect(app.output()).not.toContain('plenum:plenum')
  }
  await expect(startApp({ folder, databaseUrl })).rejects.toThrow(/The database does not answer.*ECONNREFUSED/)
  server.start()
  for (const app of apps) {
    await untilWell(app)
    expect(wordsOf(await see(app, `/home/${home}`))).toContain('Larkspur Court 2')
    expect((await sendForm(`${app.address}/sign-in`, ASKED)).status).toBe(303)
  }
})

// Tries to sign in are limited by where they come from, and all of these come from here.
const MOST = 45

test('the server restarted and one process killed under load: every session that was confirmed is one, and the other process goes on', async () => {
  const [one, two] = apps as [RunningApp, RunningApp]
  const confirmed: string[] = []
  let tries = 0
  let isOver = false
  async function signInAgain(app: RunningApp): Promise<void> {
    while (!isOver && tries++ < MOST) {
      const sent = await sendForm(`${app.address}/sign-in`, ASKED).catch(() => null)
      const cookies = [sent?.headers['set-cookie'] ?? []].flat()
      if (sent?.status === 303) confirmed.push(cookies.map((text) => text.split(';')[0]).join('; '))
      else await new Promise((resolve) => setTimeout(resolve, 200))
    }
  }
  const writers = [one, two, two].map(signInAgain)
  while (confirmed.length < 4) await new Promise((resolve) => setTimeout(resolve, 20))
  server.stop('immediate')
  server.start()
  one.process.kill('SIGKILL')
  const many = confirmed.length
  await untilWell(two)
  while (confirmed.length < many + 3 && tries < MOST) await new Promise((resolve) => setTimeout(resolve, 20))
  isOver = true
  await Promise.all(writers)
  expect(confirmed.length).toBeGreaterThanOrEqual(many + 3)
  for (const own of confirmed) {
    const page = await ask(`${two.address}/account`, { headers: { cookie: own } })
    expect(wordsOf(page)).toContain('You sign in as ann@example.org')
  }
})
