import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import { createServer } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { ROOT } from '@/lib/cli/root.mjs'
import { startApp } from '../support/app'

/** Every process of a session, `npm start` and all below it, whoever its parent is by now. */
function processesOf(session: number): string[] {
  const rows = execFileSync('ps', ['-eo', 'sid=,stat=,args='], { encoding: 'utf8' }).split('\n')
  return rows.filter((row) => Number(row.trim().split(/\s+/)[0]) === session && !/^\s*\d+\s+Z/.test(row))
}

async function collect(child: ChildProcess): Promise<{ status: number | null; out: string; err: string }> {
  let out = ''
  let err = ''
  child.stdout?.on('data', (part) => (out += part))
  child.stderr?.on('data', (part) => (err += part))
  const [status] = await once(child, 'close')
  return { status, out, err }
}

const start = (env: { PORT?: string; HOST?: string }, args = ['lib/cli/run.mjs', 'start']) =>
  collect(spawn(process.execPath, args, { cwd: ROOT, env: { ...process.env, ...env } }))

test('the last line printed is an address that answers, on this machine only', async () => {
  const app = await startApp()
  try {
    expect(app.output().trim().split('\n').at(-1)).toBe(`Plenum is ready. Open ${app.address}`)
    expect((await fetch(app.address)).status).toBe(200)
    const port = new URL(app.address).port
    const listening = execFileSync('cat', ['/proc/net/tcp', '/proc/net/tcp6'], { encoding: 'utf8' })
      .split('\n')
      .map((row) => row.trim().split(/\s+/))
      .filter((row) => row[3] === '0A' && Number.parseInt(row[1]?.split(':')[1] ?? '', 16) === Number(port))
    expect(listening.map((row) => row[1]?.split(':')[0])).toEqual(['0100007F'])
  } finally {
    expect(await app.stop()).toBe(0)
  }
})

for (const signal of ['SIGTERM', 'SIGINT'] as const)
  test(`${signal} to npm start ends it whole, with a browser still connected`, async () => {
    // A session of its own, as a terminal would give it, so that nothing that escapes is overlooked.
    const child = spawn('npm', ['start'], {
      cwd: ROOT,
      env: { ...process.env, PORT: '0', NODE_ENV: 'production' },
      detached: true,
    })
    const session = child.pid as number
    const result = collect(child)
    let text = ''
    const address = await new Promise<string>((resolve, reject) => {
      child.stdout.on('data', (part) => {
        text += part
        const found = /Open (\S+)/.exec(text)?.[1]
        if (found) resolve(found)
      })
      child.once('exit', () => reject(new Error(text)))
    })
    await (await fetch(address)).text()
    expect(processesOf(session).length).toBeGreaterThan(1)
    const began = Date.now()
    // Ctrl-C goes to everything in front of the terminal, a service manager's signal to npm alone.
    process.kill(signal === 'SIGINT' ? -session : session, signal)
    await result
    while (processesOf(session).length > 0 && Date.now() - began < 15_000) await sleep(50)
    expect(processesOf(session)).toEqual([])
    expect(Date.now() - began).toBeLessThan(15_000)
  })

test('a taken port is one plain sentence and exit status 1', async () => {
  const other = createServer().listen(0, '127.0.0.1')
  await once(other, 'listening')
  const { port } = other.address() as { port: number }
  const { status, out, err } = await start({ PORT: `${port}` })
  other.close()
  expect({ status, out }).toEqual({ status: 1, out: '' })
  expect(err.trim().split('\n')).toHaveLength(1)
  expect(err).toContain(`Port ${port} is already in use`)
})

test('a port that is none, and a host that is not ours, are one plain sentence each', async () => {
  for (const env of [{ PORT: 'eighty' }, { PORT: '70000' }, { PORT: '0', HOST: '192.0.2.1' }]) {
    const { status, err } = await start(env)
    expect(status).toBe(1)
    expect(err.trim().split('\n')).toHaveLength(1)
    expect(err).toMatch(/^(PORT is "|Plenum cannot listen on HOST 192\.0\.2\.1)/)
  }
})

test('an old Node is told which one is needed', async () => {
  for (const command of ['start', 'test', 'setup']) {
    const script = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '18.20.4' } })
      process.argv[2] = '${command}'; import('./lib/cli/run.mjs')`
    const { status, err } = await start({}, ['-e', script, '-'])
    expect(status).toBe(1)
    expect(err).toBe('Plenum needs Node 20.19 or newer; this is 18.20.4. Get it from nodejs.org.\n')
  }
})

test('TLS is promised only where the installation has it, and a visitor cannot claim it', async () => {
  const claim = { headers: { 'x-forwarded-proto': 'https' } }
  const answers = async (env: Record<string, string>) => {
    const app = await startApp({ env })
    const [plain, claimed] = await Promise.all([fetch(app.address), fetch(app.address, claim)])
    await app.stop()
    return [plain, claimed].map((answer) => answer.headers.has('strict-transport-security'))
  }
  expect(await answers({})).toEqual([false, false])
  expect(await answers({ TRUST_PROXY: '1' })).toEqual([false, true])
  expect(await answers({ PUBLIC_URL: 'https://home.example' })).toEqual([true, true])
})
