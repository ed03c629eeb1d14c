import { createHash, randomUUID } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { copyDatabase } from './copy'
import { databaseFile, migrationsFolder } from './place'
import { asUnavailable } from './unavailable'

/** The database cannot be brought to this program's version; the message says why and what to do. Nothing was changed. */
export class MigrationRefused extends Error {
  override name = 'MigrationRefused'
}

interface Migration {
  name: string
  sql: string
  checksum: string
}

// Prisma's own table and checksums, so that its command line agrees about what is applied.
const MIGRATIONS_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME,
  "migration_name" TEXT NOT NULL, "logs" TEXT, "rolled_back_at" DATETIME,
  "started_at" DATETIME NOT NULL DEFAULT current_timestamp, "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`

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

/**
 * Brings the database to this program's version and returns the names of the migrations it applied. Copies a database
 * that holds something to `<file>.before-<migration>` first. All pending migrations are one transaction; of several
 * processes one applies them and the others wait. Throws `MigrationRefused` or `DatabaseUnavailable`.
 */
export function migrate({ file = databaseFile(), folder = migrationsFolder() } = {}): string[] {
  let db: Database.Database | undefined
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
    db = new Database(file, { timeout: 60_000 })
    db.pragma('journal_mode = WAL')
    // A table rebuild would cascade to child rows, and inside a transaction this pragma is ignored.
    db.pragma('foreign_keys = OFF')
    return apply(db, file, listMigrations(folder))
  } catch (error) {
    throw asUnavailable(error)
  } finally {
    db?.close()
  }
}

function apply(db: Database.Database, file: string, migrations: Migration[]): string[] {
  if (pending(db, migrations).length === 0) return []
  db.exec('BEGIN IMMEDIATE')
  try {
    db.exec(MIGRATIONS_TABLE)
    // Asked again: another process may have applied them while this one waited.
    const todo = pending(db, migrations)
    // Through a second connection: this one holds the lock, so that nobody writes between the copy and the update.
    if (todo[0] && hasTables(db)) copyDatabase(file, `${file}.before-${todo[0].name}`)
    for (const migration of todo) {
      db.exec(migration.sql)
      db.prepare(
        `INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name", "started_at", "finished_at", "applied_steps_count")
         VALUES (?, ?, ?, current_timestamp, current_timestamp, 1)`,
      ).run(randomUUID(), migration.checksum, migration.name)
    }
    const orphans = db.pragma('foreign_key_check') as { table: string }[]
    if (orphans.length > 0) {
      const tables = [...new Set(orphans.map((row) => row.table))].join(', ')
      throw new MigrationRefused(
        `The update would leave rows in ${tables} that belong to nothing. Nothing was changed; please report this.`,
      )
    }
    db.exec('COMMIT')
    return todo.map((migration) => migration.name)
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK')
    throw error
  }
}

/** What is not applied yet. Refuses a database that this folder cannot have made. */
function pending(db: Database.Database, migrations: Migration[]): Migration[] {
  if (!tables(db).includes('_prisma_migrations')) {
    if (hasTables(db))
      throw new MigrationRefused(
        'This database was not made by this program. Give DATABASE_URL another file; nothing was changed.',
      )
    return migrations
  }
  const rows = db
    .prepare(
      'SELECT migration_name AS name, checksum, finished_at AS finished FROM _prisma_migrations WHERE rolled_back_at IS NULL',
    )
    .all() as { name: string; checksum: string; finished: unknown }[]
  for (const row of rows) {
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
  const applied = new Set(rows.map((row) => row.name))
  return migrations.filter(({ name }) => !applied.has(name))
}

function tables(db: Database.Database): string[] {
  return db
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all() as string[]
}

function hasTables(db: Database.Database): boolean {
  return tables(db).some((name) => name !== '_prisma_migrations')
}

/** Whether every migration of this program is applied, for the health page. */
export function isUpToDate(applied: string[], folder = migrationsFolder()): boolean {
  return existsSync(folder) && listMigrations(folder).every(({ name }) => applied.includes(name))
}
