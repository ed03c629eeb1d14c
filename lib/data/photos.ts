import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Act, Door, Instant, Viewer } from '@/lib/core/viewer'
import { ask, type Questions, together } from './connection'
import { newId } from './new-id'
import { keepablePicture, type PictureFault } from './picture'
import { dataFolder } from './place'
import { findRole, type Refusal, raise, signature } from './scope'

export const PHOTO_KINDS = ['filter', 'plate', 'look'] as const
export type PhotoKind = (typeof PHOTO_KINDS)[number]

/** A photo of a filter, of a unit's rating plate, or of a look. */
export interface Photo {
  id: string
  kind: PhotoKind
  /** The filter or the system it shows. */
  subject: string
  width: number
  height: number
  bytes: number
  byName: string
  at: Instant
  door: Door
}

export type SavedPhoto =
  | { ok: true; photo: Photo }
  | Refusal
  | { ok: false; because: PictureFault | 'no-subject' | 'too-many' }

const MOST_PHOTOS = 300
const MOST_BY_LINKS_A_DAY = 30
const HOUR_MS = 60 * 60 * 1000
const DAY_MS = 24 * HOUR_MS

/** Where a household's photos lie. */
export function photoFolder(householdId: string): string {
  return join(dataFolder(), 'photos', householdId)
}

/**
 * Keeps a photo: the picture first under another name, then row and name together. Whatever is cut off leaves nothing
 * that is shown, and the next photo clears it away.
 */
export async function savePhoto(
  act: Act,
  householdId: string,
  { kind, subject, sent }: { kind: PhotoKind; subject: string; sent: Buffer },
): Promise<SavedPhoto> {
  // Asked before the picture is decoded: nobody without a part in the home makes work.
  const role = await ask((db) => findRole(db, act.viewer, householdId))
  if (role === null) return { ok: false, because: 'not-found' }
  const picture = await keepablePicture(sent)
  if (typeof picture === 'string') return { ok: false, because: picture }
  const id = newId()
  const folder = photoFolder(householdId)
  const [draft, file] = [join(folder, `${id}.unfinished`), join(folder, `${id}.webp`)]
  let isNamed = false
  let saved: SavedPhoto
  try {
    saved = await together(async (tx): Promise<SavedPhoto> => {
      isNamed = false
      const raised = await raise(tx, act.viewer, householdId, { deed: 'record' })
      if (!raised.ok) return raised
      if (!(await hasSubject(tx, householdId, subject))) return { ok: false, because: 'no-subject' }
      if (await isFull(tx, act, householdId)) return { ok: false, because: 'too-many' }
      // Now the id is known to be a household's own, and so a name without a path.
      await mkdir(folder, { recursive: true })
      // The deed may be done a second time, and the first may have come as far as the name.
      await rm(draft, { force: true })
      await writeThrough(draft, picture.webp)
      const linkId = act.viewer.kind === 'link' ? act.viewer.linkId : null
      const { width, height, webp } = picture
      const row = { id, householdId, kind, subject, width, height, bytes: webp.length }
      const photo = await tx.photo.create({
        data: { ...row, ...signature(act.viewer), linkId, at: act.at, door: act.door },
      })
      await rename(draft, file)
      isNamed = true
      return { ok: true, photo: photoValue(photo) }
    })
  } catch (error) {
    await rm(draft, { force: true })
    // Once it is named only the saving itself can have failed, and then nobody knows: what has no row is swept later.
    if (!isNamed) await rm(file, { force: true })
    throw error
  }
  // The photo is kept, whatever comes of this; what stays is swept by the next.
  if (saved.ok) await sweep(householdId, Date.parse(act.at)).catch(() => {})
  return saved
}

