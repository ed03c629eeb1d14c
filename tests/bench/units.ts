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
import { atMost, medians, milliseconds, type Row } from './table'

const ON = '2026-11-25'
const HOMES = 10_000
const RUNS = 11

/** The page of all homes over a real database, against the one statement that reads the same rows through the driver alone. */
async function pageRows(on: string): Promise<Row[]> {
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
  const found = await medians(RUNS, {
    bare: () => bare.all('a'),
    building: page('building'),
    pressing: page('pressing'),
    name: page('name'),
  })
  driver.close()
  await closeDatabase()
  rmSync(folder, { recursive: true })
  return [
    { what: `${HOMES} homes by bare SQL through the driver`, figure: `${found.bare.toFixed(0)} ms` },
    { what: 'page of all homes, every plan made', figure: `${first.toFixed(0)} ms` },
    ...HOME_SORTS.map((sort) => atMost(`page of all homes by ${sort} / bare SQL`, found[sort] / found.bare, 3)),
  ]
}

/** Rounds for 1,000 let units in 100 buildings, from plans that are at hand. */
function roundsRow(on: string): Row {
  const planOf = sharedPlanner(tables)
  const units = manyHouseholds(1000, on).map((home) => ({ home, plan: planOf(home, on), on: dayNumber(on) }))
  const weekend = (day: number) => (day + 4) % 7 === 0 || (day + 4) % 7 === 6
  const start = process.hrtime.bigint()
  const { rounds, daysIfEachOnItsDue } = planRounds(units, { openDays: 60, noticeDays: 2, isClosed: weekend })
  const ms = Number(process.hrtime.bigint() - start) / 1e6
  const what = `rounds for 1,000 units in 100 buildings, ${rounds.length} visits instead of ${daysIfEachOnItsDue}`
  return atMost(what, ms, 1000, 'ms')
}

/** The pages of many homes. */
export async function homesRows(): Promise<Row[]> {
  return [...(await pageRows(ON)), roundsRow(ON)]
}
