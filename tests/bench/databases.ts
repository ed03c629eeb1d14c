import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import pg from 'pg'
import { plans } from '@/app/plans'
import { unitsOf } from '@/app/units'
import { pageOfHomes } from '@/lib/core/home-list'
import { createAccount } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { findHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { migrate } from '@/lib/data/migrate'
import { moveDatabase } from '@/lib/data/move'
import { databaseFile, databaseKind } from '@/lib/data/place'
import { addRecord } from '@/lib/data/records'
import { createDatabase, startPostgres } from '../support/postgres'
import { manyHouseholds } from './many-households'

// Both kinds of database side by side, with the same homes in them: ten owners of as many homes each, and one person
// with one. `npm run bench:databases`, or with fewer homes `npm run bench:databases -- 10000`.

const OWNERS = 10
const AT_ONCE = 2_000
const RUNS = 11
const DAY = '2026-11-25'
const at = `${DAY}T12:00:00.000Z`

function viewerOf(id: string) {
  return { kind: 'account', accountId: id, name: id, administrator: false } as const
}

async function milliseconds(run: () => unknown): Promise<number> {
  const start = process.hrtime.bigint()
  await run()
  return Number(process.hrtime.bigint() - start) / 1e6
}

/** The fastest of several runs of two things, measured in turn after three rounds that warm up: what else the machine does falls out. */
async function fastest(bare: () => unknown, page: () => unknown): Promise<{ bare: number; page: number }> {
  const [bares, pages]: [number[], number[]] = [[], []]
  for (let i = -3; i < RUNS; i++) {
    const [first, second] = [await milliseconds(bare), await milliseconds(page)]
    if (i >= 0) bares.push(first)
    if (i >= 0) pages.push(second)
  }
  return { bare: Math.min(...bares), page: Math.min(...pages) }
}

async function fill(homes: number): Promise<void> {
  for (const [i, owner] of [...Array.from({ length: OWNERS }, (_, n) => `owner-${n}`), 'one'].entries()) {
    await createAccount(
      { id: owner, email: `${owner}@example.org`, name: owner, passwordHash: '-', at },
      async () => true,
    )
    const own = owner === 'one' ? 1 : homes / OWNERS
    for (let done = 0; done < own; done += AT_ONCE) {
      const part = manyHouseholds(Math.min(AT_ONCE, own - done), DAY).map((home, n) => ({
        ...home,
        id: `${i}-${done + n}`,
      }))
      const brought = await importHouseholds({ viewer: viewerOf(owner), at, door: 'file' }, part)
      if (!brought.ok) throw new Error(brought.faults[0]?.say)
    }
  }
}

interface Driver {
  all(sql: string, ...values: string[]): unknown
  run(sql: string): unknown
  end(): unknown
}

/** Asks a statement of the database through its driver alone. */
async function driver(url: string): Promise<Driver> {
  if (databaseKind(url) === 'sqlite') {
    const db = new Database(databaseFile(url), { readonly: true })
    const kept = new Map<string, Database.Statement>()
    const prepared = (sql: string) =>
      kept.get(sql) ?? (kept.set(sql, db.prepare(sql.replace(/\$\d/g, '?'))).get(sql) as Database.Statement)
    return { all: (sql, ...values) => prepared(sql).all(...values), run: (sql) => db.exec(sql), end: () => db.close() }
  }
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  return {
    all: async (sql, ...values) => (await client.query(sql, values)).rows,
    run: (sql) => client.query(sql),
    end: () => client.end(),
  }
}

const HOMES = `SELECT h."id", h."name", h."building", h."timeZone", h."revision", h."state", m."role"
  FROM "Household" h JOIN "Membership" m ON m."householdId" = h."id" WHERE m."accountId" = $1
  ORDER BY h."building" NULLS FIRST, h."name", h."id"`
const LISTS = ['DustEvent', 'System', 'Filter', 'Device', 'Entry', 'Reading', 'Contact', 'PutOff']

async function measure(url: string): Promise<Record<string, string>> {
  process.env.DATABASE_URL = url
  const { all, run, end } = await driver(url)
  const id = ((await unitsOf(viewerOf('one'), () => DAY))[0]?.home.id ?? '') as string
  // The rows of one home at one moment, each table's by a statement, as whoever may see it.
  async function bareHome(): Promise<void> {
    await run(databaseKind(url) === 'sqlite' ? 'BEGIN' : 'BEGIN ISOLATION LEVEL REPEATABLE READ')
    await all(
      `SELECT h.*, m."role" FROM "Household" h JOIN "Membership" m ON m."householdId" = h."id"
      WHERE h."id" = $1 AND m."accountId" = $2`,
      id,
      'one',
    )
    for (const table of LISTS) await all(`SELECT t.* FROM "${table}" t WHERE t."householdId" = $1`, id)
    await run('COMMIT')
  }
  const due = await fastest(bareHome, async () => {
    const stored = await findHousehold(viewerOf('one'), id)
    if (!stored) throw new Error('the home is gone')
    return plans.of(stored, DAY)
  })
  const first = await milliseconds(() => unitsOf(viewerOf('owner-3'), () => DAY))
  const homes = await fastest(
    () => all(HOMES, 'owner-3'),
    async () =>
      pageOfHomes(
        (await unitsOf(viewerOf('owner-3'), () => DAY)).map(({ plan }) => plan),
        { sort: 'building', page: 1 },
      ),
  )
  const number = (await unitsOf(viewerOf('owner-3'), () => DAY)).length
  let n = 0
  const write = await fastest(
    () => all('SELECT 1 AS one'),
    () =>
      addRecord({ viewer: viewerOf('one'), at, door: 'page' }, id, {
        on: `20${10 + (n % 15)}-01-${10 + (n++ % 18)}`,
        kind: 'filter-changed',
        filter: 'hall',
      }),
  )
  await end()
  await closeDatabase()
  const against = ({ bare, page }: { bare: number; page: number }) =>
    `${page.toFixed(1)} ms, ${(page / bare).toFixed(2)} times the bare SQL (${bare.toFixed(1)} ms; under 3 is asked)`
  return {
    'Due page of one account': against(due),
    [`page of ${number} homes`]: against(homes),
    'the same, nothing kept yet': `${first.toFixed(0)} ms`,
    'one record saved': `${write.page.toFixed(1)} ms`,
  }
}

/** In a process of its own, which has kept nothing yet. */
function measured(url: string): Record<string, string> {
  const args = ['--conditions=react-server', '--import=tsx', import.meta.filename, url]
  return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] }))
}

