import { migratePostgres } from '@/lib/data/migrate-postgresql'
import { say } from './say'

const [url, folder] = process.argv.slice(2)
say('begin')
say(`applied ${(await migratePostgres({ url, folder })).length}`)
