import { defineConfig } from 'prisma/config'

// As lib/data/place.ts has it.
const url = process.env.DATABASE_URL || `file:${process.env.DATA_DIR || './data'}/plenum.db`
// One schema language, one folder for each kind of database; the models are shared.
const folder = /^postgres(ql)?:/.test(url) ? 'prisma/postgresql' : 'prisma/sqlite'

export default defineConfig({
  schema: folder,
  migrations: { path: `${folder}/migrations` },
  datasource: { url },
})
