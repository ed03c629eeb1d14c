import { spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { copyFilesBeside } from '@/lib/cli/copy-files'
import { makeBackup } from '@/lib/cli/make-backup'
import { restoreBackup } from '@/lib/cli/restore-backup'
import { copyDatabase } from '@/lib/data/copy'
import { freshDatabase } from '../support/fresh-database'

const place = freshDatabase()
let folder = ''
let photos = ''

beforeEach(() => {
  folder = mkdtempSync(join(place.folder, 'files-'))
  photos = join(folder, 'photos', 'ab')
  mkdirSync(photos, { recursive: true })
  copyDatabase(join(place.folder, 'plenum.db'), join(folder, 'plenum.db'))
})

afterEach(() => rmSync(folder, { recursive: true }))

function backUp() {
  const to = join(folder, 'backups', 'one.tar.gz')
  return makeBackup({ dataFolder: folder, databaseFile: join(folder, 'plenum.db'), to, madeAt: '', version: '' })
}

/** Brings the backup back, and says which photos are there. */
async function photosBroughtBack(): Promise<string[]> {
  const dataFolder = join(folder, 'backups', 'back')
  const archive = join(folder, 'backups', 'one.tar.gz')
  await restoreBackup({ archive, dataFolder, databaseFile: join(dataFolder, 'plenum.db') })
  return readdirSync(join(dataFolder, 'photos', 'ab')).sort()
}

test.skipIf(process.platform === 'win32')(
  'there may be more photos than a process may have files open',
  async () => {
    for (let i = 0; i < 400; i++) writeFileSync(join(photos, `${i}.webp`), `light ${i}`)
    const node = `"${process.execPath}" --conditions=react-server --import=tsx lib/cli/backup.ts`
    const to = join(folder, 'backups', 'one.tar.gz')
    const { status, stderr } = spawnSync('sh', ['-c', `ulimit -n 200; exec ${node} "${to}"`], {
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production', DATA_DIR: folder, DATABASE_URL: '' },
    })
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(await photosBroughtBack()).toHaveLength(400)
  },
  60_000,
)

test('a photo that is taken away before it is read is no part of the backup, and the others are', async () => {
  for (const name of ['a', 'b', 'c']) writeFileSync(join(photos, `${name}.webp`), name)
  const making = backUp()
  // The list is made, and nothing of it read yet.
  rmSync(join(photos, 'b.webp'))
  expect((await making).files.map(({ name }) => name)).toEqual(['plenum.db', 'photos/ab/a.webp', 'photos/ab/c.webp'])
  expect(await photosBroughtBack()).toEqual(['a.webp', 'c.webp'])
})

test('photos that are taken away while the archive is written are no part of it, and the others are', async () => {
  const names = Array.from({ length: 30 }, (_, i) => `${10 + i}.webp`)
  for (const name of names) writeFileSync(join(photos, name), randomBytes(400_000))
  const backups = join(folder, 'backups')
  const begun = () =>
    existsSync(backups) && readdirSync(backups).some((name) => existsSync(join(backups, name, 'archive')))
  let over = false
  const making = backUp().finally(() => {
    over = true
  })
  while (!begun() && !over) await new Promise((resolve) => setTimeout(resolve, 1))
  expect(over).toBe(false)
  for (const name of names.slice(-2)) rmSync(join(photos, name))
  expect((await making).files).toHaveLength(1 + 28)
  expect(await photosBroughtBack()).toEqual(names.slice(0, -2))
}, 60_000)

test('what is still being written is no part of a backup', async () => {
  writeFileSync(join(photos, 'one.webp'), 'light')
  writeFileSync(join(photos, 'two.unfinished'), 'li')
  expect((await backUp()).files.map(({ name }) => name)).toEqual(['plenum.db', 'photos/ab/one.webp'])
})

test('a disk of its own, with what it has from being made, is backed up, restored and moved to', async () => {
  writeFileSync(join(photos, 'one.webp'), 'light')
  const found = ['.', 'backups/back', 'backups/moved'].map((disk) => join(folder, disk, 'lost+found'))
  for (const path of found) {
    mkdirSync(path, { recursive: true })
    writeFileSync(join(path, '#12'), 'of the disk')
    // Root's own; to root itself, whom nothing is closed, it is no part either.
    chmodSync(path, 0)
  }
  try {
    expect((await backUp()).files.map(({ name }) => name)).toEqual(['plenum.db', 'photos/ab/one.webp'])
    expect(await photosBroughtBack()).toEqual(['one.webp'])
    expect(await copyFilesBeside(folder, join(folder, 'backups', 'moved'))).toBe(1)
  } finally {
    for (const path of found) chmodSync(path, 0o700)
  }
})
