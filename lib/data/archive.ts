import type { Viewer } from '@/lib/core/viewer'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { exportHouseholds } from './households'
import { findPicture, listPhotos, type Photo } from './photos'

/** One file of an archive: its path inside, and its bytes. */
export interface ArchiveFile {
  path: string
  bytes: Uint8Array
}

/** A photo as the archive's list states it: what it shows, when and by whom, beside its path. */
type ListedPhoto = Pick<Photo, 'kind' | 'subject' | 'at' | 'byName'> & { file: string }

/**
 * The household file of one home with its photos beside it: `household.json`, `photos.json`, `photos/<id>.webp`.
 * Null for someone else's.
 */
export async function archiveOf(viewer: Viewer, householdId: string): Promise<ArchiveFile[] | null> {
  const [household] = await exportHouseholds(viewer, [householdId])
  if (!household) return null
  const files: ArchiveFile[] = []
  const listed: ListedPhoto[] = []
  for (const { id, kind, subject, at, byName } of await listPhotos(viewer, householdId)) {
    const bytes = await findPicture(viewer, householdId, id)
    if (!bytes) continue
    const file = `photos/${id}.webp`
    files.push({ path: file, bytes })
    listed.push({ file, kind, subject, at, byName })
  }
  return [
    text('household.json', writeHouseholdFile([household])),
    text('photos.json', `${JSON.stringify(listed, null, 2)}\n`),
    ...files,
  ]
}

function text(path: string, content: string): ArchiveFile {
  return { path, bytes: new TextEncoder().encode(content) }
}
