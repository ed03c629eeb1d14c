// @ts-check
import { createServer, get } from 'node:http'
import { isIPv6 } from 'node:net'
import { settleForwarded, trustsProxy } from './forwarded.mjs'
import { plainError, prepare } from './prepare.mjs'
import { ROOT } from './root.mjs'
import { refuseTooLarge } from './too-large.mjs'

// The server lives in this very process, without a child that could outlive it. It listens before it builds, so that
// a taken port is known at once; whoever asks too early is told to wait.

const STOP_WITHIN_MS = 5000

// Whoever sends a header letter by letter holds a line open for nothing. A body has longer: a year's export of a
// thermostat over a slow line.
const PATIENCE = { headersTimeout: 20_000, requestTimeout: 300_000, connectionsCheckingInterval: 5000 }

/** `npm start`. */
export async function main() {
  const { host, port } = readAddress(process.env)
  /** @type {import('node:http').RequestListener} */
  let handle = (_request, response) => {
    response.writeHead(503, { 'retry-after': '5', 'content-type': 'text/plain; charset=utf-8' })
    response.end('Plenum is starting. Try again in a moment.\n')
  }
  const server = createServer(PATIENCE, (request, response) => handle(request, response))
  const bound = await listen(server, host, port)
  let close = async () => {}
  stopOnSignals(server, () => close())

  const address = `http://${namedHost(host)}:${bound}`
  await prepare({ root: ROOT })
  process.chdir(ROOT)
  Object.assign(process.env, { NODE_ENV: 'production', PORT: `${bound}` })
  process.env.PUBLIC_URL ||= address
  const trustProxy = trustsProxy(process.env)

  const { default: next } = await import('next')
  // @ts-expect-error next is CommonJS: seen from here its function is the default export itself
  const app = next({ dev: false, dir: ROOT, hostname: host, port: bound, httpServer: server })
  await app.prepare()
  close = () => app.close()
  const render = app.getRequestHandler()
  handle = (request, response) => {
    if (refuseTooLarge(request, response)) return
    settleForwarded(request.headers, request.socket.remoteAddress, trustProxy)
    render(request, response).catch((/** @type {unknown} */ error) => {
      console.error(error)
      if (!response.headersSent) response.writeHead(500)
      response.end()
    })
  }
  await answers(host, bound)
  console.log(`Plenum is ready. Open ${address}`)
}

/**
 * @param {NodeJS.ProcessEnv} env
 * @returns {{ host: string, port: number }} port 0 takes any free one
 */
export function readAddress(env) {
  const port = env.PORT || '3000'
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65535) {
    throw plainError(`PORT is "${port}", but a port is a number from 1 to 65535.`)
  }
  return { host: env.HOST || '127.0.0.1', port: Number(port) }
}

/** @param {string} host */
function namedHost(host) {
  if (['127.0.0.1', '0.0.0.0', '::', '::1'].includes(host)) return 'localhost'
  return isIPv6(host) ? `[${host}]` : host
}

/**
 * @param {import('node:http').Server} server
 * @param {string} host
 * @param {number} port
 * @returns {Promise<number>} the port it got
 */
function listen(server, host, port) {
  return new Promise((resolve, reject) => {
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => reject(listenError(error, host, port)))
    server.listen(port, host, () => resolve(/** @type {import('node:net').AddressInfo} */ (server.address()).port))
  })
}

/**
 * @param {NodeJS.ErrnoException} error
 * @param {string} host
 * @param {number} port
 */
function listenError(error, host, port) {
  if (error.code === 'EADDRINUSE') {
    return plainError(
      `Port ${port} is already in use: Plenum may be running already. Stop the other program, or choose another port: PORT=${port === 65535 ? 3000 : port + 1} npm start`,
    )
  }
  if (error.code === 'EACCES') return plainError(`Port ${port} needs special rights here. Choose one from 1024 up.`)
  return plainError(`Plenum cannot listen on HOST ${host}: ${error.message}`)
}

/**
 * Waits until the app answers over the network, whatever it says.
 * @param {string} host
 * @param {number} port
 */
function answers(host, port) {
  const target = host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '::1' : host
  return new Promise((resolve, reject) => {
    get({ host: target, port, path: '/healthz', agent: false }, (response) => {
      response.resume()
      response.on('end', resolve)
    }).on('error', reject)
  })
}

/**
 * @param {import('node:http').Server} server
 * @param {() => Promise<void>} close
 */
function stopOnSignals(server, close) {
  let stopping = false
  async function stop() {
    if (stopping) return
    stopping = true
    // A browser that keeps its line open must not keep the server: idle lines go, busy ones get a few seconds.
    setTimeout(() => process.exit(0), STOP_WITHIN_MS).unref()
    setInterval(() => server.closeIdleConnections(), 50).unref()
    const closed = new Promise((resolve) => server.close(resolve))
    await closed
    await close()
    process.exit(0)
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, stop)
}
