import { type UnzipFileInfo, unzipSync } from 'fflate'
import { z } from 'zod'
import type { Day } from '@/lib/core/day'
import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import { faultsOf } from './fault'
import { parseHouseholdFile } from './household-file'
import { readJson } from './read-json'
import { FILE_LIMIT_BYTES, readText, WAY_FOR_LARGER } from './read-text'

/** A photo that an archive brings: what it shows, when it was taken, and its bytes, which nobody has looked at yet. */
export interface BroughtPhoto {
  /** Where it stands in the archive's own list, for whoever finds fault with it. */
  path: string
  kind: 'filter' | 'plate' | 'look'
  subject: string
  at: string
  bytes: Uint8Array
}

/** A household file with or without an archive around it. `json` is the household file itself. */
export type Brought =
  | { ok: true; households: Household[]; photos: BroughtPhoto[]; json: string }
  | { ok: false; faults: Fault[] }

const HOUSEHOLD = 'household.json'
const PHOTOS = 'photos.json'
const PICTURE = /^photos\/[\w-]{1,64}\.webp$/
// As many as a home may hold (lib/data/photos.ts), and more bytes than 1600 pixels a side ever need.
const MOST_FILES = 302
const MOST_PICTURE_BYTES = 8_000_000
const MOST_BYTES = 400_000_000

const AT = 'must be a moment like 2026-11-25T18:00:00.000Z'
const listSchema = z.array(
  z.strictObject(
    {
      file: z.string().regex(PICTURE, { error: 'must be the path of a picture, like photos/abc.webp' }),
      kind: z.enum(['filter', 'plate', 'look'], { error: 'must be filter, plate or look' }),
      subject: z.string({ error: 'must name a filter or a system' }).min(1).max(64),
      at: z.iso.datetime({ error: AT }),
      byName: z.string().max(200).optional(),
    },
    { error: (issue) => (issue.code === 'unrecognized_keys' ? 'is not known here' : 'must be an entry of a photo') },
  ),
)

/** Whether bytes are an archive, by what they begin with. */
export function isArchive(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4
}

/**
 * A household file, or the archive of a home that holds one (`household.json`, `photos.json`, `photos/…`): all values,
 * or everything that is wrong at once. A photo's picture is judged where it is decoded. `now` is the latest moment
 * that a photo can be of; `limitBytes` the most that a household file alone may have.
 */
export function readBrought(
  input: string | Uint8Array,
  { on, now, limitBytes }: { on: (timeZone: string) => Day; now: string; limitBytes?: number },
): Brought {
  if (typeof input === 'string' || !isArchive(input)) {
    const parsed = parseHouseholdFile(input, on, { limitBytes, larger: limitBytes ? undefined : WAY_FOR_LARGER })
    return parsed.ok ? { ...parsed, photos: [], json: textOf(input, limitBytes) } : parsed
  }
  const opened = open(input)
  if ('faults' in opened) return { ok: false, faults: opened.faults }
  const { files } = opened
  const described = files[HOUSEHOLD]
  if (!described) return refuse('', `is an archive without ${HOUSEHOLD}: save it again from the home’s details`)
  const parsed = parseHouseholdFile(described, on)
  const listed = files[PHOTOS] ? photosOf(files[PHOTOS], files) : { photos: [], faults: [] }
  const faults = parsed.ok ? [...listed.faults, ...belongs(parsed.households, listed.photos, now)] : listed.faults
  if (!parsed.ok) return { ok: false, faults: [...parsed.faults, ...faults] }
  return faults.length > 0 ? { ok: false, faults } : { ...parsed, photos: listed.photos, json: textOf(described) }
}

function open(input: Uint8Array): { files: Record<string, Uint8Array> } | { faults: Fault[] } {
  const faults: Fault[] = []
  let count = 0
  let bytes = 0
  // Asked before anything is unpacked: what is not ours, or claims to be too large, never is.
  function wanted({ name, originalSize }: UnzipFileInfo): boolean {
    if (name.endsWith('/') && originalSize === 0) return false
    const isOurs = name === HOUSEHOLD || name === PHOTOS || PICTURE.test(name)
    const most = PICTURE.test(name) ? MOST_PICTURE_BYTES : FILE_LIMIT_BYTES
    if (!isOurs) faults.push({ path: name.slice(0, 80), say: 'is no part of a home’s archive; take it out' })
    else if (originalSize > most) faults.push({ path: name, say: 'is larger than such a file ever is' })
    count++
    bytes += originalSize
    return faults.length === 0 && count <= MOST_FILES && bytes <= MOST_BYTES
  }
  try {
    const files = unzipSync(input, { filter: wanted })
    if (count > MOST_FILES) faults.push({ path: '', say: `holds more than the ${MOST_FILES - 2} photos of one home` })
    else if (bytes > MOST_BYTES) faults.push({ path: '', say: 'unpacks to more than the photos of one home' })
    return faults.length > 0 ? { faults } : { files }
  } catch {
    return { faults: [{ path: '', say: 'is a damaged archive: it may have been cut off. Save or send it again' }] }
  }
}

function photosOf(list: Uint8Array, files: Record<string, Uint8Array>): { photos: BroughtPhoto[]; faults: Fault[] } {
  const read = readText(list)
  const json = read.ok ? readJson(read.text) : { ok: false as const, faults: [read.fault] }
  if (!json.ok) return { photos: [], faults: json.faults.map(({ say }) => ({ path: PHOTOS, say })) }
  const parsed = listSchema.safeParse(json.value)
  if (!parsed.success) {
    return {
      photos: [],
      faults: faultsOf(parsed.error.issues).map(({ path, say }) => ({ path: `photos${path}`, say })),
    }
  }
  const faults: Fault[] = []
  const seen = new Set<string>()
  const photos = parsed.data.flatMap(({ file, kind, subject, at }, i): BroughtPhoto[] => {
    const bytes = files[file]
    if (seen.has(file)) faults.push({ path: `photos[${i}].file`, say: 'stands twice in the list' })
    else if (!bytes) faults.push({ path: `photos[${i}].file`, say: `${file} is not in the archive` })
    seen.add(file)
    return bytes ? [{ path: `photos[${i}]`, kind, subject, at: new Date(at).toISOString(), bytes }] : []
  })
  const unlisted = Object.keys(files).filter((name) => PICTURE.test(name) && !seen.has(name))
  return { photos, faults: [...faults, ...unlisted.map((path) => ({ path, say: `is not named in ${PHOTOS}` }))] }
}

function belongs(households: Household[], photos: BroughtPhoto[], now: string): Fault[] {
  const [home, ...others] = households
  if (!home || others.length > 0) return [{ path: 'households', say: 'must be one home, where photos are beside it' }]
  const subjects = new Set([...home.filters, ...home.systems].map(({ id }) => id))
  return photos.flatMap(({ path, subject, at }) => [
    ...(subjects.has(subject) ? [] : [{ path: `${path}.subject`, say: `"${subject}" is no filter or system of it` }]),
    ...(at <= now ? [] : [{ path: `${path}.at`, say: 'lies in the future' }]),
  ])
}

function textOf(input: string | Uint8Array, limitBytes?: number): string {
  const read = readText(input, { limitBytes })
  return read.ok ? read.text : ''
}

function refuse(path: string, say: string): Brought {
  return { ok: false, faults: [{ path, say }] }
}