/** The photos of a household, the latest first; empty for someone else's. */
export function listPhotos(viewer: Viewer, householdId: string): Promise<Photo[]> {
  return ask(async (db) => {
    if (!(await findRole(db, viewer, householdId))) return []
    const rows = await db.photo.findMany({ where: { householdId }, orderBy: [{ at: 'desc' }, { id: 'asc' }] })
    if (viewer.kind !== 'link') return rows.map(photoValue)
    // A renter's link shows nobody's name but its own.
    return rows.map((row) => photoValue(row.linkId === viewer.linkId ? row : { ...row, byName: 'somebody here' }))
  })
}

/** A photo's picture, or null: unknown, someone else's, and one whose file is gone look alike. */
export async function findPicture(viewer: Viewer, householdId: string, photoId: string): Promise<Buffer | null> {
  const found = await ask(async (db) =>
    (await findRole(db, viewer, householdId)) ? db.photo.findFirst({ where: { id: photoId, householdId } }) : null,
  )
  return found && readFile(join(photoFolder(householdId), `${found.id}.webp`)).catch(() => null)
}

/** Takes a photo away for good: who manages the home any, a renter by a link those of that link. */
export async function removePhoto(act: Act, householdId: string, photoId: string): Promise<{ ok: true } | Refusal> {
  const { viewer } = act
  const removed = await together(async (tx): Promise<{ ok: true } | Refusal> => {
    const deed = viewer.kind === 'link' ? 'record' : 'manage'
    const raised = await raise(tx, viewer, householdId, { deed, evenClosed: viewer.kind !== 'link' })
    if (!raised.ok) return raised
    const own = viewer.kind === 'link' ? { linkId: viewer.linkId } : {}
    const { count } = await tx.photo.deleteMany({ where: { id: photoId, householdId, ...own } })
    return count === 1 ? { ok: true } : { ok: false, because: 'not-found' }
  })
  if (removed.ok) await rm(join(photoFolder(householdId), `${photoId}.webp`), { force: true })
  return removed
}

async function hasSubject(tx: Questions, householdId: string, id: string): Promise<boolean> {
  const where = { householdId, id }
  return (await tx.filter.count({ where })) + (await tx.system.count({ where })) > 0
}

async function isFull(tx: Questions, act: Act, householdId: string): Promise<boolean> {
  if ((await tx.photo.count({ where: { householdId } })) >= MOST_PHOTOS) return true
  if (act.viewer.kind !== 'link') return false
  const since = new Date(Date.parse(act.at) - DAY_MS).toISOString()
  const byLinks = { householdId, linkId: { not: null }, at: { gt: since } }
  return (await tx.photo.count({ where: byLinks })) >= MOST_BY_LINKS_A_DAY
}

/** On the disk when it returns: the row must not outlive a power cut that takes the picture. */
export async function writeThrough(path: string, bytes: Buffer): Promise<void> {
  const file = await open(path, 'wx', 0o600)
  try {
    await file.writeFile(bytes)
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Removes what has no row: left behind by a process that was killed. What is young may be another request's own. */
async function sweep(householdId: string, now: number): Promise<void> {
  const folder = photoFolder(householdId)
  const rows = await ask((db) => db.photo.findMany({ where: { householdId }, select: { id: true } }))
  const known = new Set(rows.map(({ id }) => `${id}.webp`))
  for (const name of await readdir(folder)) {
    if (known.has(name)) continue
    const path = join(folder, name)
    const found = await stat(path).catch(() => null)
    if (found && now - found.mtimeMs > HOUR_MS) await rm(path, { force: true })
  }
}

/** Removes the pictures of a household whose rows are gone already. */
export async function removePhotoFolder(householdId: string): Promise<void> {
  await rm(photoFolder(householdId), { recursive: true, force: true })
}

function photoValue(row: Omit<Photo, 'kind' | 'door'> & { kind: string; door: string }): Photo {
  const { id, kind, subject, width, height, bytes, byName, at, door } = row
  return { id, kind: kind as PhotoKind, subject, width, height, bytes, byName, at, door: door as Door }
}
