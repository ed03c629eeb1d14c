import { mkdirSync, readdirSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { importHouseholds } from '@/lib/data/import'
import { listPhotos, photoFolder, savePhoto } from '@/lib/data/photos'
import { aHousehold } from '../support/a-household'
import { aPicture } from '../support/a-picture'
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
  const sent = await aPicture()
  expect(await savePhoto(later, home, { kind: 'filter', subject: 'hall', sent })).toMatchObject({ ok: true })
  const rows = (await listPhotos(cy, home)).map(({ id }) => `${id}.webp`)
  expect(readdirSync(photoFolder(home)).sort()).toEqual(rows.sort())
}, 180_000)

test('a photo is kept with its picture also where something beside it is gone while the folder is looked through', async () => {
  const dee = await someone('dee')
  const imported = await importHouseholds(as(dee), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  mkdirSync(photoFolder(home), { recursive: true })
  // Listed, and not there: as another's draft is that gets its name in between.
  symlinkSync('nowhere', join(photoFolder(home), 'another.unfinished'))
  const sent = await aPicture()
  const saved = await savePhoto(as(dee), home, { kind: 'filter', subject: 'hall', sent })
  expect(readdirSync(photoFolder(home)).sort()).toEqual(
    [`${saved.ok && saved.photo.id}.webp`, 'another.unfinished'].sort(),
  )
})
