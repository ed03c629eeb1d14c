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
    const described = await Promise.all(files.map(async (file) => ({ ...file, ...(await digest(file.path)) })))
    const manifest: BackupManifest = {
      plenumBackup: 1,
      version,
      madeAt,
      migrations,
      files: described.map(({ name, bytes, sha256 }) => ({ name, bytes, sha256 })),
    }
    const archive = join(staging, 'archive')
    await write(archive, manifest, described)
    await readBackup(archive)
    renameSync(archive, to)
    return manifest
  } catch (error) {
    if (error instanceof DatabaseUnavailable && error.because === 'full')
      throw new Refused(`The disk of ${dirname(to)} is full. No backup was made.`)
    throw error
  } finally {
    rmSync(staging, { recursive: true, force: true })
  }
}

/** Removes what killed backups left. */
function sweep(folder: string): void {
  for (const name of readdirSync(folder)) {
    const pid = name.startsWith(STAGING) ? Number(name.slice(STAGING.length)) : Number.NaN
    if (pid > 0 && processName(pid) === undefined) rmSync(join(folder, name), { recursive: true, force: true })
  }
}

/** Everything in the data folder but the database with its own copies, and the backups. */
export function filesBeside(dataFolder: string, databaseFile: string): { name: string; path: string }[] {
  function within(folder: string): { name: string; path: string }[] {
    return readdirSync(folder)
      .sort()
      .flatMap((entry) => {
        const path = join(folder, entry)
        const name = relative(dataFolder, path).replaceAll('\\', '/')
        if (isDatabase(path) || name === BACKUPS || entry.startsWith(OURS) || /^secret\./.test(name)) return []
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
  return existsSync(dataFolder) ? within(dataFolder) : []
}

async function digest(path: string): Promise<{ bytes: number; sha256: string }> {
  const hash = createHash('sha256')
  let bytes = 0
  for await (const chunk of createReadStream(path)) {
    hash.update(chunk)
    bytes += chunk.length
  }
  return { bytes, sha256: hash.digest('hex') }
}

async function write(
  archive: string,
  manifest: BackupManifest,
  files: { name: string; bytes: number; path: string }[],
): Promise<void> {
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
