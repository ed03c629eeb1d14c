import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import fc from 'fast-check'
import { beforeAll, expect, test } from 'vitest'
import { makeBackup } from '@/lib/cli/make-backup'
import { Refused } from '@/lib/cli/refused'
import { restoreBackup } from '@/lib/cli/restore-backup'
import { writeTar } from '@/lib/cli/tar'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { listMigrations } from '@/lib/data/migrations'
import { migrationsFolder } from '@/lib/data/place'
import { aHousehold } from '../support/a-household'
import { killAfter, startChild, wholeTime } from '../support/child'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { countRows } from '../support/rows'

const place = freshDatabase()
const PHOTO = Buffer.alloc(3_000_000, 'a photo of a grille')
let archive = ''
let bytes = Buffer.alloc(0)
let whole: Record<string, number> = {}

beforeAll(async () => {
  await importHouseholds(
    as(await someone('ann')),
    Array.from({ length: 400 }, (_, i) => aHousehold({ id: `unit-${i}` })),
  )
  await closeDatabase()
  writeFileSync(join(place.folder, 'secret'), 'kept')
  mkdirSync(join(place.folder, 'photos'))
  writeFileSync(join(place.folder, 'photos', 'one.webp'), PHOTO)
  mkdirSync(join(place.folder, 'backups'))
  archive = join(place.folder, 'backups', 'good.tar.gz')
  const databaseFile = join(place.folder, 'plenum.db')
  await makeBackup({ dataFolder: place.folder, databaseFile, to: archive, madeAt: '', version: '' })
  bytes = readFileSync(archive)
  whole = countRows(databaseFile)
})

/** Restores an archive of these bytes: `whole`, or why it was refused, with nothing left in its place. */
async function outcome(changed: Uint8Array): Promise<string> {
  const folder = mkdtempSync(join(place.folder, 'backups', 'try-'))
  const file = join(folder, 'archive')
  const dataFolder = join(folder, 'data')
  writeFileSync(file, changed)
  try {
    await restoreBackup({ archive: file, dataFolder, databaseFile: join(dataFolder, 'plenum.db') })
    expect(countRows(join(dataFolder, 'plenum.db'))).toEqual(whole)
    expect(readFileSync(join(dataFolder, 'photos', 'one.webp')).equals(PHOTO)).toBe(true)
    expect(readFileSync(join(dataFolder, 'secret'), 'utf8')).toBe('kept')
    return 'whole'
  } catch (error) {
    if (!(error instanceof Refused)) throw error
    expect(readdirSync(folder)).toEqual(['archive'])
    return error.message
  } finally {
    rmSync(folder, { recursive: true })
  }
}

test('an archive cut short anywhere is refused, and nothing is written', async () => {
  expect(await outcome(bytes)).toBe('whole')
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: bytes.length - 1 }), async (length) => {
      expect(await outcome(bytes.subarray(0, length))).toContain('is not a whole backup')
    }),
    { numRuns: 40, examples: [[0], [1], [20], [bytes.length - 1]] },
  )
}, 120_000)

test('an archive with one byte changed is refused, or the byte meant nothing', async () => {
  const tar = gunzipSync(bytes)
  const refused = { count: 0 }
  await fc.assert(
    fc.asyncProperty(
      fc.integer({ min: 0, max: bytes.length - 1 }),
      fc.integer({ min: 1, max: 255 }),
      async (at, by) => {
        const changed = Buffer.from(bytes)
        changed[at] = (changed[at] ?? 0) ^ by
        const came = await outcome(changed)
        // Some bits mean nothing: the packer's moment and machine, or one of two ways to say what repeats itself.
        if (came === 'whole') expect(gunzipSync(changed).equals(tar)).toBe(true)
        else refused.count++
      },
    ),
    {
      numRuns: 60,
      examples: [
        [4, 1],
        [159_951, 1],
      ],
    },
  )
  expect(refused.count).toBeGreaterThan(40)
}, 120_000)

