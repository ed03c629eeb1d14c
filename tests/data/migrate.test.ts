import { appendFileSync, copyFileSync, existsSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { beforeAll, expect, test } from 'vitest'
import { closeDatabase } from '@/lib/data/connection'
import { isHealthy } from '@/lib/data/health'
import { migrate } from '@/lib/data/migrate'
import { listMigrations, MigrationRefused } from '@/lib/data/migrations'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { startChild } from '../support/child'
import { freshDatabase } from '../support/fresh-database'
import { countsOf, fullDatabase, killMigrations, NEXT_MIGRATION } from '../support/kills/migration'
import { folderWith, rebuild } from '../support/rebuilding-migration'

const place = freshDatabase()
let full = ''
let folder = ''
let copies = 0

beforeAll(async () => {
  const made = await fullDatabase(place.folder)
  full = made.file
  folder = made.folder
}, 120_000)

function aCopy(): string {
  const file = join(place.folder, `copy-${copies++}.db`)
  copyFileSync(full, file)
  return file
}

test('a migration that rebuilds a table keeps every child row, and leaves a copy from before', () => {
  const file = aCopy()
  const before = countsOf(file)
  expect(before[0]).toBe(400)
  expect(migrate({ file, folder })).toEqual([NEXT_MIGRATION])
  expect(countsOf(file)).toEqual(before)
  expect(countsOf(`${file}.before-${NEXT_MIGRATION}`)).toEqual(before)
  expect(migrate({ file, folder })).toEqual([])
})

test('the same migration with foreign keys on would have lost the child rows', () => {
  const file = aCopy()
  const db = new Database(file)
  db.pragma('foreign_keys = ON')
  db.exec(`BEGIN; ${rebuild(full, 'Household')} COMMIT`)
  db.close()
  expect(countsOf(file)[5]).toBe(0)
})

test('killed ten times in the middle of a migration, it is done whole by the next start', async () => {
  const survived = await killMigrations({ file: full, folder }, { times: 10, share: (kill) => (kill + 0.5) / 10 })
  expect(survived.torn).toEqual([])
  // Otherwise the kills came too late to test anything.
  expect(survived.confirmed).toBeGreaterThan(2)
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
  const changed = folderWith(join(place.folder, 'changed'), NEXT_MIGRATION, rebuild(full, 'Household'))
  appendFileSync(join(changed, NEXT_MIGRATION, 'migration.sql'), '-- changed')
  expect(() => migrate({ file, folder: changed })).toThrow(/was changed after it was applied/)
  const db = new Database(file)
  db.exec('UPDATE "_prisma_migrations" SET finished_at = NULL')
  db.close()
  expect(() => migrate({ file, folder })).toThrow(MigrationRefused)
})

test('a migration that fails changes nothing', () => {
  const broken = folderWith(
    join(place.folder, 'broken'),
    NEXT_MIGRATION,
    `${rebuild(full, 'Household')}; SELECT * FROM nowhere;`,
  )
  const file = aCopy()
  const before = countsOf(file)
  expect(() => migrate({ file, folder: broken })).toThrow()
  expect(countsOf(file)).toEqual(before)
  const orphaning = folderWith(join(place.folder, 'orphaning'), NEXT_MIGRATION, 'DELETE FROM "User";')
  expect(() => migrate({ file, folder: orphaning })).toThrow(/belong to nothing/)
  expect(countsOf(file)).toEqual(before)
  expect(migrate({ file, folder })).toEqual([NEXT_MIGRATION])
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
    expect(existsSync(`${file}.before-${NEXT_MIGRATION}`)).toBe(false)
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
