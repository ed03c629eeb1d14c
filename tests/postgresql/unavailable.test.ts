import pg from 'pg'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { addDays } from '@/lib/core/day'
import type { Viewer } from '@/lib/core/viewer'
import { closeDatabase } from '@/lib/data/connection'
import { isHealthy } from '@/lib/data/health'
import { getHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { addMessage, listMessages } from '@/lib/data/messages'
import { addRecord } from '@/lib/data/records'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { aHousehold } from '../support/a-household'
import { as, someone } from '../support/fresh-database'
import { addressOn, ask, createDatabase, type PostgresServer, startPostgres, TEMPLATE } from '../support/postgres'

const LOOKED = { on: '2026-11-20', kind: 'filter-looked', filter: 'hall' } as const
let server: PostgresServer
let ann: Viewer
let home = ''
const before = process.env.DATABASE_URL

// A server of its own: it is stopped, starved and started again.
beforeAll(async () => {
  server = await startPostgres({ max_connections: '16', superuser_reserved_connections: '1', fsync: 'on' })
  process.env.DATABASE_URL = await createDatabase(server.port, 'unavailable', TEMPLATE)
  ann = await someone('ann')
  const imported = await importHouseholds(as(ann), [aHousehold()])
  home = imported.ok ? (imported.ids[0] ?? '') : ''
}, 120_000)
afterEach(closeDatabase)
afterAll(async () => {
  server?.remove()
  if (before === undefined) delete process.env.DATABASE_URL
  else process.env.DATABASE_URL = before
})

async function why(question: () => Promise<unknown>): Promise<string> {
  const error = await question().then(
    () => 'answered',
    (thrown) => thrown,
  )
  expect(error).toBeInstanceOf(DatabaseUnavailable)
  return (error as DatabaseUnavailable).because
}

const asked = (sql: string, name = 'unavailable') => ask(addressOn(server.port, name), sql)

test('a server that was stopped is said to be away, and is asked again by itself when it is back', async () => {
  expect(await listHomes(ann)).toHaveLength(1)
  server.stop()
  expect(await why(() => listHomes(ann))).toMatch(/away|lost/)
  expect(await why(() => listHomes(ann))).toBe('away')
  expect(await why(() => addRecord(as(ann), home, LOOKED))).toBe('away')
  expect(await isHealthy()).toBe(false)
  server.start()
  expect(await listHomes(ann)).toHaveLength(1)
  expect((await addRecord(as(ann), home, LOOKED)).ok).toBe(true)
  expect(await isHealthy()).toBe(true)
}, 60_000)

test('restarted twice under load, everything confirmed is there once, and the writers go on by themselves', async () => {
  const confirmed: string[] = []
  const said = new Set<string>()
  let number = 0
  let isOver = false
  async function write(): Promise<void> {
    while (!isOver) {
      const on = addDays('1990-01-01', number++)
      try {
        if ((await addRecord(as(ann), home, { on, kind: 'filter-changed', filter: 'hall' })).ok) confirmed.push(on)
      } catch (error) {
        if (!(error instanceof DatabaseUnavailable)) throw error
        said.add(error.because)
        await new Promise((resolve) => setTimeout(resolve, 20))
      }
    }
  }
  const writers = Array.from({ length: 6 }, write)
  const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))
  for (const how of ['fast', 'immediate'] as const) {
    await pause(400)
    server.stop(how)
    await pause(150)
    server.start()
  }
  const atLast = confirmed.length
  while (confirmed.length < atLast + 10) await pause(20)
  isOver = true
  await Promise.all(writers)
  const days = (await getHousehold(ann, home)).household.records.map(({ on }) => on)
  expect(new Set(days).size).toBe(days.length)
  expect(confirmed.filter((on) => !days.includes(on))).toEqual([])
  expect([...said].filter((because) => !['away', 'lost', 'busy'].includes(because))).toEqual([])
  expect(said.size, 'nobody noticed the restarts').toBeGreaterThan(0)
}, 60_000)

test('a server without a free connection is said to be busy, and answers when one is free', async () => {
  const others: pg.Client[] = []
  for (;;) {
    const client = new pg.Client({ connectionString: addressOn(server.port, 'unavailable') })
    client.on('error', () => {})
    if (
      !(await client.connect().then(
        () => true,
        () => false,
      ))
    )
      break
    others.push(client)
  }
  expect(others.length).toBeGreaterThan(5)
  expect(await why(() => listHomes(ann))).toBe('busy')
  for (const client of others) await client.end()
  expect(await listHomes(ann)).toHaveLength(1)
})

test('a server that may only be read, and a database without our tables, are said to be so', async () => {
  await asked('ALTER DATABASE "unavailable" SET default_transaction_read_only = on')
  expect(await why(() => addRecord(as(ann), home, LOOKED))).toBe('read-only')
  expect(await listHomes(ann)).toHaveLength(1)
  await closeDatabase()
  await asked('ALTER DATABASE "unavailable" RESET default_transaction_read_only', 'postgres')
  expect((await addRecord(as(ann), home, LOOKED)).ok).toBe(true)
  await closeDatabase()
  const kept = process.env.DATABASE_URL
  process.env.DATABASE_URL = await createDatabase(server.port, 'bare')
  try {
    expect(await why(() => listHomes(ann))).toBe('not-ready')
    process.env.DATABASE_URL = addressOn(server.port, 'unavailable').replace(':plenum@', ':wrong@')
    expect(await why(() => listHomes(ann))).toBe('unreachable')
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = kept
  }
})

test('a character that no text of PostgreSQL can hold is kept as one that could not be read, and asked for finds nothing', async () => {
  const sent = await addMessage(as(ann), home, 'warm\0air \ud83d')
  expect(sent.ok).toBe(true)
  expect((await listMessages(ann, home))[0]?.text).toBe('warm\ufffdair \ufffd')
  expect(await listHomes({ kind: 'account', accountId: 'a\0', name: '', administrator: false })).toEqual([])
  await expect(getHousehold(ann, '\0')).rejects.toThrow('')
})
