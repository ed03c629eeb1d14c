import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { listPhotos, photoFolder, savePhoto } from '@/lib/data/photos'
import { aHousehold } from '../support/a-household'
import { killAfter, startChild } from '../support/child'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

test('killed ten times in the middle of photos, every confirmed one is whole, no row is without its picture', async () => {
  const ann = await someone('ann')
  const imported = await importHouseholds(as(ann), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const confirmed = new Set<string>()
  await closeDatabase()
  for (let kill = 0; kill < 10; kill++) {
    const child = startChild('photo', [ann.accountId, home])
    await killAfter(child, 40 + kill * 53)
    for (const line of child.lines) if (line.startsWith('done ')) confirmed.add(line.slice(5))
    const photos = await listPhotos(ann, home)
    const ids = photos.map(({ id }) => id)
    expect([...confirmed].filter((id) => !ids.includes(id))).toEqual([])
    for (const { id, bytes, width, height } of photos) {
      const picture = readFileSync(join(photoFolder(home), `${id}.webp`))
      expect(picture.length).toBe(bytes)
      // Decoded to its last pixel: half a picture would throw.
      const { info } = await sharp(picture, { failOn: 'error' }).raw().toBuffer({ resolveWithObject: true })
      expect(info).toMatchObject({ width, height })
    }
    await closeDatabase()
  }
  expect(confirmed.size).toBeGreaterThan(9)
  // What a kill left behind without a row is shown to nobody, and the next photo clears it away once it is old.
  const later = { ...as(ann), at: new Date(Date.now() + 2 * 3_600_000).toISOString() }
  const sent = await sharp({ create: { width: 40, height: 40, channels: 3, background: '#888' } })
    .png()
    .toBuffer()
  expect(await savePhoto(later, home, { kind: 'filter', subject: 'hall', sent })).toMatchObject({ ok: true })
  const rows = (await listPhotos(ann, home)).map(({ id }) => `${id}.webp`)
  expect(readdirSync(photoFolder(home)).sort()).toEqual(rows.sort())
}, 180_000)
