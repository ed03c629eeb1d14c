import { createHash } from 'node:crypto'
import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { open } from 'node:fs/promises'
import { basename, dirname, join, relative } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import { checkCopy, copyDatabase } from '@/lib/data/copy'
import { DatabaseUnavailable } from '@/lib/data/unavailable'
import type { BackupManifest } from '@/lib/forms/backup-manifest'
import { DATABASE, MANIFEST, readBackup } from './backup-archive'
import { processName } from './lock.mjs'
import { Refused } from './refused'
import { fitsInTar, type TarFile, writeTar } from './tar'

export interface BackupOptions {
  /** The folder that holds everything the product writes. */
  dataFolder: string
  databaseFile: string
  /** The archive to make; nothing may be there yet. */
  to: string
  madeAt: string
  version: string
  /** Makes the copy of a database that is not `databaseFile`, as a file at the path it is given. */
  copy?: (to: string) => Promise<void>
}

/** Where backups go when nobody says otherwise; they are no part of a backup. */
export const BACKUPS = 'backups'
/** What a disk of its own has from being made, and only its administrator may read. */
export const LOST_AND_FOUND = 'lost+found'
// What backups and restores have under way.
const OURS = '.plenum-'
const STAGING = `${OURS}backup-`

/**
 * Makes one archive of the database and every file beside it, while the program runs. It gets its name when it is
 * whole, was read back and lies on the disk. Throws `Refused`, `DatabaseUnavailable` or a fault of a file.
 */
export async function makeBackup({
  dataFolder,
  databaseFile,
  to,
  madeAt,
  version,
  copy: copyElsewhere,
}: BackupOptions): Promise<BackupManifest> {
  if (existsSync(to)) throw new Refused(`${to} is there already, and a backup never replaces one. Give another name.`)
  if (!copyElsewhere && !existsSync(databaseFile))
    throw new Refused(
      `There is no database at ${databaseFile}, so there is nothing to back up. Look at DATA_DIR and DATABASE_URL.`,
    )
  mkdirSync(dirname(to), { recursive: true })
  sweep(dirname(to))
  const staging = join(dirname(to), `${STAGING}${process.pid}`)
  mkdirSync(staging, { mode: 0o700 })
  try {
    const copy = join(staging, DATABASE)
    if (copyElsewhere) await copyElsewhere(copy)
    else copyDatabase(databaseFile, copy)
    const migrations = checkCopy(copy)
    // The database first: what is added while the rest is read is then only more than it needs.
    const files = [{ name: DATABASE, path: copy }, ...filesBeside(dataFolder, databaseFile)]
    const about = { plenumBackup: 1, version, madeAt, migrations } as const
    const archive = join(staging, 'archive')
    const manifest = await pack(archive, about, await digests(files))
    await readBackup(archive)
    renameSync(archive, to)
    return manifest
  } catch (error) {
    if (error instanceof DatabaseUnavailable && error.because === 'full')
      throw new Refused(`The disk of ${dirname(to)} is full. No backup was made.`)
    throw error
  } finally {
    try {
      rmSync(staging, { recursive: true, force: true })
    } catch {
      // The next backup sweeps it away; said here, it would hide why this one failed.
    }
  }
}

/** Removes what killed backups left. */
function sweep(folder: string): void {
  for (const name of readdirSync(folder)) {
    const pid = name.startsWith(STAGING) ? Number(name.slice(STAGING.length)) : Number.NaN
    if (pid > 0 && processName(pid) === undefined) rmSync(join(folder, name), { recursive: true, force: true })
  }
}

/** Everything in the data folder but the database with its own copies, the backups, and what is still being written. */
export function filesBeside(dataFolder: string, databaseFile: string): { name: string; path: string }[] {
  function within(folder: string): { name: string; path: string }[] {
    return (unlessGone(() => readdirSync(folder)) ?? []).sort().flatMap((entry) => {
      const path = join(folder, entry)
      const name = relative(dataFolder, path).replaceAll('\\', '/')
      if (isDatabase(path) || isNoPart(name)) return []
      const found = statSync(path, { throwIfNoEntry: false })
      if (found?.isDirectory()) return within(path)
      if (!found?.isFile()) return []
      if (!fitsInTar(name))
        throw new Refused(`The name of ${path} is too long for a backup. Move it elsewhere or shorten it.`)
      return [{ name, path }]
    })
  }
  function isDatabase(path: string): boolean {
    return [databaseFile, join(dataFolder, DATABASE)].some(
      (file) => dirname(path) === dirname(file) && basename(path).startsWith(basename(file)),
    )
  }
  return within(dataFolder)
}

function isNoPart(name: string): boolean {
  if (name === BACKUPS || name === LOST_AND_FOUND || /^secret\./.test(name)) return true
  return basename(name).startsWith(OURS) || name.endsWith('.unfinished')
}

type Digested = BackupManifest['files'][number] & { path: string }

/** Sums files up, one after another: a process may have only so many open. One that was taken away meanwhile is left out. */
async function digests(files: { name: string; path: string }[]): Promise<Digested[]> {
  const all: Digested[] = []
  for (const file of files) {
    const hash = createHash('sha256')
    let bytes = 0
    try {
      for await (const chunk of createReadStream(file.path)) {
        hash.update(chunk)
        bytes += chunk.length
      }
    } catch (error) {
      if (!isGone(error)) throw error
      continue
    }
    all.push({ ...file, bytes, sha256: hash.digest('hex') })
  }
  return all
}

/** Writes the archive. A file that is taken away before its turn is announced already: it is begun anew without that one. */
async function pack(archive: string, about: Omit<BackupManifest, 'files'>, files: Digested[]): Promise<BackupManifest> {
  const manifest = { ...about, files: files.map(({ name, bytes, sha256 }) => ({ name, bytes, sha256 })) }
  try {
    await write(archive, manifest, files)
    return manifest
  } catch (error) {
    const left = files.filter(({ path }) => existsSync(path))
    if (!isGone(error) || left.length === files.length) throw error
    rmSync(archive)
    return pack(archive, about, left)
  }
}

async function write(archive: string, manifest: BackupManifest, files: Digested[]): Promise<void> {
  const head = Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`)
  const parts: TarFile[] = [
    { name: MANIFEST, bytes: head.length, content: () => [head] },
    ...files.map(({ name, bytes, path }) => ({ name, bytes, content: () => createReadStream(path) })),
  ]
  await pipeline(Readable.from(writeTar(parts)), createGzip(), createWriteStream(archive, { flags: 'wx', mode: 0o600 }))
  const handle = await open(archive, 'r+')
  await handle.sync()
  await handle.close()
}

function unlessGone<T>(deed: () => T): T | undefined {
  try {
    return deed()
  } catch (error) {
    if (!isGone(error)) throw error
  }
}

function isGone(error: unknown): boolean {
  return (error as NodeJS.ErrnoException).code === 'ENOENT'
}
