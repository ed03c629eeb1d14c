import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { toBackUp, toRestore } from '@/lib/cli/either-kind'
import { makeBackup } from '@/lib/cli/make-backup'
import { plainly } from '@/lib/cli/plainly'
import { restoreBackup } from '@/lib/cli/restore-backup'
import { closeDatabase } from '@/lib/data/connection'
import { exportHouseholds } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { MOVE_MARK } from '@/lib/data/migrations'
import { databaseUrl } from '@/lib/data/place'
import { addRecord } from '@/lib/data/records'
import { aHousehold } from '../support/a-household'
import { startChild } from '../support/child'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { createDatabase, dropDatabase, hasTable, onceUnlocked } from '../support/postgres'
import { countRows } from '../support/rows'

const place = freshDatabase()
const port = inject('postgresPort') as number
const SYSTEM = { kind: 'system' } as const
const PICTURE = Buffer.alloc(100_000, 'light')
let archive = ''
let exported: Awaited<ReturnType<typeof exportHouseholds>>
let made = 0

function emptyDatabase(): Promise<string> {
  return createDatabase(port, `${basename(place.folder)}-${made++}`)
}

async function exportsOf(url: string) {
  const before = process.env.DATABASE_URL
  await closeDatabase()
  process.env.DATABASE_URL = url
  try {
    return await exportHouseholds(SYSTEM)
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = before
  }
}

beforeAll(async () => {
  const ann = await someone('ann')
  const homes = Array.from({ length: 40 }, (_, i) => aHousehold({ id: `w-${i}`, name: `Wren Street ${i} – Ä` }))
  const imported = await importHouseholds(as(ann), homes)
  mkdirSync(join(place.folder, 'photos', 'ab'), { recursive: true })
  writeFileSync(join(place.folder, 'photos', 'ab', 'grille.webp'), PICTURE)
  writeFileSync(join(place.folder, 'secret'), 's'.repeat(43))
  exported = await exportHouseholds(SYSTEM)
  archive = join(place.folder, 'backups', 'one.tar.gz')
  // Others go on writing; what they write after the moment of the copy is not in it.
  const home = imported.ok ? (imported.ids[39] ?? '') : ''
  const from = toBackUp(databaseUrl(), place.folder)
  await makeBackup({
    ...from,
    copy: async (to) => {
      await from.copy?.(to)
      await addRecord(as(ann), home, { on: '2026-11-01', kind: 'filter-looked', filter: 'hall' })
    },
    dataFolder: place.folder,
    ...{ to: archive, madeAt: '2026-11-25T00:00:00.000Z', version: '1' },
  })
})

afterAll(async () => {
  for (let i = 0; i < made; i++) await dropDatabase(port, `${basename(place.folder)}-${i}`)
})

test('a backup of PostgreSQL comes back into an empty PostgreSQL, with its photos', async () => {
  const dataFolder = join(place.folder, 'restored')
  const url = await emptyDatabase()
  await restoreBackup({ archive, dataFolder, ...toRestore(url, dataFolder) })
  expect(await exportsOf(url)).toStrictEqual(exported)
  expect(readFileSync(join(dataFolder, 'photos', 'ab', 'grille.webp'))).toEqual(PICTURE)
  expect(readdirSync(dataFolder).sort()).toEqual(['photos', 'secret'])
})

test('the same archive comes back as an embedded database, which opens without a server', async () => {
  const dataFolder = join(place.folder, 'embedded')
  const file = join(dataFolder, 'plenum.db')
  await restoreBackup({ archive, dataFolder, databaseFile: file })
  expect(await exportsOf(`file:${file}`)).toStrictEqual(exported)
  expect(countRows(file)).toMatchObject({ User: 1, Household: 40 })
  expect(readdirSync(dataFolder).sort()).toEqual(['photos', 'plenum.db', 'secret'])
})

test('a database that holds something is refused, and nothing is left in the folder', async () => {
  const dataFolder = join(place.folder, 'refused')
  const restoring = plainly(() => restoreBackup({ archive, dataFolder, ...toRestore(databaseUrl(), dataFolder) }))
  await expect(restoring).rejects.toThrow(/There is something in postgresql:.* already/)
  expect(existsSync(dataFolder)).toBe(false)
})

test('the commands do it for whoever hosts, without showing a password', async () => {
  const run = (name: string, args: string[], env: Record<string, string>) => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--conditions=react-server', '--import=tsx', `lib/cli/${name}.ts`, ...args],
      { encoding: 'utf8', env: { ...process.env, NODE_ENV: 'production', ...env } },
    )
    return { status, out: stdout.trim(), err: stderr.trim() }
  }
  const to = join(place.folder, 'by-command.tar.gz')
  expect(run('backup', [to], {})).toEqual({ status: 0, out: to, err: '' })
  const [DATA_DIR, DATABASE_URL] = [join(place.folder, 'by-command'), await emptyDatabase()]
  const restored = run('restore', [to], { DATA_DIR, DATABASE_URL })
  expect(restored).toMatchObject({ status: 0, err: '' })
  expect((await exportsOf(DATABASE_URL)).length).toBe(40)
  rmSync(DATA_DIR, { recursive: true })
})

test('a restore that was killed while rows went over is done again by the same command', async () => {
  const dataFolder = join(place.folder, 'killed')
  const url = await emptyDatabase()
  const child = startChild('backup', ['restore', dataFolder, archive, url])
  // The tables are there and the mark is: from here on it is about the rows.
  await expect.poll(() => hasTable(url, 'Household'), { interval: 1 }).toBe(true)
  child.process.kill('SIGKILL')
  expect(await child.over).toBeNull()
  expect(await hasTable(url, MOVE_MARK), 'killed too late to test anything').toBe(true)
  // An update of an older backup leaves a copy from before it, too.
  writeFileSync(join(dataFolder, 'plenum.db.plenum-restore.before-20261125180000_start'), 'older')

  await onceUnlocked(() => restoreBackup({ archive, dataFolder, ...toRestore(url, dataFolder) }))
  expect(await exportsOf(url)).toStrictEqual(exported)
  expect(readdirSync(dataFolder).sort()).toEqual(['photos', 'secret'])
})
