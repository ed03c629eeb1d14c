import { mkdirSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, expect, test } from 'vitest'
import { currentViewer, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { closeDatabase, database } from '@/lib/data/connection'
import { isHealthy } from '@/lib/data/health'
import { getHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { addRecord } from '@/lib/data/records'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

const place = freshDatabase()
const LOOKED = { on: '2026-11-20', kind: 'filter-looked', filter: 'hall' } as const

afterEach(closeDatabase)

/** What a question that cannot be answered throws. */
async function why(question: () => Promise<unknown>): Promise<string> {
  const error = await question().then(
    () => 'answered',
    (thrown) => thrown,
  )
  expect(error).toBeInstanceOf(DatabaseUnavailable)
  return (error as DatabaseUnavailable).because
}

async function aHome(name: string) {
  const viewer = await someone(name)
  const imported = await importHouseholds(as(viewer), [aHousehold()])
  return { viewer, home: imported.ok ? (imported.ids[0] ?? '') : '' }
}

test('a database that another process holds is said to be busy, and is right again afterwards', async () => {
  const { viewer, home } = await aHome('ann')
  const other = new Database(join(place.folder, 'plenum.db'))
  other.exec('BEGIN IMMEDIATE')
  expect(await why(() => addRecord(as(viewer), home, LOOKED))).toBe('busy')
  // Who only reads is not kept waiting.
  expect(await listHomes(viewer)).toHaveLength(1)
  other.exec('ROLLBACK')
  other.close()
  expect((await addRecord(as(viewer), home, LOOKED)).ok).toBe(true)
  expect((await getHousehold(viewer, home)).household.records).toHaveLength(2)
}, 30_000)

test('a database that can only be read is said to be so; reading and staying signed in go on', async () => {
  const { viewer, home } = await aHome('ben')
  const asked = { email: 'cy@example.org', password: 'four words are enough' }
  await createAccountWith(asked, [])
  const signedIn = await signIn(sentWith(), asked)
  // What a file system that was mounted read-only answers, asked of SQLite itself.
  await database().$executeRawUnsafe('PRAGMA query_only = ON')
  expect(await why(() => addRecord(as(viewer), home, LOOKED))).toBe('read-only')
  expect(await why(() => signIn(sentWith(), asked))).toBe('read-only')
  expect((await getHousehold(viewer, home)).household.records).toHaveLength(1)
  expect(await currentViewer(sentWith(signedIn.ok ? signedIn.cookies : []))).not.toBeNull()
})

test('a damaged file, a missing one and a folder in its place are said plainly, and no file is made', async () => {
  const { viewer } = await aHome('dee')
  await closeDatabase()
  const before = process.env.DATABASE_URL
  try {
    const damaged = join(place.folder, 'damaged.db')
    writeFileSync(damaged, 'not a database at all, but long enough to be taken for one. '.repeat(100))
    process.env.DATABASE_URL = `file:${damaged}`
    expect(await why(() => listHomes(viewer))).toBe('broken')
    expect(await isHealthy()).toBe(false)
    process.env.DATABASE_URL = `file:${join(place.folder, 'missing.db')}`
    expect(await why(() => listHomes(viewer))).toBe('unreachable')
    mkdirSync(join(place.folder, 'folder.db'))
    process.env.DATABASE_URL = `file:${join(place.folder, 'folder.db')}`
    expect(await why(() => listHomes(viewer))).toBe('unreachable')
    const empty = join(place.folder, 'empty.db')
    writeFileSync(empty, '')
    process.env.DATABASE_URL = `file:${empty}`
    expect(await why(() => listHomes(viewer))).toBe('not-ready')
    renameSync(empty, `${empty}.gone`)
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = before
  }
  expect(await listHomes(viewer)).toHaveLength(1)
})

test('a session asked for while the database is away is not taken for nobody', async () => {
  const asked = { email: 'eve@example.org', password: 'four words are enough' }
  await createAccountWith(asked, [])
  const signedIn = await signIn(sentWith(), asked)
  const cookies = signedIn.ok ? signedIn.cookies : []
  await closeDatabase()
  const before = process.env.DATABASE_URL
  process.env.DATABASE_URL = `file:${join(place.folder, 'away.db')}`
  try {
    expect(await why(() => currentViewer(sentWith(cookies)))).toBe('unreachable')
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = before
  }
  expect(await currentViewer(sentWith(cookies))).not.toBeNull()
})

test('a question asked while a transaction is open waits for it, and is not rolled back with it', async () => {
  const { viewer, home } = await aHome('fay')
  const failing = database()
    .$transaction(async (tx) => {
      await tx.$executeRaw`UPDATE "Household" SET "name" = 'half' WHERE "id" = ${home}`
      await new Promise((resolve) => setTimeout(resolve, 50))
      throw new Error('given up')
    })
    .catch((error: Error) => error.message)
  const [name, recorded, said] = await Promise.all([
    listHomes(viewer).then((homes) => homes[0]?.name),
    addRecord(as(viewer), home, LOOKED),
    failing,
  ])
  expect([name, recorded.ok, said]).toEqual(['Larkspur Court 2', true, 'given up'])
  expect((await getHousehold(viewer, home)).household.records).toHaveLength(2)
})
