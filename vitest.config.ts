import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const path = (file: string) => fileURLToPath(new URL(file, import.meta.url))

// What writes or starts processes; everything else under tests/ is `unit`, so that no folder is forgotten.
const DATA = ['data', 'access', 'outbound', 'cli'].map((room) => `tests/${room}/**/*.test.{ts,tsx}`)
// Of these the same tests run on PostgreSQL too; the others are about the file of an embedded database, or about none.
const EMBEDDED = ['migrate', 'power-cut', 'upgrade', 'unavailable'].map((name) => `tests/data/${name}.test.ts`)
const ON_BOTH = ['data', 'access', 'outbound'].map((room) => `tests/${room}/**/*.test.{ts,tsx}`)
const POSTGRESQL = ['tests/postgresql/**/*.test.ts']
// The stories that write the most kinds of rows, and those about a server that goes away.
const STORIES = ['account', 'describe', 'guide-memory', 'units'].map((name) => `tests/browser/${name}.test.ts`)
const BROWSER_ON_BOTH = [...STORIES, 'tests/browser-postgresql/**/*.test.ts']
const BROWSER = ['tests/browser/**/*.test.ts']

const { DAYS_ON, NODE_OPTIONS = '' } = process.env
// What the tests start has this from them.
if (DAYS_ON) process.env.NODE_OPTIONS = `${NODE_OPTIONS} --require "${path('./tests/support/days-on.cjs')}"`

// Only where Chromium's process for the page crashed, which is no answer of ours; a page that crashes it fails twice.
const ONCE_MORE = { count: 1, condition: /the browser’s own page crashed/ }

// Limits are there to end what hangs, not to measure: two busy cores must not turn a test red.
export default defineConfig({
  resolve: {
    alias: [
      { find: /^@\//, replacement: path('./') },
      // It throws wherever React is not built for the server, and so in any test.
      { find: /^server-only$/, replacement: path('./node_modules/server-only/empty.js') },
    ],
  },
  test: {
    // What is asked again until it is so; left alone it gives up after a second.
    expect: { poll: { timeout: 30_000, interval: 100 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          // While mutants are tried, a copy of everything lies in tests/mutation.
          exclude: [...DATA, ...POSTGRESQL, ...BROWSER, ...BROWSER_ON_BOTH, 'tests/mutation/**'],
          setupFiles: 'tests/support/console.ts',
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'data',
          include: DATA,
          setupFiles: 'tests/support/console.ts',
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'data-postgresql',
          include: [...ON_BOTH, ...POSTGRESQL],
          exclude: EMBEDDED,
          globalSetup: 'tests/support/serve-postgres.ts',
          setupFiles: 'tests/support/console.ts',
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: BROWSER,
          globalSetup: 'tests/support/serve-app.ts',
          retry: ONCE_MORE,
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser-postgresql',
          include: BROWSER_ON_BOTH,
          globalSetup: ['tests/support/serve-postgres.ts', 'tests/support/serve-app.ts'],
          retry: ONCE_MORE,
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
})
