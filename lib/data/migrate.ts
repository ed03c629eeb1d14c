import { randomUUID } from 'node:crypto'
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import { copyDatabase } from './copy'
import {
  type AppliedMigration,
  listMigrations,
  type Migration,
  MigrationRefused,
  MOVE_MARK,
  pendingIn,
} from './migrations'
import { databaseFile, migrationsFolder } from './place'
import { asUnavailable } from './unavailable'

// Prisma's own table and checksums, so that its command line agrees about what is applied.
const MIGRATIONS_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME,
  "migration_name" TEXT NOT NULL, "logs" TEXT, "rolled_back_at" DATETIME,
  "started_at" DATETIME NOT NULL DEFAULT current_timestamp, "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`

/**
 * Brings a database in a file to this program's version and returns the names of the migrations it applied. Copies a database
 * that holds something to `<file>.before-<migration>` first. All pending migrations are one transaction; of several
 * processes one applies them and the others wait. Throws `MigrationRefused` or `DatabaseUnavailable`.
 */
export function migrate({ file = databaseFile(), folder = migrationsFolder('sqlite'), moving = false } = {}): string[] {
  let db: Database.Database | undefined
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
    db = new Database(file, { timeout: 60_000 })
    db.pragma('journal_mode = WAL')
    // A table rebuild would cascade to child rows, and inside a transaction this pragma is ignored.
    db.pragma('foreign_keys = OFF')
    return apply(db, file, listMigrations(folder), moving)
  } catch (error) {
    throw asUnavailable(error)
  } finally {
    db?.close()
  }
}

function apply(db: Database.Database, file: string, migrations: Migration[], moving: boolean): string[] {
  if (pendingInFile(db, migrations, moving).length === 0) return []
  db.exec('BEGIN IMMEDIATE')
  try {
    db.exec(MIGRATIONS_TABLE)
    // Asked again: another process may have applied them while this one waited.
    const todo = pendingInFile(db, migrations, moving)
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

/** What a file's database lacks; refuses as `pendingIn`. */
export function pendingInFile(db: Database.Database, migrations: Migration[], moving = false): Migration[] {
  const found = tables(db)
  const applied = found.includes('_prisma_migrations')
    ? db
        .prepare(
          'SELECT migration_name AS name, checksum, finished_at AS finished FROM _prisma_migrations WHERE rolled_back_at IS NULL',
        )
        .all()
    : []
  return pendingIn({ tables: found, applied: applied as AppliedMigration[] }, migrations, { moving })
}

function tables(db: Database.Database): string[] {
  return db
    .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all() as string[]
}

function hasTables(db: Database.Database): boolean {
  return tables(db).some((name) => name !== '_prisma_migrations' && name !== MOVE_MARK)
}
