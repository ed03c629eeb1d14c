import { join } from 'node:path'
import { toRestore } from '@/lib/cli/either-kind'
import { makeBackup } from '@/lib/cli/make-backup'
import { restoreBackup } from '@/lib/cli/restore-backup'
import { say } from './say'

const [deed, folder = '', archive = '', url] = process.argv.slice(2)
const places = { dataFolder: folder, databaseFile: join(folder, 'plenum.db') }
say('begin')
if (deed === 'backup') await makeBackup({ ...places, to: archive, madeAt: '', version: '' })
else await restoreBackup({ ...places, archive, ...(url && toRestore(url, folder)) })
say('done')
