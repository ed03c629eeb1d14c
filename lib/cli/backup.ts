import { readFileSync, statSync } from 'node:fs'
import { join, resolve, sep } from 'node:path'
import { now } from '@/lib/clock'
import { instant } from '@/lib/data/instant'
import { databaseUrl, dataFolder } from '@/lib/data/place'
import { toBackUp } from './either-kind'
import { BACKUPS, makeBackup } from './make-backup'
import { plainly } from './plainly'
import { endPlainly, Refused } from './refused'
import { ROOT } from './root.mjs'

const USAGE = 'backup -- [FOLDER or FILE]   one archive of everything; without a place, into backups of the data folder'

await endPlainly(async () => {
  const [place, ...more] = process.argv.slice(2)
  if (more.length > 0 || place?.startsWith('-')) throw new Refused(USAGE)
  const madeAt = instant(now())
  const to = archiveFor(place, madeAt)
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'))
  await plainly(() =>
    makeBackup({ ...toBackUp(databaseUrl(), dataFolder()), dataFolder: dataFolder(), to, madeAt, version }),
  )
  if (!place) console.error('This backup lies on the same disk as what it is for. Keep a copy somewhere else.')
  return to
})

// A place that ends in a slash, or is a folder, gets an archive named by the moment.
function archiveFor(place: string | undefined, madeAt: string): string {
  const name = `plenum-${madeAt.slice(0, 19).replaceAll(':', '-')}Z.tar.gz`
  if (!place) return join(dataFolder(), BACKUPS, name)
  const isFolder =
    place.endsWith('/') || place.endsWith(sep) || statSync(place, { throwIfNoEntry: false })?.isDirectory()
  return isFolder ? resolve(place, name) : resolve(place)
}
