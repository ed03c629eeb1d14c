import Database from 'better-sqlite3'
import pg from 'pg'
import { plans } from '@/app/plans'
import { unitsOf } from '@/app/units'
import { pageOfHomes } from '@/lib/core/home-list'
import { closeDatabase } from '@/lib/data/connection'
import { findHousehold } from '@/lib/data/households'
import { databaseFile, databaseKind } from '@/lib/data/place'
import { addRecord } from '@/lib/data/records'
import { DAY, viewerOf } from './databases'
import { milliseconds } from './table'

// A process of its own for each kind of database: what one has kept, the other must not find.

/** Milliseconds of each, the fastest of several runs. */
export interface Measured {
  bareDue: number
  due: number
  bareHomes: number
  homes: number
  firstHomes: number
  record: number
}

const RUNS = 11

/** The fastest of several runs of two things, measured in turn after three rounds that warm up: what else the machine does falls out. */
async function fastest(bare: () => unknown, page: () => unknown): Promise<[number, number]> {
  const [bares, pages]: [number[], number[]] = [[], []]
  for (let i = -3; i < RUNS; i++) {
    const [first, second] = [await milliseconds(bare), await milliseconds(page)]
    if (i >= 0) bares.push(first)
    if (i >= 0) pages.push(second)
  }
  return [Math.min(...bares), Math.min(...pages)]
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

async function measure(url: string): Promise<Measured> {
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
  const [bareDue, due] = await fastest(bareHome, async () => {
    const stored = await findHousehold(viewerOf('one'), id)
    if (!stored) throw new Error('the home is gone')
    return plans.of(stored, DAY)
  })
  const firstHomes = await milliseconds(() => unitsOf(viewerOf('owner-3'), () => DAY))
  const [bareHomes, homes] = await fastest(
    () => all(HOMES, 'owner-3'),
    async () =>
      pageOfHomes(
        (await unitsOf(viewerOf('owner-3'), () => DAY)).map(({ plan }) => plan),
        { sort: 'building', page: 1 },
      ),
  )
  let n = 0
  const [, record] = await fastest(
    () => all('SELECT 1 AS one'),
    () =>
      addRecord({ viewer: viewerOf('one'), at: `${DAY}T12:00:00.000Z`, door: 'page' }, id, {
        on: `20${10 + (n % 15)}-01-${10 + (n++ % 18)}`,
        kind: 'filter-changed',
        filter: 'hall',
      }),
  )
  await end()
  await closeDatabase()
  return { bareDue, due, bareHomes, homes, firstHomes, record }
}

if (process.argv[2]) console.log(JSON.stringify(await measure(process.argv[2])))
