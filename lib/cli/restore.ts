import { readdirSync, rmSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { migrate } from '@/lib/data/migrate'
import { moveDatabase } from '@/lib/data/move'
import { databaseFile, databaseKind, databaseUrl, dataFolder } from '@/lib/data/place'
import { plainly } from './plainly'
import { endPlainly, Refused } from './refused'
import { restoreBackup } from './restore-backup'

const USAGE = 'restore -- FILE   a backup, into a place that is still empty (DATA_DIR, else data)'

await endPlainly(async () => {
  const [file, ...more] = process.argv.slice(2)
  if (!file || more.length > 0 || file.startsWith('-')) throw new Refused(USAGE)
  const options = { archive: resolve(file), dataFolder: dataFolder(), ...database() }
  const { madeAt, files } = await plainly(() => restoreBackup(options))
  return `Restored what was backed up ${madeAt.slice(0, 16).replace('T', ' ')} UTC, ${files.length} files, to ${options.dataFolder}. Run npm start.`
})

function database() {
  const url = databaseUrl()
  if (databaseKind(url) === 'sqlite') return { databaseFile: databaseFile(url) }
  return {
    databaseFile: join(dataFolder(), 'plenum.db'),
    async into(file: string) {
      // An older backup is brought up to date first: a move is between equals.
      migrate({ file })
      await moveDatabase({ from: `file:${file}`, to: url })
      // The copy from before that update: the backup itself is the better one.
      for (const name of readdirSync(dirname(file)))
        if (name.startsWith(`${basename(file)}.`)) rmSync(join(dirname(file), name))
    },
  }
}
