import { existsSync, mkdirSync, readdirSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { archiveOf } from '@/lib/data/archive'
import { importArchive } from '@/lib/data/brought-photos'
import { exportHouseholds, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { findPicture, listPhotos, photoFolder, savePhoto } from '@/lib/data/photos'
import { readBrought } from '@/lib/forms/household-archive'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'

const place = freshDatabase()
const NOW = { on: () => '2026-11-25', now: AT }

async function aPicture(): Promise<Buffer> {
  const grey = { create: { width: 120, height: 80, channels: 3, background: '#888888' } } as const
  return sharp(grey).jpeg().toBuffer()
}

/** An archive as the page gives it, of a home with two photos. */
async function anArchive(name: string): Promise<Record<string, Uint8Array>> {
  const owner = await someone(name)
  const imported = await importHouseholds(as(owner), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  await savePhoto(as(owner), home, { kind: 'filter', subject: 'hall', sent: await aPicture() })
  await savePhoto(as(owner), home, { kind: 'plate', subject: 'main', sent: await aPicture() })
  const files = (await archiveOf(owner, home)) ?? []
  return Object.fromEntries(files.map(({ path, bytes }) => [path, bytes]))
}

test('an archive that was saved comes back whole, in another account: the home, its log and its photos', async () => {
  const files = await anArchive('ann')
  const read = readBrought(zipSync(files), NOW)
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  expect(read.photos).toHaveLength(2)
  const ben = await someone('ben')
  const [home] = read.households
  const imported = await importArchive(as(ben), home as NonNullable<typeof home>, read.photos)
  const id = imported.ok ? (imported.ids[0] ?? '') : ''
  expect(await exportHouseholds(ben)).toStrictEqual([aHousehold()])
  const photos = await listPhotos(ben, id)
  expect(photos.map(({ kind, subject, at, byName }) => [kind, subject, at, byName]).sort()).toEqual([
    ['filter', 'hall', AT, 'ben'],
    ['plate', 'main', AT, 'ben'],
  ])
  for (const photo of photos) expect(await findPicture(ben, id, photo.id)).toHaveLength(photo.bytes)
})

test('a photo that is none is refused with its place in the list, and nothing of the home is kept', async () => {
  const files = await anArchive('cleo')
  const [one = '', other = ''] = Object.keys(files).filter((name) => name.startsWith('photos/'))
  const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')
  const half = Buffer.from(files[other] ?? []).subarray(0, 60)
  const read = readBrought(zipSync({ ...files, [one]: svg, [other]: half }), NOW)
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  const dan = await someone('dan')
  const [home] = read.households
  const imported = await importArchive(as(dan), home as NonNullable<typeof home>, read.photos)
  expect(imported).toMatchObject({ ok: false, faults: [{ path: 'photos[0]' }, { path: 'photos[1]' }] })
  expect(await listHomes(dan)).toEqual([])
})

test('an id that is there already leaves no picture behind; a folder of no home is swept once it is old', async () => {
  const files = await anArchive('eve')
  const read = readBrought(zipSync(files), NOW)
  if (!read.ok) throw new Error('not read')
  const fay = await someone('fay')
  await importHouseholds(as(fay), [aHousehold()])
  const left = join(place.folder, 'photos', 'gone')
  mkdirSync(left, { recursive: true })
  utimesSync(left, new Date('2026-01-01'), new Date('2026-01-01'))
  const before = readdirSync(join(place.folder, 'photos')).filter((name) => name !== 'gone')
  const [home] = read.households
  const imported = await importArchive(as(fay), home as NonNullable<typeof home>, read.photos)
  expect(imported).toMatchObject({ ok: false, faults: [{ path: 'households[0].id' }] })
  expect(readdirSync(join(place.folder, 'photos'))).toEqual(before)
  expect(existsSync(photoFolder('gone'))).toBe(false)
})
