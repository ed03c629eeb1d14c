import { moveDatabase } from '@/lib/data/move'
import { say } from './say'

const [from = '', to = ''] = process.argv.slice(2)
say('begin')
await moveDatabase({ from, to })
say('done')