test('what is changed inside a well-packed archive is refused too', async () => {
  const tar = gunzipSync(bytes)
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 512, max: tar.length - 2000 }), async (at) => {
      const changed = Buffer.from(tar)
      changed[at] = (changed[at] ?? 0) ^ 1
      const came = await outcome(gzipSync(changed, { level: 1 }))
      // What fills a block up, and a word of the manifest that is for people, carry nothing.
      if (came === 'whole') expect(tar[at] === 0 || at < 2048).toBe(true)
    }),
    { numRuns: 30 },
  )
}, 120_000)

const SHA = 'a'.repeat(64)
const file = (name: string) => ({ name, bytes: 0, sha256: SHA })
const HOSTILE: [string, object][] = [
  ['a place outside', { files: [file('plenum.db'), file('../outside')] }],
  ['a place at the root', { files: [file('plenum.db'), file('/etc/outside')] }],
  ['a file twice', { files: [file('plenum.db'), file('secret'), file('secret')] }],
  ['no database', { files: [file('secret')] }],
  ['a later format', { plenumBackup: 2 }],
]

for (const [what, change] of HOSTILE)
  test(`a manifest with ${what} is refused`, async () => {
    const manifest = { plenumBackup: 1, version: '', madeAt: '', migrations: [], files: [file('plenum.db')], ...change }
    const head = Buffer.from(JSON.stringify(manifest))
    const parts: Uint8Array[] = []
    for await (const part of writeTar([{ name: 'manifest.json', bytes: head.length, content: () => [head] }]))
      parts.push(part)
    expect(await outcome(gzipSync(Buffer.concat(parts)))).toContain('its manifest is not one of this program')
  })

test('a backup of a newer version is refused until the program is updated', async () => {
  const tar = gunzipSync(bytes)
  const at = tar.indexOf(listMigrations(migrationsFolder('sqlite'))[0]?.name ?? '')
  tar.write('2999', at)
  expect(await outcome(gzipSync(tar, { level: 1 }))).toMatch(/newer Plenum.*Update this one first/)
})

test('killed ten times in the middle of a backup, there is a whole one or none, and nothing else stays', async () => {
  const folder = join(place.folder, 'backups', 'killed')
  mkdirSync(folder)
  const whole = await wholeTime(startChild('backup', ['backup', place.folder, join(folder, 'timed.tar.gz')]))
  let none = 0
  for (let kill = 0; kill < 10; kill++) {
    const to = join(folder, `${kill}.tar.gz`)
    await killAfter(startChild('backup', ['backup', place.folder, to]), (whole * kill) / 10)
    if (existsSync(to)) expect(await outcome(readFileSync(to))).toBe('whole')
    else none++
  }
  expect(none).toBeGreaterThan(2)
  const to = join(folder, 'last.tar.gz')
  const databaseFile = join(place.folder, 'plenum.db')
  await makeBackup({ dataFolder: place.folder, databaseFile, to, madeAt: '', version: '' })
  expect(readdirSync(folder).filter((name) => !name.endsWith('.tar.gz'))).toEqual([])
}, 180_000)

test('killed ten times in the middle of a restore, it is whole or can be done again', async () => {
  const timed = join(place.folder, 'backups', 'timed')
  const milliseconds = await wholeTime(startChild('backup', ['restore', timed, archive]))
  let again = 0
  for (let kill = 0; kill < 10; kill++) {
    const dataFolder = join(place.folder, 'backups', `restored-${kill}`)
    const databaseFile = join(dataFolder, 'plenum.db')
    await killAfter(startChild('backup', ['restore', dataFolder, archive]), (milliseconds * (kill + 0.5)) / 10)
    if (!existsSync(databaseFile)) {
      again++
      await restoreBackup({ archive, dataFolder, databaseFile })
    }
    expect(countRows(databaseFile)).toEqual(whole)
    expect(readFileSync(join(dataFolder, 'photos', 'one.webp')).equals(PHOTO)).toBe(true)
    expect(readFileSync(join(dataFolder, 'secret'), 'utf8')).toBe('kept')
  }
  expect(again).toBeGreaterThan(2)
}, 180_000)
