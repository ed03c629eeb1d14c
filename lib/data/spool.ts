import { createReadStream, type ReadStream } from 'node:fs'
import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { newId } from './new-id'
import { dataFolder } from './place'
import { asUnavailable } from './unavailable'

/** The largest export that is taken: two years of rows a minute, 60 MB. */
export const MOST_SPOOLED_BYTES = 60_000_000
const KEPT_MS = 24 * 60 * 60 * 1000
const KEPT_A_HOME = 5

/** A file that was brought and is not yet decided on. */
export interface Spooled {
  bytes: number
  /** The first bytes, at most so many. */
  head(most: number): Promise<Uint8Array>
  chunks(): ReadStream
}

export type Spooling = { ok: true; id: string } | { ok: false; because: 'too-large' | 'empty' }

// A name of its own kind is no part of a backup: what lies here is gone in a day.
function spoolFolder(householdId: string): string {
  return join(dataFolder(), '.plenum-brought', householdId)
}

/**
 * Writes what comes in to a file of its own, for a home whose id was looked up. It has its name when it is whole;
 * what a killed process left, and what nobody came back to for a day, goes with the next one.
 */
export async function spool(householdId: string, chunks: AsyncIterable<Uint8Array>, at: string): Promise<Spooling> {
  const folder = spoolFolder(householdId)
  const id = newId()
  const draft = join(folder, `${id}.unfinished`)
  try {
    await sweepSpools(Date.parse(at))
    await mkdir(folder, { recursive: true, mode: 0o700 })
    const bytes = await write(draft, chunks)
    if (bytes === 0 || bytes > MOST_SPOOLED_BYTES) {
      await rm(draft, { force: true })
      return { ok: false, because: bytes === 0 ? 'empty' : 'too-large' }
    }
    await rename(draft, join(folder, `${id}.csv`))
    await sweepHome(folder)
    return { ok: true, id }
  } catch (error) {
    await rm(draft, { force: true })
    throw asUnavailable(error)
  }
}

/** Gives the bytes written, more than the limit as soon as that is passed. */
async function write(path: string, chunks: AsyncIterable<Uint8Array>): Promise<number> {
  const file = await open(path, 'wx', 0o600)
  let bytes = 0
  try {
    for await (const chunk of chunks) {
      bytes += chunk.length
      if (bytes > MOST_SPOOLED_BYTES) break
      await file.writeFile(chunk)
    }
  } finally {
    await file.close()
  }
  return bytes
}

/** A file that was brought to this home; null where there is none of this id any more. */
export async function findSpooled(householdId: string, id: string): Promise<Spooled | null> {
  // Both become part of a path: whatever is not made of plain signs is no id of ours.
  if (!/^[\w-]{1,64}$/.test(id) || !/^[\w-]{1,64}$/.test(householdId)) return null
  const path = join(spoolFolder(householdId), `${id}.csv`)
  const found = await stat(path).catch(() => null)
  if (!found?.isFile()) return null
  return {
    bytes: found.size,
    head: async (most) => {
      const file = await open(path, 'r')
      try {
        const { buffer, bytesRead } = await file.read(Buffer.alloc(Math.min(most, found.size)))
        return buffer.subarray(0, bytesRead)
      } finally {
        await file.close()
      }
    },
    chunks: () => createReadStream(path),
  }
}

/** Removes a file that was decided on; one that is gone already is no fault. */
export async function dropSpooled(householdId: string, id: string): Promise<void> {
  if (await findSpooled(householdId, id)) await rm(join(spoolFolder(householdId), `${id}.csv`), { force: true })
}

/** Removes whatever was brought to a home that is gone. */
export async function removeSpools(householdId: string): Promise<void> {
  if (/^[\w-]{1,64}$/.test(householdId)) await rm(spoolFolder(householdId), { recursive: true, force: true })
}

async function sweepSpools(now: number): Promise<void> {
  const root = join(dataFolder(), '.plenum-brought')
  for (const home of await readdir(root).catch(() => []))
    for (const name of await readdir(join(root, home)).catch(() => [])) {
      const path = join(root, home, name)
      const found = await stat(path).catch(() => null)
      if (found && now - found.mtimeMs > KEPT_MS) await rm(path, { force: true })
    }
}

/** Of one home only the latest few are kept. */
async function sweepHome(folder: string): Promise<void> {
  const files = await Promise.all(
    (await readdir(folder)).map(async (name) => {
      const path = join(folder, name)
      return { path, at: (await stat(path).catch(() => null))?.mtimeMs ?? 0 }
    }),
  )
  const old = files.filter(({ path }) => path.endsWith('.csv')).sort((a, b) => b.at - a.at)
  for (const { path } of old.slice(KEPT_A_HOME)) await rm(path, { force: true })
}
