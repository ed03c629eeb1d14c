import { migrate } from '@/lib/data/migrate'
import { say } from './say'

const [file, folder] = process.argv.slice(2)
say('begin')
say(`applied ${migrate({ file, folder }).length}`)
