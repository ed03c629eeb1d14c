import { join } from 'node:path'
import { migrate } from '@/lib/data/migrate'
import { copyIntoFile, moveDatabase } from '@/lib/data/move'
import { databaseFile, databaseKind } from '@/lib/data/place'
import type { BackupOptions } from './make-backup'
import type { RestoreOptions } from './restore-backup'

// A backup holds an embedded database, whatever it was made from: it opens without a server, and goes back into either.

/** How the database at an address comes into a backup. `dataFolder` is where an embedded one would lie. */
export function toBackUp(url: string, dataFolder: string): Pick<BackupOptions, 'databaseFile' | 'copy'> {
  if (databaseKind(url) === 'sqlite') return { databaseFile: databaseFile(url) }
  return { databaseFile: join(dataFolder, 'plenum.db'), copy: (to) => copyIntoFile(url, to) }
}

/** How a backup's database comes to an address, which has to be empty. */
export function toRestore(url: string, dataFolder: string): Pick<RestoreOptions, 'databaseFile' | 'into'> {
  if (databaseKind(url) === 'sqlite') return { databaseFile: databaseFile(url) }
  return {
    databaseFile: join(dataFolder, 'plenum.db'),
    async into(file) {
      // An older backup is brought up to date first: a move is between equals.
      migrate({ file })
      await moveDatabase({ from: `file:${file}`, to: url })
    },
  }
}
