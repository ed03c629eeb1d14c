import { resolve } from 'node:path'
import { databaseUrl, dataFolder } from '@/lib/data/place'
import { toRestore } from './either-kind'
import { plainly } from './plainly'
import { endPlainly, Refused } from './refused'
import { restoreBackup } from './restore-backup'

const USAGE = 'restore -- FILE   a backup, into a place that is still empty (DATA_DIR, else data)'

await endPlainly(async () => {
  const [file, ...more] = process.argv.slice(2)
  if (!file || more.length > 0 || file.startsWith('-')) throw new Refused(USAGE)
  const options = { archive: resolve(file), dataFolder: dataFolder(), ...toRestore(databaseUrl(), dataFolder()) }
  const { madeAt, files } = await plainly(() => restoreBackup(options))
  return `Restored what was backed up ${madeAt.slice(0, 16).replace('T', ' ')} UTC, ${files.length} files, to ${options.dataFolder}. Run npm start.`
})
