import { readdirSync } from 'node:fs'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { listPhotos, photoFolder, savePhoto } from '@/lib/data/photos'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { killPhotos } from '../support/kills/photo'

freshDatabase()

test('killed ten times in the middle of photos, every confirmed one is whole, no row is without its picture', async () => {
  const { confirmed, lost, torn, home } = await killPhotos({ times: 10, pause: (kill) => 40 + kill * 53 })
  expect({ lost, torn }).toEqual({ lost: [], torn: [] })
  expect(confirmed).toBeGreaterThan(9)
  // What a kill left behind without a row is shown to nobody, and the next photo clears it away once it is old.
  const cy = await someone('cy')
  const later = { ...as(cy), at: new Date(Date.now() + 2 * 3_600_000).toISOString() }
  const sent = await sharp({ create: { width: 40, height: 40, channels: 3, background: '#888' } })
    .png()
    .toBuffer()
  expect(await savePhoto(later, home, { kind: 'filter', subject: 'hall', sent })).toMatchObject({ ok: true })
  const rows = (await listPhotos(cy, home)).map(({ id }) => `${id}.webp`)
  expect(readdirSync(photoFolder(home)).sort()).toEqual(rows.sort())
}, 180_000)
