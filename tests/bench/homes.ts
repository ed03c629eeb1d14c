import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { pageOfHomes } from '@/lib/core/home-list'
import { createAccount } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { migrate } from '@/lib/data/migrate'
import { manyHouseholds } from './many-households'

const ON = '2026-11-25'
const RUNS = 9

async function median(run: () => unknown): Promise<number> {
  await run()
  const times: number[] = []
  for (let i = 0; i < RUNS; i++) {
    const start = process.hrtime.bigint()
    await run()
    times.push(Number(process.hrtime.bigint() - start) / 1e6)
  }
  return times.sort((a, b) => a - b)[RUNS >> 1] as number
}
const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
migrate()
await createAccount(
  { id: 'a', email: 'a@example.org', name: 'A', passwordHash: '-', at: `${ON}T12:00:00.000Z` },
  async () => true,
)
const viewer = { kind: 'account', accountId: 'a', name: 'A', administrator: true } as const
await importHouseholds({ viewer, at: `${ON}T12:00:00.000Z`, door: 'file' }, manyHouseholds(10_000, ON))
const bare = new Database(join(folder, 'plenum.db'), { readonly: true })
const statement =
  bare.prepare(`SELECT h."id", h."name", h."building", h."timeZone", h."revision", h."state", m."role" AS "role"
      FROM "Household" h JOIN "Membership" m ON m."householdId" = h."id" AND m."accountId" = ? ORDER BY h."building", h."name", h."id"`)
const statement2 =
  bare.prepare(`SELECT h."id", h."name", h."building", h."timeZone", h."revision", h."state", (SELECT m."role" FROM "Membership" m
    WHERE m."householdId" = h."id" AND m."accountId" = ?1) AS "role"
      FROM "Household" h WHERE h."id" IN (SELECT m."householdId" FROM "Membership" m
    WHERE m."accountId" = ?1 AND m."role" IN ('owner','adult','manager','technician')) ORDER BY h."building", h."name", h."id"`)
const { unitsOf } = await import('@/app/units')
const { listHomes } = await import('@/lib/data/households')

console.log('bare same', await median(() => statement2.all({ 1: 'a' })))
console.log('listHomes', await median(() => listHomes(viewer)))
const t = Date.now()
await unitsOf(viewer, () => ON)
console.log('first', Date.now() - t)
console.log('units', await median(() => unitsOf(viewer, () => ON)))
const units = (await unitsOf(viewer, () => ON)).map(({ plan }) => plan)
for (const sort of ['building', 'name', 'pressing'] as const)
  console.log(sort, await median(() => pageOfHomes(units, { sort, page: 1 })))
console.log(
  'search',
  await median(() => pageOfHomes(units, { sort: 'building', page: 1, search: 'unit 99', state: 'due' })),
)
await closeDatabase()
rmSync(folder, { recursive: true })
