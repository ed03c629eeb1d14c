// @ts-check
import { spawn } from 'node:child_process'
import { plainError, prepare } from '../lib/cli/prepare.mjs'
import { ROOT } from '../lib/cli/root.mjs'
import { ensureChromium } from './support/chromium.mjs'

/**
 * `npm test`: installs what the tests need, builds if the build is stale, runs them all.
 * @param {string[]} args for vitest, `npm test -- tests/core`
 */
export async function main(args) {
  await prepare({ root: ROOT })
  if (!ensureChromium()) {
    throw plainError(
      'The tests need a Chromium browser, and there is none. Install the package "chromium" or Google Chrome, or name one: CHROMIUM=/path/to/chromium npm test',
    )
  }
  const { NODE_ENV: _, npm_lifecycle_event: __, ...env } = process.env
  const child = spawn(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', ...args], {
    cwd: ROOT,
    env: /** @type {any} */ (env),
    stdio: 'inherit',
  })
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
    process.on(signal, () => child.kill(signal))
  child.on('exit', (status) => process.exit(status ?? 1))
}
