import { mkdir, readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import type { BroughtPhoto } from '@/lib/forms/household-archive'
import { ask, type Questions, together } from './connection'
import { type Imported, importInto } from './import'
import { newId } from './new-id'
import { photoFolder, removePhotoFolder, writeThrough } from './photos'
import { keepablePicture, type Picture, type PictureFault } from './picture'
import { dataFolder } from './place'
import { signature } from './scope'

/** A brought photo whose picture was decoded and made anew. */
export type Kept = Omit<BroughtPhoto, 'bytes' | 'path'> & { picture: Picture }

const SAY: Record<PictureFault, string> = {
  empty: 'is empty',
  'no-picture': 'is no picture that can be read',
  broken: 'is damaged and cannot be read to its end',
  'too-many-pixels': 'has more than 64 million pixels',
  'too-small': 'is too small to show anything',
}

/** Decodes every photo that an archive brings, as if each were sent by hand; all faults at once. */
export async function keepable(
  photos: readonly BroughtPhoto[],
): Promise<{ ok: true; kept: Kept[] } | { ok: false; faults: Fault[] }> {
  const kept: Kept[] = []
  const faults: Fault[] = []
  for (const { path, bytes, ...rest } of photos) {
    const picture = await keepablePicture(Buffer.from(bytes))
    if (typeof picture === 'string') faults.push({ path, say: SAY[picture] })
    else kept.push({ ...rest, picture })
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, kept }
}

/** Brings a home and its photos into the account of whoever acts: all of it, or nothing. */
export async function importArchive(
  act: Act,
  household: Household,
  photos: readonly BroughtPhoto[],
): Promise<Imported> {
  const decoded = await keepable(photos)
  if (!decoded.ok) return decoded
  await sweepFolders(Date.parse(act.at))
  const writing = photoWriter()
  try {
    return await together(async (tx) => {
      const imported = await importInto(tx, act, [household])
      if (imported.ok) await writing.write(tx, act, imported.ids[0] ?? '', decoded.kept)
      return imported
    })
  } catch (error) {
    await writing.undo()
    throw error
  }
}

/**
 * Writes photos into a home that is made in the same transaction, as the last of it. Should that fail, `undo` takes the
 * pictures away again, unless only the saving itself failed: then nobody knows whether the home is there. The folder of
 * one that is not, from that or from a process that was killed, is swept later.
 */
export function photoWriter() {
  let made: string | undefined
  let isWritten = false
  return {
    async write(tx: Questions, act: Act, householdId: string, photos: readonly Kept[]): Promise<void> {
      // The transaction may be done a second time, and its home then has another id.
      isWritten = false
      if (made !== undefined) await removePhotoFolder(made)
      if (photos.length === 0) return
      made = householdId
      await mkdir(photoFolder(householdId), { recursive: true })
      for (const { kind, subject, at, picture } of photos) {
        const { webp, width, height } = picture
        const id = newId()
        await writeThrough(join(photoFolder(householdId), `${id}.webp`), webp)
        const row = { id, householdId, kind, subject, width, height, bytes: webp.length, at, door: act.door }
        await tx.photo.create({ data: { ...row, ...signature(act.viewer) } })
      }
      isWritten = true
    },
    async undo(): Promise<void> {
      if (!isWritten && made !== undefined) await removePhotoFolder(made)
    },
  }
}

const HOUR_MS = 60 * 60 * 1000

/** Removes the folders of homes that are not there. What is young may be another request's own. */
async function sweepFolders(now: number): Promise<void> {
  const folder = join(dataFolder(), 'photos')
  const names = await readdir(folder).catch(() => [])
  const rows = await ask((db) => db.household.findMany({ where: { id: { in: names } }, select: { id: true } }))
  const known = new Set(rows.map(({ id }) => id))
  for (const name of names) {
    if (known.has(name)) continue
    const found = await stat(join(folder, name)).catch(() => null)
    if (found && now - found.mtimeMs > HOUR_MS) await rm(join(folder, name), { recursive: true, force: true })
  }
}
