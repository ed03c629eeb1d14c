import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { request } from 'node:http'
import { connect, type Socket } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type RunningApp, startApp } from '../support/app'
import { ask } from '../support/web-form'

// What somebody can do to the built app without an account, by the way of sending alone.

let app: RunningApp
beforeAll(async () => {
  app = await startApp({ databaseUrl: null })
})
afterAll(() => app.stop())

const MB = 1_000_000
const PATHS = ['/sign-in', '/bring', '/check/answer', '/find/turned-on', '/homes/record/kept', '/healthz', '/']

/** Megabytes of memory that the app holds; 0 where this system does not tell. */
function memory(): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${app.process.pid}/status`, 'utf8'))?.[1] ?? 0) / 1024
  } catch {
    return 0
  }
}

/** Sends so many megabytes of a form as fast as they are taken; gives the answer, and how much had gone by then. */
function pour(
  path: string,
  megabytes: number,
  chunked: boolean,
): Promise<{ status: number; sent: number; peak: number }> {
  return new Promise((resolve) => {
    let [sent, peak, status] = [0, 0, 0]
    const length = chunked ? {} : { 'content-length': String(megabytes * MB) }
    const headers = { 'content-type': 'multipart/form-data; boundary=edge', origin: app.address, ...length }
    const asked = request(`${app.address}${path}`, { method: 'POST', agent: false, headers }, (answer) => {
      status = answer.statusCode ?? 0
      answer.resume().on('end', () => asked.destroy())
    })
    asked.on('error', () => {})
    asked.on('close', () => resolve({ status, sent, peak }))
    const start = Buffer.from('--edge\r\ncontent-disposition: form-data; name="text"\r\n\r\n')
    function next(): void {
      peak = Math.max(peak, memory())
      if (asked.destroyed || status !== 0) return
      if (sent === megabytes) return void asked.end()
      asked.write(sent++ === 0 ? start : Buffer.alloc(MB, 'a'), () => setImmediate(next))
    }
    next()
  })
}

test('a form that says it is a hundred megabytes is refused before it is read, in words', async () => {
  for (const path of PATHS) {
    const { status, sent } = await pour(path, 100, false)
    // Nothing at all where the line was closed while still being filled.
    expect([path, [413, 0].includes(status), sent < 50]).toEqual([path, true, true])
  }
  const told = await ask(`${app.address}/bring`, { method: 'POST', headers: { 'content-length': String(100 * MB) } })
  expect([told.status, told.text]).toEqual([413, expect.stringMatching(/larger than 12 MB.*account -- bring/)])
})

test('one that does not say how large it is takes no memory with it', async () => {
  const before = memory()
  for (const path of PATHS) {
    const { peak } = await pour(path, 60, true)
    expect([path, peak - before < 250]).toEqual([path, true])
  }
  expect((await ask(`${app.address}/healthz`)).status).toBe(200)
})

test('two hundred lines that send letter by letter are cut, and others are answered meanwhile', async () => {
  const { hostname, port } = new URL(app.address)
  const slow: Socket[] = []
  let open = 0
  for (let i = 0; i < 200; i++) {
    const socket = connect(Number(port), hostname === 'localhost' ? '127.0.0.1' : hostname)
    await once(socket, 'connect')
    open++
    socket.on('error', () => {})
    socket.on('close', () => open--)
    socket.resume()
    socket.write('GET / HTTP/1.1\r\nHost: localhost\r\nX-Slow: ')
    slow.push(socket)
  }
  const drip = setInterval(() => {
    for (const socket of slow) if (!socket.destroyed) socket.write('a')
  }, 500)
  const answers = []
  for (let i = 0; i < 20; i++) answers.push((await ask(`${app.address}/check`)).status)
  expect(new Set(answers)).toEqual(new Set([200]))
  expect(open).toBeGreaterThan(0)
  const until = Date.now() + 50_000
  while (open > 0 && Date.now() < until) await sleep(250)
  clearInterval(drip)
  for (const socket of slow) socket.destroy()
  expect(open).toBe(0)
})

test('a request that two readers would understand as two different ones is answered by no page', async () => {
  const { port } = new URL(app.address)
  const tricks = [
    'POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
    'POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\nContent-Length: 5\r\n\r\nabcd',
    'POST / HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: xchunked\r\n\r\n0\r\n\r\n',
    'GET / HTTP/1.1\r\nHost: localhost\r\nX-A: a\r\n b: c\r\n\r\n',
    `GET / HTTP/1.1\r\nHost: localhost\r\nCookie: ${'a'.repeat(20_000)}\r\n\r\n`,
  ]
  for (const trick of tricks) {
    const socket = connect(Number(port), '127.0.0.1')
    let text = ''
    socket.on('data', (part) => {
      text += part
    })
    socket.on('error', () => {})
    socket.write(trick)
    await Promise.race([once(socket, 'close'), sleep(3000)])
    socket.destroy()
    expect([trick.slice(0, 90), text.slice(0, 12)]).toEqual([
      trick.slice(0, 90),
      expect.stringMatching(/^HTTP\/1.1 4\d\d|^$/),
    ])
  }
})
