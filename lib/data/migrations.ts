import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { migrationsFolder } from './place'

/** The database cannot be brought to this program's version; the message says why and what to do. Nothing was changed. */
export class MigrationRefused extends Error {
  override name = 'MigrationRefused'
}

export interface Migration {
  name: string
  sql: string
  checksum: string
}

/** A row of Prisma's own table, whose checksums and columns are kept so that its command line agrees about what is applied. */
export interface AppliedMigration {
  name: string
  checksum: string
  finished: unknown
}

/** The migrations of a folder, oldest first. */
export function listMigrations(folder = migrationsFolder()): Migration[] {
  const names = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  return names
    .map(({ name }) => ({ name, bytes: readFileSync(join(folder, name, 'migration.sql')) }))
    .map(({ name, bytes }) => ({
      name,
      sql: bytes.toString('utf8'),
      checksum: createHash('sha256').update(bytes).digest('hex'),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
}

/** What a database is known by before anything is done to it. */
export interface FoundDatabase {
  tables: string[]
  applied: AppliedMigration[]
}

/** The table that a move makes first and drops last. */
export const MOVE_MARK = '_plenum_move'

/** What is not applied yet. Refuses a database that is half-moved (but `moving`), or that this folder cannot have made. */
export function pendingIn(found: FoundDatabase, migrations: Migration[], { moving = false } = {}): Migration[] {
  const tables = found.tables.filter((name) => name !== MOVE_MARK)
  if (tables.length < found.tables.length && !moving)
    throw new MigrationRefused(
      'A move into this database was begun and not finished, so that what it holds is not whole. Do the move again, or give DATABASE_URL the database that was moved; nothing was changed.',
    )
  if (!tables.includes('_prisma_migrations')) {
    if (tables.length > 0)
      throw new MigrationRefused(
        'This database was not made by this program. Give DATABASE_URL another one; nothing was changed.',
      )
    return migrations
  }
  for (const row of found.applied) {
    const known = migrations.find(({ name }) => name === row.name)
    if (!row.finished)
      throw new MigrationRefused(
        `The update "${row.name}" was begun by another tool and not finished. Restore the copy made before it; nothing was changed now.`,
      )
    if (!known)
      throw new MigrationRefused(
        `The database was made by a newer version ("${row.name}" is unknown here). Update the program, or restore an older copy.`,
      )
    if (known.checksum !== row.checksum)
      throw new MigrationRefused(
        `The file of the update "${row.name}" was changed after it was applied. Bring back the original file; nothing was changed in the database.`,
      )
  }
  const done = new Set(found.applied.map((row) => row.name))
  return migrations.filter(({ name }) => !done.has(name))
}

/** Whether every migration of this program is applied, for the health page. */
export function isUpToDate(applied: string[], folder = migrationsFolder()): boolean {
  return existsSync(folder) && listMigrations(folder).every(({ name }) => applied.includes(name))
}
