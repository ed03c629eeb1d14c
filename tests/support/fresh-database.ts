import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterAll, beforeAll, inject } from 'vitest'
import { closeDatabase } from '@/lib/data/connection'
import { migrate } from '@/lib/data/migrate'
import { createDatabase, dropDatabase, TEMPLATE } from './postgres'

export { AT } from './moment'
export { as, someone } from './someone'

/** Gives the tests of one file a real database of their own, of the project's kind, and a folder; gone afterwards. */
export function freshDatabase(): { folder: string } {
  const place = { folder: '' }
  const before = { DATABASE_URL: process.env.DATABASE_URL, DATA_DIR: process.env.DATA_DIR }
  const port = inject('postgresPort')
  beforeAll(async () => {
    place.folder = mkdtempSync(join(tmpdir(), 'plenum-'))
    process.env.DATA_DIR = place.folder
    if (port) {
      process.env.DATABASE_URL = await createDatabase(port, basename(place.folder), TEMPLATE)
    } else {
      process.env.DATABASE_URL = `file:${join(place.folder, 'plenum.db')}`
      migrate()
    }
  })
  afterAll(async () => {
    await closeDatabase()
    if (port) await dropDatabase(port, basename(place.folder))
    rmSync(place.folder, { recursive: true, force: true })
    for (const [key, value] of Object.entries(before)) {
      if (value === undefined) delete process.env[key]
      else process.env[key] = value
    }
  })
  return place
}
