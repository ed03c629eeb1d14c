import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { installationSecret } from '@/lib/access/secret'
import { makeBackup } from '@/lib/cli/make-backup'
import { restoreBackup } from '@/lib/cli/restore-backup'
import { listAccounts } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { exportHouseholds } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { aHousehold } from '../support/a-household'
import { confirmedTo, startChild } from '../support/child'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { countRows } from '../support/rows'

const place = freshDatabase()
const database = () => join(place.folder, 'plenum.db')

/** Runs a command as a person does, with a data folder of its own. */
function command(name: 'backup' | 'restore', args: string[], dataFolder = place.folder) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--conditions=react-server', '--import=tsx', `lib/cli/${name}.ts`, ...args],
    {
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production', DATA_DIR: dataFolder, DATABASE_URL: '' },
    },
  )
  return { status, out: stdout.trim(), err: stderr.trim() }
}

/** What every account may take away, by its id. */
async function everyExport(dataFolder: string) {
  const before = process.env.DATABASE_URL
  process.env.DATABASE_URL = `file:${join(dataFolder, 'plenum.db')}`
  try {
    const accounts = await listAccounts({ kind: 'system' })
    const exports = accounts.map(async ({ id, name }) => [
      id,
      await exportHouseholds({ kind: 'account', accountId: id, name, administrator: false }),
    ])
    return Object.fromEntries(await Promise.all(exports))
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = before
  }
}

test('what is restored equals what was backed up: every account, every row, every file', async () => {
  for (const name of ['ann', 'ben']) {
    const homes = Array.from({ length: 50 }, (_, i) => aHousehold({ id: `${name}-${i}`, name: `Wren Street ${i}` }))
    expect((await importHouseholds(as(await someone(name)), homes)).ok).toBe(true)
  }
  installationSecret()
  mkdirSync(join(place.folder, 'photos', 'ab'), { recursive: true })
  writeFileSync(join(place.folder, 'photos', 'ab', 'grille.webp'), Buffer.alloc(100_000, 'light'))
  writeFileSync(join(place.folder, 'photos', 'empty'), '')

  const made = command('backup', [])
  expect(made).toMatchObject({ status: 0, err: expect.stringContaining('Keep a copy somewhere else') })
  expect(statSync(made.out).mode & 0o777).toBe(0o600)
  expect(readdirSync(join(place.folder, 'backups'))).toHaveLength(1)

  const restored = join(place.folder, 'elsewhere')
  expect(command('restore', [made.out], restored)).toMatchObject({ status: 0, err: '' })
  const exported = await everyExport(place.folder)
  expect(Object.values(exported).map((homes) => (homes as unknown[]).length)).toEqual([50, 50])
  expect(await everyExport(restored)).toStrictEqual(exported)
  const rows = countRows(database())
  expect(rows.Entry).toBe(100)
  expect(countRows(join(restored, 'plenum.db'))).toEqual(rows)
  for (const file of ['secret', 'photos/ab/grille.webp', 'photos/empty'])
    expect(readFileSync(join(restored, file)).equals(readFileSync(join(place.folder, file)))).toBe(true)
  expect(statSync(join(restored, 'secret')).mode & 0o777).toBe(0o600)
  expect(
    readdirSync(restored)
      .filter((name) => !/^plenum\.db-/.test(name))
      .sort(),
  ).toEqual(['photos', 'plenum.db', 'secret'])

  // A second one into the same place would take something away.
  const again = command('restore', [made.out], restored)
  expect(again).toMatchObject({
    status: 2,
    out: '',
    err: expect.stringMatching(/^A restore needs an empty place.*DATA_DIR/),
  })
  expect(await everyExport(restored)).toStrictEqual(exported)
}, 120_000)

test('the archive is one that tar itself reads, and its manifest holds', () => {
  const to = join(place.folder, 'for-tar.tar.gz')
  expect(command('backup', [to]).status).toBe(0)
  const out = join(place.folder, 'by-tar')
  mkdirSync(out)
  // GNU tar (or the system's own), independent of our reader.
  expect(spawnSync('tar', ['-xzf', to, '-C', out], { encoding: 'utf8' })).toMatchObject({ status: 0, stderr: '' })
  const manifest = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8'))
  expect(manifest.files.map(({ name }: { name: string }) => name)).toEqual(
    expect.arrayContaining(['plenum.db', 'secret', 'photos/ab/grille.webp', 'photos/empty']),
  )
  for (const { name, sha256 } of manifest.files)
    expect(
      createHash('sha256')
        .update(readFileSync(join(out, name)))
        .digest('hex'),
    ).toBe(sha256)
  expect(countRows(join(out, 'plenum.db'))).toEqual(countRows(database()))
}, 60_000)

test('a backup made while somebody records holds every record confirmed before it, and each whole', async () => {
  const eve = await someone('eve')
  const imported = await importHouseholds(as(eve), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  await closeDatabase()
  const child = startChild('record', [eve.accountId, home, '0'])
  await child.said('begin')
  try {
    for (let round = 0; round < 3; round++) {
      const confirmed = confirmedTo(child)
      const to = join(place.folder, `round-${round}.tar.gz`)
      await makeBackup({ dataFolder: place.folder, databaseFile: database(), to, madeAt: '', version: '' })
      const dataFolder = join(place.folder, `round-${round}`)
      await restoreBackup({ archive: to, dataFolder, databaseFile: join(dataFolder, 'plenum.db') })
      const [kept] = (await everyExport(dataFolder))[eve.accountId]
      const days = kept.records.map(({ on }: { on: string }) => on)
      expect(confirmed.filter((on) => !days.includes(on))).toEqual([])
      expect(confirmed.length).toBeGreaterThan(round)
    }
    // It went on recording all the while.
    expect(child.process.exitCode).toBeNull()
  } finally {
    child.process.kill('SIGKILL')
    await child.over
  }
}, 120_000)

test('a backup never replaces a file, and one of nothing is refused', () => {
  const taken = join(place.folder, 'taken.tar.gz')
  writeFileSync(taken, 'mine')
  expect(command('backup', [taken])).toMatchObject({
    status: 2,
    out: '',
    err: expect.stringContaining('is there already'),
  })
  expect(readFileSync(taken, 'utf8')).toBe('mine')
  const nothing = join(place.folder, 'nothing')
  expect(command('backup', [join(place.folder, 'none.tar.gz')], nothing)).toMatchObject({
    status: 2,
    err: expect.stringContaining('There is no database'),
  })
  expect(existsSync(nothing)).toBe(false)
  expect(command('backup', [join(taken, 'under-a-file.tar.gz')])).toMatchObject({ status: 2, out: '' })
  expect(command('backup', ['--all']).err).toContain('FOLDER or FILE')
}, 120_000)

test('a damaged database makes no backup, and says so', async () => {
  const dataFolder = join(place.folder, 'damaged')
  mkdirSync(dataFolder)
  const bytes = readFileSync(join(place.folder, 'by-tar', 'plenum.db'))
  bytes.fill(0x55, 8192, bytes.length - 4096)
  writeFileSync(join(dataFolder, 'plenum.db'), bytes)
  const refused = command('backup', [], dataFolder)
  expect(refused).toMatchObject({ status: 2, out: '' })
  expect(refused.err.split('\n').at(-1)).toContain('damaged')
  expect(readdirSync(join(dataFolder, 'backups'))).toEqual([])
}, 60_000)
