import { existsSync, mkdirSync, readdirSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { deflateSync } from 'node:zlib'
import fc from 'fast-check'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { archiveOf } from '@/lib/data/archive'
import { closeHousehold, purgeHousehold } from '@/lib/data/closing'
import { importHouseholds } from '@/lib/data/import'
import { findPicture, listPhotos, photoFolder, removePhoto, savePhoto } from '@/lib/data/photos'
import { keepablePicture } from '@/lib/data/picture'
import { saveRenterLink } from '@/lib/data/renter-links'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

const grey = { create: { width: 120, height: 80, channels: 3, background: '#888888' } } as const

async function aHome(name: string) {
  const owner = await someone(name)
  const imported = await importHouseholds(as(owner), [aHousehold()])
  return { owner, home: imported.ok ? (imported.ids[0] ?? '') : '' }
}

function stored(home: string): string[] {
  return existsSync(photoFolder(home)) ? readdirSync(photoFolder(home)) : []
}

test('the place, time and camera in a photo are gone from what is kept, and it stands upright', async () => {
  const exif = {
    IFD0: { Make: 'InventedCamera', Copyright: 'somebody' },
    IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '41/1 52/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '87/1 37/1 0/1' },
  }
  const sent = await sharp(grey).withMetadata({ orientation: 6 }).withExifMerge(exif).jpeg().toBuffer()
  expect(sent.includes('InventedCamera')).toBe(true)
  expect((await sharp(sent).metadata()).exif).toBeDefined()
  const kept = await keepablePicture(sent)
  if (typeof kept === 'string') throw new Error(kept)
  const found = await sharp(kept.webp).metadata()
  expect(found).toMatchObject({ format: 'webp', width: 80, height: 120 })
  for (const part of ['exif', 'icc', 'iptc', 'xmp', 'comments'] as const) expect(found[part]).toBeUndefined()
  expect(kept.webp.includes('InventedCamera')).toBe(false)
})

test('JPEG, PNG, WebP and AVIF are taken; a large one becomes at most 1600 pixels a side', async () => {
  const large = sharp({ create: { width: 3000, height: 2000, channels: 3, background: '#123456' } })
  for (const sent of [large.jpeg(), large.png(), large.webp()]) {
    expect(await keepablePicture(await sent.toBuffer())).toMatchObject({ width: 1600, height: 1067 })
  }
  expect(await keepablePicture(await sharp(grey).avif({ effort: 0 }).toBuffer())).toMatchObject({ width: 120 })
})

test('what is no picture is refused by what it holds, whatever it is called', async () => {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="99" height="99"><script>alert(1)</script></svg>'
  const texts = [
    svg,
    `<?xml version="1.0"?>${svg}`,
    '<!doctype html><script>1</script>',
    '%PDF-1.7',
    'GIF89a',
    'BM',
    'x',
  ]
  for (const text of texts) expect(await keepablePicture(Buffer.from(text))).toBe('no-picture')
  expect(await keepablePicture(Buffer.alloc(0))).toBe('empty')
  // The right beginning and nothing behind it; an SVG that hides behind one.
  for (const head of ['ffd8ffe0', '89504e470d0a1a0a', Buffer.from('RIFF\0\0\0\0WEBP').toString('hex')]) {
    const half = Buffer.concat([Buffer.from(head, 'hex'), Buffer.from(svg)])
    expect(['broken', 'no-picture']).toContain(await keepablePicture(half))
  }
  expect(
    await keepablePicture(
      await sharp({ ...grey, create: { ...grey.create, width: 9 } })
        .png()
        .toBuffer(),
    ),
  ).toBe('too-small')
})

test('a small file that claims billions of pixels is refused before it is unpacked', async () => {
  function chunk(name: string, data: Buffer): Buffer {
    const body = Buffer.concat([Buffer.from(name), data])
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
    length.writeUInt32BE(data.length)
    sum.writeUInt32BE(crc32(body))
    return Buffer.concat([length, body, sum])
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(60_000, 0)
  head.writeUInt32BE(60_000, 4)
  head.set([8, 2, 0, 0, 0], 8)
  const rows = deflateSync(Buffer.alloc(1_000_000))
  const parts = [chunk('IHDR', head), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))]
  const bomb = Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), ...parts])
  const before = process.memoryUsage().rss
  expect(await keepablePicture(bomb)).toBe('too-many-pixels')
  expect(process.memoryUsage().rss - before).toBeLessThan(200e6)
})

function crc32(bytes: Buffer): number {
  let crc = ~0
  for (const byte of bytes) {
    crc ^= byte
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0)
  }
  return ~crc >>> 0
}

test('a cut-off or mangled photo is never an exception, and never kept where it does not end', async () => {
  const whole = await sharp({
    create: { width: 200, height: 200, channels: 3, noise: { type: 'gaussian', mean: 128, sigma: 40 } },
  } as never)
    .jpeg()
    .toBuffer()
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: whole.length - 3 }), async (length) => {
      const answer = await keepablePicture(whole.subarray(0, length))
      expect(typeof answer).toBe('string')
    }),
    { numRuns: 60 },
  )
  const mangled = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 20 })
  await fc.assert(
    fc.asyncProperty(mangled, async (changes) => {
      const bytes = Buffer.from(whole)
      for (const [at, byte] of changes) bytes[at] = byte
      const answer = await keepablePicture(bytes)
      if (typeof answer !== 'string') expect((await sharp(answer.webp).metadata()).exif).toBeUndefined()
    }),
    { numRuns: 60 },
  )
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => {
      expect(typeof (await keepablePicture(Buffer.from(bytes)))).toBe('string')
    }),
  )
}, 60_000)