async function compare(total: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  const server = await startPostgres({ fsync: 'on' })
  try {
    const file = `file:${join(folder, 'plenum.db')}`
    process.env.DATABASE_URL = file
    migrate()
    const filled = await milliseconds(() => fill(total))
    await closeDatabase()
    const megabytes = (statSync(databaseFile(file)).size / 1e6).toFixed(0)
    console.log(`${total} homes brought into a file of ${megabytes} MB: ${(filled / 1000).toFixed(0)} s`)
    const to = await createDatabase(server.port, 'bench')
    const moved = await milliseconds(() => moveDatabase({ from: file, to }))
    const memory = Math.round(process.memoryUsage.rss() / 1e6)
    console.log(`moved into PostgreSQL and compared: ${(moved / 1000).toFixed(0)} s, ${memory} MB`)
    const [embedded, served] = [measured(file), measured(to)]
    for (const [what, figure] of Object.entries(embedded))
      console.log(`${what}\n  SQLite      ${figure}\n  PostgreSQL  ${served[what]}`)
  } finally {
    server.remove()
    rmSync(folder, { recursive: true, force: true })
  }
}

const [what = '100000'] = process.argv.slice(2)
if (/^\d+$/.test(what)) await compare(Number(what))
else console.log(JSON.stringify(await measure(what)))
