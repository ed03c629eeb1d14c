import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import Database from 'better-sqlite3'
import { asUnavailable } from './unavailable'

/**
 * Copies a database as it is at one moment, also while others write to it, and leaves the copy whole at `to` or
 * nothing. One at a time for one `to`. Throws `DatabaseUnavailable`.
 */
export function copyDatabase(file: string, to: string): void {
  const unfinished = `${to}.unfinished`
  try {
    rmSync(unfinished, { force: true })
    const source = new Database(file, { readonly: true, fileMustExist: true })
    try {
      source.prepare('VACUUM INTO ?').run(unfinished)
    } finally {
      source.close()
    }
    const handle = openSync(unfinished, 'r+')
    fsyncSync(handle)
    closeSync(handle)
    renameSync(unfinished, to)
  } catch (error) {
    rmSync(unfinished, { force: true })
    throw asUnavailable(error)
  }
}

/** Looks through a whole copy, and gives the migrations it has. Throws `DatabaseUnavailable` where it is damaged. */
export function checkCopy(file: string): string[] {
  let db: Database.Database | undefined
  try {
    db = new Database(file, { readonly: true, fileMustExist: true })
    const faults = [...(db.pragma('integrity_check(1)') as { integrity_check: string }[])]
    const orphans = db.pragma('foreign_key_check') as unknown[]
    if (faults[0]?.integrity_check !== 'ok' || orphans.length > 0) {
      throw new Error(`SQLITE_CORRUPT: ${faults[0]?.integrity_check}, ${orphans.length} rows that belong to nothing`)
    }
    return db
      .prepare(
        'SELECT "migration_name" FROM "_prisma_migrations" WHERE "finished_at" IS NOT NULL AND "rolled_back_at" IS NULL',
      )
      .pluck()
      .all() as string[]
  } catch (error) {
    throw asUnavailable(error)
  } finally {
    db?.close()
  }
}
