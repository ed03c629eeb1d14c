import { defineConfig } from 'prisma/config'

const url = process.env.DATABASE_URL ?? 'file:./data/plenum.db'
// One schema language, one folder for each kind of database; the models are shared.
const folder = /^postgres(ql)?:/.test(url) ? 'prisma/postgresql' : 'prisma/sqlite'

export default defineConfig({
  schema: folder,
  migrations: { path: `${folder}/migrations` },
  datasource: { url },
})
