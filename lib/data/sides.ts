import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import pg from 'pg'
import { type End, postgresEnd, sqliteEnd } from './ends'
import { migrate, pendingInFile } from './migrate'
import { migratePostgres, pendingOnServer } from './migrate-postgresql'
import { listMigrations, MOVE_MARK } from './migrations'
import { databaseFile, databaseKind, migrationsFolder } from './place'
import { type Table, tablesOf } from './tables'

/** A database that something is moved out of or into. */
export interface Side {
  end: End
  /** The tables, where this kind of database is the one that tells them. */
  tables(): Table[] | null
  /** How many of the program's migrations it lacks. */
  lacking(): Promise<number>
  /** Begins to read one moment; with `hold` nobody writes until the side is closed. */
  beginReading(hold: boolean): Promise<void>
  isMarked(): Promise<boolean>
  /** Whether there is no row in any table of ours. */
  isEmpty(): Promise<boolean>
  /** False where another process is moving into it. */
  lock(): Promise<boolean>
  /** Marks it as half-moved and makes the tables. */
  claim(): Promise<void>
  /** All that `write` does is saved as one, or nothing. */
  asOne(write: () => Promise<void>): Promise<void>
  unmark(): Promise<void>
  close(): Promise<void>
}

/** Opens one side of a move. A file is made where there is none, unless it is to be read. */
export function openSide(url: string, { toRead }: { toRead: boolean }): Promise<Side> {
  return databaseKind(url) === 'sqlite' ? openFile(databaseFile(url), toRead) : openServer(url)
}

async function openFile(file: string, toRead: boolean): Promise<Side> {
  if (!toRead) mkdirSync(dirname(file), { recursive: true, mode: 0o700 })
  const db = new Database(file, { fileMustExist: toRead, timeout: 5_000 })
  db.pragma('journal_mode = WAL')
  db.pragma('foreign_keys = OFF') // parents come first, and all of it is checked before it is saved
  const names = () => db.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").pluck().all() as string[]
  return {
    end: sqliteEnd(db),
    tables: () => tablesOf(db),
    lacking: async () => pendingInFile(db, listMigrations(migrationsFolder('sqlite'))).length,
    async beginReading(hold) {
      db.exec(hold ? 'BEGIN IMMEDIATE' : 'BEGIN')
    },
    isMarked: async () => names().includes(MOVE_MARK),
    isEmpty: async () =>
      names()
        .filter((name) => !/^(_|sqlite_)/.test(name))
        .every((name) => db.prepare(`SELECT 1 FROM "${name}" LIMIT 1`).get() === undefined),
    lock: async () => true,
    async claim() {
      db.exec(`CREATE TABLE IF NOT EXISTS "${MOVE_MARK}" ("begun" TEXT)`)
      migrate({ file, moving: true })
    },
    async asOne(write) {
      db.exec('BEGIN IMMEDIATE')
      try {
        await write()
        const orphans = db.pragma('foreign_key_check') as unknown[]
        if (orphans.length > 0) throw new Error(`${orphans.length} rows would belong to nothing`)
        db.exec('COMMIT')
      } catch (error) {
        if (db.inTransaction) db.exec('ROLLBACK')
        throw error
      }
    },
    async unmark() {
      db.exec(`DROP TABLE "${MOVE_MARK}"`)
      // One file, whole without another beside it; the next start turns it on again.
      db.pragma('journal_mode = DELETE')
    },
    async close() {
      if (db.inTransaction) db.exec('ROLLBACK')
      db.close()
    },
  }
}

/** Any number but that of the migrations: who holds it moves. */
const MOVE_LOCK = 20_261_126

async function openServer(url: string): Promise<Side> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: 10_000,
    application_name: 'plenum move',
  })
  client.on('error', () => {})
  await client.connect()
  const end = postgresEnd(client)
  const names = async () =>
    (
      await client.query<{ name: string }>(
        `SELECT tablename AS name FROM pg_tables WHERE schemaname = current_schema()`,
      )
    ).rows.map(({ name }) => name)
  const ours = async () => (await names()).filter((name) => !name.startsWith('_'))
  return {
    end,
    tables: () => null,
    lacking: async () => (await pendingOnServer(client, listMigrations(migrationsFolder('postgresql')))).length,
    async beginReading(hold) {
      const list = (await ours()).map((name) => `"${name}"`).join(', ')
      await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ')
      await client.query(`SET LOCAL lock_timeout = '20s'`)
      // Before the first question, so that its moment is after the last write.
      if (hold && list) await client.query(`LOCK TABLE ${list} IN SHARE MODE`)
    },
    isMarked: async () => (await names()).includes(MOVE_MARK),
    async isEmpty() {
      for (const name of await ours()) {
        const { rowCount } = await client.query(`SELECT 1 FROM "${name}" LIMIT 1`)
        if (rowCount) return false
      }
      return true
    },
    async lock() {
      const { rows } = await client.query<{ got: boolean }>('SELECT pg_try_advisory_lock($1) AS got', [MOVE_LOCK])
      return rows[0]?.got === true
    },
    async claim() {
      await client.query(`CREATE TABLE IF NOT EXISTS "${MOVE_MARK}" ("begun" TEXT)`)
      await migratePostgres({ url, moving: true })
    },
    async asOne(write) {
      await client.query('BEGIN')
      try {
        await write()
        await client.query('COMMIT')
      } catch (error) {
        await client.query('ROLLBACK').catch(() => {})
        throw error
      }
      await client.query('ANALYZE')
    },
    unmark: () => end.run(`DROP TABLE "${MOVE_MARK}"`),
    close: () => client.end().catch(() => {}),
  }
}
