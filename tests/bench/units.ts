import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { unitsOf } from '@/app/units'
import { tables } from '@/content/tables'
import { dayNumber } from '@/lib/core/day'
import { HOME_SORTS, pageOfHomes } from '@/lib/core/home-list'
import { planRounds } from '@/lib/core/rounds'
import { sharedPlanner } from '@/lib/core/shared-planner'
import { createAccount } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { migrate } from '@/lib/data/migrate'
import { manyHouseholds } from './many-households'

const HOMES = 10_000
const RUNS = 11

async function milliseconds(run: () => unknown): Promise<number> {
  const start = process.hrtime.bigint()
  await run()
  return Number(process.hrtime.bigint() - start) / 1e6
}

/** The medians of several things measured in turn, after a round that warms up: what else the machine does falls on all alike. */
async function medians<K extends string>(runs: Record<K, () => unknown>): Promise<Record<K, number>> {
  const names = Object.keys(runs) as K[]
  const times = Object.fromEntries(names.map((name) => [name, [] as number[]])) as Record<K, number[]>
  for (let i = 0; i <= RUNS; i++)
    for (const name of names) {
      const taken = await milliseconds(runs[name])
      if (i > 0) times[name].push(taken)
    }
  return Object.fromEntries(names.map((name) => [name, times[name].sort((a, b) => a - b)[RUNS >> 1] ?? 0])) as Record<
    K,
    number
  >
}

/** The page of all homes over a real database, against the one statement that reads the same rows through the driver alone. */
export async function benchHomes(on: string): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
  migrate()
  const at = `${on}T12:00:00.000Z`
  await createAccount({ id: 'a', email: 'a@example.org', name: 'A', passwordHash: '-', at }, async () => true)
  const viewer = { kind: 'account', accountId: 'a', name: 'A', administrator: true } as const
  await importHouseholds({ viewer, at, door: 'file' }, manyHouseholds(HOMES, on))
  const driver = new Database(join(folder, 'plenum.db'), { readonly: true })
  const bare = driver.prepare(`SELECT h."id", h."name", h."building", h."timeZone", h."revision", h."state", m."role"
    FROM "Household" h JOIN "Membership" m ON m."householdId" = h."id" WHERE m."accountId" = ?
    ORDER BY h."building", h."name", h."id"`)
  const first = await milliseconds(() => unitsOf(viewer, () => on))
  const page = (sort: (typeof HOME_SORTS)[number]) => async () =>
    pageOfHomes(
      (await unitsOf(viewer, () => on)).map(({ plan }) => plan),
      { sort, page: 1 },
    )
  const found = await medians({
    bare: () => bare.all('a'),
    building: page('building'),
    pressing: page('pressing'),
    name: page('name'),
  })
  driver.close()
  await closeDatabase()
  rmSync(folder, { recursive: true })
  return [
    `bare SQL, ${HOMES} homes through the driver: ${found.bare.toFixed(0)} ms`,
    `page of all homes, nothing kept yet (every plan made): ${first.toFixed(0)} ms`,
    ...HOME_SORTS.map((sort) => {
      const times = (found[sort] / found.bare).toFixed(2)
      return `page of all homes, plans kept, order ${sort}: ${found[sort].toFixed(0)} ms, ${times} times the bare SQL (under 3 is asked)`
    }),
  ]
}

/** Rounds for 1,000 let units in 100 buildings, from plans that are at hand. */
export function benchRounds(on: string): string {
  const planOf = sharedPlanner(tables)
  const units = manyHouseholds(1000, on).map((home) => ({ home, plan: planOf(home, on), on: dayNumber(on) }))
  const weekend = (day: number) => (day + 4) % 7 === 0 || (day + 4) % 7 === 6
  const start = process.hrtime.bigint()
  const { rounds, daysIfEachOnItsDue } = planRounds(units, { openDays: 60, noticeDays: 2, isClosed: weekend })
  const ms = Number(process.hrtime.bigint() - start) / 1e6
  return `rounds for 1,000 units in 100 buildings, weekends closed, 2 days of notice: ${ms.toFixed(0)} ms (1,000 is asked), ${rounds.length} visits instead of ${daysIfEachOnItsDue}`
}
