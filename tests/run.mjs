// @ts-check
import { spawn } from 'node:child_process'
import { plainError, prepare } from '../lib/cli/prepare.mjs'
import { ROOT } from '../lib/cli/root.mjs'
import { ensureChromium } from './support/chromium.mjs'
import { ensurePostgres } from './support/find-postgres.mjs'

const NO_POSTGRES =
  'Not run: the tests on PostgreSQL, because there is none here. Install the package "postgresql", or name the folder of its programs: POSTGRES_BIN=/path/to/bin npm test'

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
  // Left out by name and said at the end: a test that was not run must not look like one that passed.
  const hasPostgres = ensurePostgres() !== undefined
  const without = hasPostgres ? [] : ['--project=!*-postgresql']
  const { NODE_ENV: _, npm_lifecycle_event: __, ...env } = process.env
  const child = spawn(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', ...without, ...args], {
    cwd: ROOT,
    env: /** @type {any} */ (env),
    stdio: 'inherit',
  })
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP']))
    process.on(signal, () => child.kill(signal))
  child.on('exit', (status) => {
    if (!hasPostgres) console.error(NO_POSTGRES)
    process.exit(status ?? 1)
  })
}
