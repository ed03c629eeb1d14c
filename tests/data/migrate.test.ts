import { appendFileSync, copyFileSync, existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { beforeAll, expect, test } from 'vitest'
import { closeDatabase } from '@/lib/data/connection'
import { isHealthy } from '@/lib/data/health'
import { importHouseholds } from '@/lib/data/import'
import { migrate } from '@/lib/data/migrate'
import { listMigrations, MigrationRefused } from '@/lib/data/migrations'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { aHousehold } from '../support/a-household'
import { killAfter, startChild } from '../support/child'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { folderWith, rebuild } from '../support/rebuilding-migration'

const place = freshDatabase()
const NEXT = '29991231000000_rebuild'
const TABLES = ['Household', 'Membership', 'Filter', 'System', 'Device', 'Entry', 'Reading', 'DustEvent']
let full = ''
let folder = ''
let copies = 0

// A full database of the version before: 400 homes and 40,000 entries.
beforeAll(async () => {
  const ann = await someone('ann')
  await importHouseholds(
    as(ann),
    Array.from({ length: 400 }, (_, i) => aHousehold({ id: `unit-${i}` })),
  )
  await closeDatabase()
  full = join(place.folder, 'full.db')
  const db = new Database(join(place.folder, 'plenum.db'))
  db.exec(`INSERT INTO "Entry" ("id", "householdId", "position", "on", "kind", "subject", "byName", "at", "door")
    SELECT e."id" || '-' || n.value, e."householdId", n.value, e."on", e."kind", e."subject", e."byName", e."at", e."door"
    FROM "Entry" e, json_each('[${Array.from({ length: 99 }, (_, i) => i + 1)}]') n`)
  db.prepare('VACUUM INTO ?').run(full)
  db.close()
  folder = folderWith(join(place.folder, 'migrations'), NEXT, rebuild(full, 'Household') + rebuild(full, 'Entry'))
}, 120_000)

function aCopy(): string {
  const file = join(place.folder, `copy-${copies++}.db`)
  copyFileSync(full, file)
  return file
}

function counts(file: string): number[] {
  const db = new Database(file, { readonly: true })
  try {
    expect(db.pragma('integrity_check')).toEqual([{ integrity_check: 'ok' }])
    expect(db.pragma('foreign_key_check')).toEqual([])
    return TABLES.map((table) => db.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number)
  } finally {
    db.close()
  }
}

test('a migration that rebuilds a table keeps every child row, and leaves a copy from before', () => {
  const file = aCopy()
  const before = counts(file)
  expect(before[0]).toBe(400)
  expect(migrate({ file, folder })).toEqual([NEXT])
  expect(counts(file)).toEqual(before)
  expect(counts(`${file}.before-${NEXT}`)).toEqual(before)
  expect(migrate({ file, folder })).toEqual([])
})

test('the same migration with foreign keys on would have lost the child rows', () => {
  const file = aCopy()
  const db = new Database(file)
  db.pragma('foreign_keys = ON')
  db.exec(`BEGIN; ${rebuild(full, 'Household')} COMMIT`)
  db.close()
  expect(counts(file)[5]).toBe(0)
})

test('killed ten times in the middle of a migration, it is done whole by the next start', async () => {
  const before = counts(full)
  const begun = performance.now()
  migrate({ file: aCopy(), folder })
  const whole = performance.now() - begun
  let unfinished = 0
  for (let kill = 0; kill < 10; kill++) {
    const file = aCopy()
    await killAfter(startChild('migrate', [file, folder]), (whole * (kill + 0.5)) / 10)
    const applied = migrate({ file, folder }).length
    unfinished += applied
    expect(counts(file)).toEqual(before)
    rmSync(file)
  }
  // Otherwise the kills came too late to test anything.
  expect(unfinished).toBeGreaterThan(2)
}, 120_000)

test('of several processes that start at once one migrates and the others wait', async () => {
  const file = aCopy()
  const children = [1, 2, 3].map(() => startChild('migrate', [file, folder]))
  expect(await Promise.all(children.map(({ over }) => over))).toEqual([0, 0, 0])
  expect(children.map(({ lines }) => lines.at(-1)).sort()).toEqual(['applied 0', 'applied 0', 'applied 1'])
}, 60_000)

test('a changed, an unknown and a half-applied migration stop with a sentence that says what to do', () => {
  const file = aCopy()
  migrate({ file, folder })
  expect(() => migrate({ file })).toThrow(/newer version.*Update the program/)
  const changed = folderWith(join(place.folder, 'changed'), NEXT, rebuild(full, 'Household'))
  appendFileSync(join(changed, NEXT, 'migration.sql'), '-- changed')
  expect(() => migrate({ file, folder: changed })).toThrow(/was changed after it was applied/)
  const db = new Database(file)
  db.exec('UPDATE "_prisma_migrations" SET finished_at = NULL')
  db.close()
  expect(() => migrate({ file, folder })).toThrow(MigrationRefused)
})

test('a migration that fails changes nothing', () => {
  const broken = folderWith(join(place.folder, 'broken'), NEXT, `${rebuild(full, 'Household')}; SELECT * FROM nowhere;`)
  const file = aCopy()
  const before = counts(file)
  expect(() => migrate({ file, folder: broken })).toThrow()
  expect(counts(file)).toEqual(before)
  const orphaning = folderWith(join(place.folder, 'orphaning'), NEXT, 'DELETE FROM "User";')
  expect(() => migrate({ file, folder: orphaning })).toThrow(/belong to nothing/)
  expect(counts(file)).toEqual(before)
  expect(migrate({ file, folder })).toEqual([NEXT])
})

test('a database of something else is left alone', () => {
  const file = join(place.folder, 'other.db')
  const db = new Database(file)
  db.exec('CREATE TABLE "songs" ("title" TEXT)')
  db.close()
  expect(() => migrate({ file })).toThrow(/not made by this program/)
})

test('an empty database needs no copy, and is healthy only when migrated', async () => {
  const file = join(place.folder, 'deep', 'down', 'new.db')
  const before = process.env.DATABASE_URL
  process.env.DATABASE_URL = `file:${file}`
  try {
    expect(await isHealthy()).toBe(false)
    expect(migrate({ file })).toEqual(listMigrations().map(({ name }) => name))
    expect(existsSync(`${file}.before-${NEXT}`)).toBe(false)
    await closeDatabase()
    expect(await isHealthy()).toBe(true)
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = before
  }
})

test('a file that is no database is said to be damaged', () => {
  const file = join(place.folder, 'broken.db')
  appendFileSync(file, 'this is a letter, not a database, and long enough to be read as a header of one. '.repeat(50))
  expect(() => migrate({ file })).toThrow(DatabaseUnavailable)
  expect(() => migrate({ file })).toThrow(/damaged/)
})