test('a photo is kept beside the database, shown to the home, and gone when taken away', async () => {
  const { owner, home } = await aHome('ann')
  const sent = await sharp(grey).jpeg().toBuffer()
  const saved = await savePhoto(as(owner), home, { kind: 'filter', subject: 'hall', sent })
  if (!saved.ok) throw new Error(saved.because)
  expect(stored(home)).toEqual([`${saved.photo.id}.webp`])
  expect((await findPicture(owner, home, saved.photo.id))?.length).toBe(saved.photo.bytes)
  expect(await findPicture(await someone('stranger'), home, saved.photo.id)).toBe(null)
  expect(await findPicture(owner, home, '../../secret')).toBe(null)
  expect(await removePhoto(as(owner), home, saved.photo.id)).toEqual({ ok: true })
  expect([stored(home), await listPhotos(owner, home)]).toEqual([[], []])
})

test('what is refused leaves nothing: no row, no file, no half of one', async () => {
  const { owner, home } = await aHome('ben')
  const good = await sharp(grey).jpeg().toBuffer()
  const wrong = [
    { kind: 'filter', subject: 'hall', sent: good.subarray(0, good.length / 2) },
    { kind: 'filter', subject: 'nowhere', sent: good },
    { kind: 'look', subject: 'hall', sent: Buffer.from('<svg/>') },
  ] as const
  for (const photo of wrong) expect((await savePhoto(as(owner), home, photo)).ok).toBe(false)
  expect(await savePhoto(as(owner), '../outside', { kind: 'filter', subject: 'hall', sent: good })).toEqual({
    ok: false,
    because: 'not-found',
  })
  expect([stored(home), await listPhotos(owner, home)]).toEqual([[], []])
})

test('what a killed process left is cleared by the next photo; what is being written now is not', async () => {
  const { owner, home } = await aHome('cat')
  mkdirSync(photoFolder(home), { recursive: true })
  for (const name of ['old.webp', 'old.unfinished', 'young.unfinished'])
    writeFileSync(join(photoFolder(home), name), 'x')
  const hours = new Date(Date.parse(as(owner).at) - 2 * 60 * 60 * 1000)
  for (const name of ['old.webp', 'old.unfinished']) utimesSync(join(photoFolder(home), name), hours, hours)
  utimesSync(join(photoFolder(home), 'young.unfinished'), new Date(as(owner).at), new Date(as(owner).at))
  const saved = await savePhoto(as(owner), home, {
    kind: 'filter',
    subject: 'hall',
    sent: await sharp(grey).png().toBuffer(),
  })
  expect(stored(home).sort()).toEqual([`${saved.ok && saved.photo.id}.webp`, 'young.unfinished'].sort())
})

test('a renter’s link shows photos without the names of others, and takes away its own only', async () => {
  const { owner, home } = await aHome('dan')
  const place = { householdId: home, name: 'Unit 2', lastDay: '2099-01-01', expiresAt: '2099-01-02T00:00:00.000Z' }
  const link = await saveRenterLink(as(owner), { ...place, tokenHash: 'h' })
  const renter = { kind: 'link', linkId: link.ok ? link.link.id : '', householdId: home, name: 'Unit 2' } as const
  const act = { ...as(renter), door: 'link' } as const
  const sent = await sharp(grey).jpeg().toBuffer()
  const theirs = await savePhoto(as(owner), home, { kind: 'plate', subject: 'main', sent })
  const own = await savePhoto(act, home, { kind: 'look', subject: 'hall', sent })
  if (!theirs.ok || !own.ok) throw new Error('not kept')
  expect((await listPhotos(renter, home)).map(({ byName }) => byName).sort()).toEqual(['Unit 2', 'somebody here'])
  expect(await removePhoto(act, home, theirs.photo.id)).toEqual({ ok: false, because: 'not-found' })
  expect(await removePhoto(act, home, own.photo.id)).toEqual({ ok: true })
})

test('the archive holds the household file and every photo; a purge removes the pictures too', async () => {
  const { owner, home } = await aHome('eve')
  const sent = await sharp(grey).jpeg().toBuffer()
  const saved = await savePhoto(as(owner), home, { kind: 'filter', subject: 'hall', sent })
  const files = (await archiveOf(owner, home)) ?? []
  const photo = `photos/${saved.ok && saved.photo.id}.webp`
  expect(files.map(({ path }) => path)).toEqual(['household.json', 'photos.json', photo])
  expect(JSON.parse(new TextDecoder().decode(files[1]?.bytes))).toMatchObject([{ file: photo, subject: 'hall' }])
  await closeHousehold(as(owner), home, '2026-11-25')
  await purgeHousehold(as(owner), home, 'people')
  expect([stored(home), await listPhotos(owner, home)]).toEqual([[], []])
})
