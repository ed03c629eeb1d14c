import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createAccountWith } from '@/lib/access/sign-up'
import { ROOT } from '@/lib/cli/root.mjs'
import { closeDatabase } from '@/lib/data/connection'
import { type RunningApp, startApp } from '../support/app'
import { freshDatabase } from '../support/fresh-database'
import { type Answered, ask, type Sent, sendForm } from '../support/web-form'

const place = freshDatabase()
const NGINX = ['/usr/sbin/nginx', '/usr/local/sbin/nginx', '/usr/bin/nginx', '/opt/homebrew/bin/nginx'].find(existsSync)
const ready = NGINX !== undefined && spawnSync('openssl', ['version']).status === 0
if (!ready) console.log('The proxy of DEVELOPERS.md is not tried: this machine has no nginx, or no openssl.')

const ASKED = { email: 'ann@example.org', password: 'four words are enough' }
let app: RunningApp
let nginx: ChildProcess
let folder = ''
let ca: Buffer
let ports = { tls: 0, plain: 0 }
let home = ''

/** The configuration as documented, for the ports and files of this test. */
function documented(appPort: string): string {
  const text = /```nginx\n([\s\S]*?)```/.exec(readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8'))?.[1] ?? ''
  const changes: [string, string][] = [
    ['listen 443 ssl', `listen 127.0.0.1:${ports.tls} ssl`],
    ['listen 80', `listen 127.0.0.1:${ports.plain}`],
    ['server_name plenum.example.org', 'server_name localhost'],
    ['https://plenum.example.org$', `https://localhost:${ports.tls}$`],
    ['/etc/ssl/plenum.pem', join(folder, 'plenum.pem')],
    ['/etc/ssl/plenum.key', join(folder, 'plenum.key')],
    ['127.0.0.1:3000', `127.0.0.1:${appPort}`],
  ]
  for (const [from] of changes) expect(text).toContain(from)
  return changes.reduce((config, [from, to]) => config.replaceAll(from, to), text)
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as { port: number }
  server.close()
  await once(server, 'close')
  return port
}

const through = (path: string, sent: Sent = {}) => ask(`${home}${path}`, { ...sent, ca })
const cookiesOf = (answer: Answered) => [answer.headers['set-cookie'] ?? []].flat()

describe.runIf(ready)('behind the proxy of DEVELOPERS.md', () => {
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'plenum-proxy-'))
    ports = { tls: await freePort(), plain: await freePort() }
    home = `https://localhost:${ports.tls}`
    const subject = ['-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost']
    const files = ['-keyout', join(folder, 'plenum.key'), '-out', join(folder, 'plenum.pem')]
    const newKey = ['-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-days', '2']
    execFileSync('openssl', ['req', ...newKey, ...subject, ...files], { stdio: 'ignore' })
    ca = readFileSync(join(folder, 'plenum.pem'))
    await createAccountWith(ASKED, [])
    await closeDatabase()
    app = await startApp({ env: { PUBLIC_URL: home }, folder: place.folder })
    const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map(
      (kind) => `${kind}_temp_path ${join(folder, kind)};`,
    )
    // As root its workers are another account, which may not write into this test's folder.
    const user = process.getuid?.() === 0 ? 'user root;' : ''
    const config = `daemon off; ${user} pid ${join(folder, 'pid')}; error_log stderr; events {}
      http { access_log off; ${temporary.join(' ')}\n${documented(new URL(app.address).port)} }`
    writeFileSync(join(folder, 'nginx.conf'), config)
    nginx = spawn(NGINX ?? '', ['-p', folder, '-e', 'stderr', '-c', join(folder, 'nginx.conf')], { stdio: 'ignore' })
    process.once('exit', () => nginx.kill())
    for (let tries = 0; tries < 100 && !(await through('/healthz').catch(() => null)); tries++) await sleep(50)
  }, 120_000)

  afterAll(async () => {
    nginx?.kill('SIGTERM')
    if (nginx && nginx.exitCode === null) await once(nginx, 'exit')
    await app?.stop()
    rmSync(folder, { recursive: true, force: true })
  })

  test('it answers by TLS, says to come back so, and leads there from a plain address', async () => {
    const healthy = await through('/healthz')
    expect(healthy).toMatchObject({ status: 200, text: '{"ok":true}' })
    const page = await through('/')
    expect(page.status).toBe(200)
    expect(page.headers['strict-transport-security']).toBe('max-age=31536000')
    expect(await ask(`http://localhost:${ports.plain}/sample?a=b`)).toMatchObject({
      status: 301,
      headers: { location: `${home}/sample?a=b` },
    })
  })

  test('a household file of 9 MB reaches the form that judges it', async () => {
    const file = new File([Buffer.alloc(9_000_000, ' ')], 'homes.json', { type: 'application/json' })
    expect((await sendForm(`${home}/bring`, { file }, { ca })).status).toBe(200)
  })

  describe.runIf(existsSync(join(ROOT, 'app/sign-in/page.tsx')))('signing in', () => {
    test('works through it, with cookies for TLS only', async () => {
      const signedIn = await sendForm(`${home}/sign-in`, ASKED, { ca })
      expect(signedIn.status).toBe(303)
      const cookies = cookiesOf(signedIn)
      const session = cookies.find((line) => line.includes('plenum.session_token='))
      expect(session).toMatch(/^__Secure-plenum/)
      for (const line of cookies) expect(line).toMatch(/; Secure/i)
      const cookie = cookies.map((line) => line.split(';')[0]).join('; ')
      // Whoever is signed in is sent on from there; whoever is not is asked.
      expect((await through('/sign-in', { headers: { cookie } })).status).toBe(307)
      expect((await through('/sign-in')).status).toBe(200)
    })

    test('an address that a visitor claims is not believed', async () => {
      const db = new Database(join(place.folder, 'plenum.db'))
      db.exec('DELETE FROM "Attempt"')
      for (const claimed of ['203.0.113.7', '203.0.113.8', '203.0.113.9']) {
        const headers = { 'x-forwarded-for': claimed, 'x-real-ip': claimed, forwarded: `for=${claimed}` }
        await sendForm(`${home}/sign-in`, { ...ASKED, password: 'not the password' }, { ca, headers })
      }
      // One address and one e-mail were counted, three times each.
      expect(db.prepare('SELECT "count" FROM "Attempt"').pluck().all()).toEqual([3, 3])
      db.close()
    })
  })
})
