import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { checkCopy } from '@/lib/data/copy'
import { listMigrations } from '@/lib/data/migrations'
import { migrationsFolder } from '@/lib/data/place'
import type { BackupManifest } from '@/lib/forms/backup-manifest'
import { DATABASE, readBackup, type Sink } from './backup-archive'
import { LOST_AND_FOUND } from './make-backup'
import { Refused } from './refused'

export interface RestoreOptions {
  archive: string
  /** Must hold nothing yet, or not be there. */
  dataFolder: string
  databaseFile: string
  /** Brings the staged database, a file, to where it belongs instead of `databaseFile`; all of it or nothing. */
  into?: (stagedDatabase: string) => Promise<void>
}

const STAGING = '.plenum-restore'

/**
 * Brings a backup into an empty place: everything, or nothing. The files are put in place after all of them were
 * compared with the manifest, the database last: where there is a database, the restore is whole, and one that was
 * killed before can be done again. Throws `Refused`, `DatabaseUnavailable` or a fault of a file.
 */
export async function restoreBackup({
  archive,
  dataFolder,
  databaseFile,
  into: elsewhere,
}: RestoreOptions): Promise<BackupManifest> {
  const staging = join(dataFolder, STAGING)
  const stagedDatabase = `${databaseFile}${STAGING}`
  // Twice through the archive: a damaged one is refused before anything is written.
  const manifest = await readBackup(archive)
  refuseNewer(manifest)
  refuseFull({ dataFolder, databaseFile, manifest })
  const madeFolder = mkdirSync(dataFolder, { recursive: true, mode: 0o700 })
  try {
    rmSync(staging, { recursive: true, force: true })
    mkdirSync(dirname(databaseFile), { recursive: true })
    removeStaged(stagedDatabase)
    await readBackup(
      archive,
      into((name) => (name === DATABASE ? stagedDatabase : join(staging, name))),
    )
    checkCopy(stagedDatabase)
    for (const name of topNames(manifest)) {
      rmSync(join(dataFolder, name), { recursive: true, force: true })
      renameSync(join(staging, name), join(dataFolder, name))
    }
    syncFolder(dataFolder)
    if (elsewhere) {
      await elsewhere(stagedDatabase)
      removeStaged(stagedDatabase)
    } else renameSync(stagedDatabase, databaseFile)
    syncFolder(dirname(databaseFile))
  } catch (error) {
    for (const name of topNames(manifest)) rmSync(join(dataFolder, name), { recursive: true, force: true })
    removeStaged(stagedDatabase)
    if (madeFolder) rmSync(madeFolder, { recursive: true, force: true })
    throw error
  } finally {
    rmSync(staging, { recursive: true, force: true })
  }
  return manifest
}

/** The staged database and what lies beside it once it was opened: a log of an earlier one would be read into the next. */
function removeStaged(database: string): void {
  const folder = dirname(database)
  for (const name of existsSync(folder) ? readdirSync(folder) : []) {
    if (name.startsWith(basename(database))) rmSync(join(folder, name))
  }
}

function refuseNewer({ migrations, version }: BackupManifest): void {
  const known = new Set(listMigrations(migrationsFolder('sqlite')).map(({ name }) => name))
  if (migrations.every((name) => known.has(name))) return
  throw new Refused(`This backup was made by a newer Plenum (${version}). Update this one first; nothing was written.`)
}

function refuseFull({
  dataFolder,
  databaseFile,
  manifest,
}: Omit<RestoreOptions, 'archive'> & { manifest: BackupManifest }): void {
  const beside = ['', '-wal', '-shm', '-journal'].map((end) => `${databaseFile}${end}`).find((file) => existsSync(file))
  const present = existsSync(dataFolder) ? readdirSync(dataFolder).map((name) => join(dataFolder, name)) : []
  const staging = join(dataFolder, STAGING)
  // What a killed restore left is no reason: it began in an empty place, and it did not come to the database.
  const leftovers = present.includes(staging) ? topNames(manifest).map((name) => join(dataFolder, name)) : []
  const own = [staging, join(dataFolder, LOST_AND_FOUND), ...leftovers]
  const found = beside ?? present.find((path) => !own.includes(path) && !path.startsWith(`${databaseFile}${STAGING}`))
  if (found) {
    throw new Refused(
      `A restore needs an empty place, and there is ${found}. Move it away, or name another place by DATA_DIR; nothing was written.`,
    )
  }
}

/** The entries of the data folder that the backup's files make, without the database. */
function topNames({ files }: BackupManifest): string[] {
  const names = files.filter(({ name }) => name !== DATABASE).map(({ name }) => name.split('/')[0] ?? name)
  return [...new Set(names)]
}

function into(placeOf: (name: string) => string): Sink {
  let handle = -1
  return {
    begin() {},
    open(name) {
      const path = placeOf(name)
      mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
      handle = openSync(path, 'w', 0o600)
    },
    write(chunk) {
      for (let at = 0; at < chunk.length; ) at += writeSync(handle, chunk, at)
    },
    close() {
      fsyncSync(handle)
      closeSync(handle)
    },
  }
}

// A new name is on the disk only when its folder is.
function syncFolder(folder: string): void {
  if (process.platform === 'win32') return
  const handle = openSync(folder, 'r')
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}
