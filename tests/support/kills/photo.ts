import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { listPhotos, photoFolder } from '@/lib/data/photos'
import { aHousehold } from '../a-household'
import { as, someone } from '../someone'
import { type Kills, killed, type Survived } from './kill'

/** Kills a process in the middle of keeping photos of one home, whose id it gives too. */
export async function killPhotos({ times, pause }: Kills): Promise<Survived & { home: string }> {
  const cy = await someone('cy')
  const imported = await importHouseholds(as(cy), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const confirmed = new Set<string>()
  const lost = new Set<string>()
  const torn = new Set<string>()
  await closeDatabase()
  for (let kill = 0; kill < times; kill++) {
    for (const id of await killed('photo', [cy.accountId, home], pause(kill))) confirmed.add(id)
    const photos = await listPhotos(cy, home)
    const ids = new Set(photos.map(({ id }) => id))
    for (const id of confirmed) if (!ids.has(id)) lost.add(id)
    for (const photo of photos) if (!(await isWhole(home, photo))) torn.add(photo.id)
    await closeDatabase()
  }
  return { confirmed: confirmed.size, lost: [...lost], torn: [...torn], home }
}

type Kept = Awaited<ReturnType<typeof listPhotos>>[number]

/** Whether a row has its picture, as long as it says, and decodes to its last pixel: half of one would throw. */
async function isWhole(home: string, { id, bytes, width, height }: Kept): Promise<boolean> {
  try {
    const picture = readFileSync(join(photoFolder(home), `${id}.webp`))
    const { info } = await sharp(picture, { failOn: 'error' }).raw().toBuffer({ resolveWithObject: true })
    return picture.length === bytes && info.width === width && info.height === height
  } catch {
    return false
  }
}
