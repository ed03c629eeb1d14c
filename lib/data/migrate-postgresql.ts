import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { type AppliedMigration, listMigrations, type Migration, MigrationRefused, pendingIn } from './migrations'
import { databaseUrl, migrationsFolder } from './place'
import { asUnavailable } from './unavailable'

// Prisma's own table, as its command line makes it.
const MIGRATIONS_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" VARCHAR(36) PRIMARY KEY NOT NULL, "checksum" VARCHAR(64) NOT NULL, "finished_at" TIMESTAMPTZ,
  "migration_name" VARCHAR(255) NOT NULL, "logs" TEXT, "rolled_back_at" TIMESTAMPTZ,
  "started_at" TIMESTAMPTZ NOT NULL DEFAULT now(), "applied_steps_count" INTEGER NOT NULL DEFAULT 0)`

/** Any number, the same in every process: who holds it migrates. */
export const MIGRATION_LOCK = 20_261_125

const OLDEST_VERSION = 13

/**
 * Brings a PostgreSQL database to this program's version and returns the names of the migrations it applied: all of
 * them in one transaction; of several processes one applies them and the others wait. Throws `MigrationRefused` or
 * `DatabaseUnavailable`.
 */
export async function migratePostgres({
  url = databaseUrl(),
  folder = migrationsFolder('postgresql'),
  moving = false,
} = {}): Promise<string[]> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000, application_name: 'plenum' })
  // Without a listener a connection that breaks while it is idle would end the process.
  client.on('error', () => {})
  try {
    await client.connect()
    const refusal = serverRefusal(await serverFacts(client))
    if (refusal !== null) throw new MigrationRefused(refusal)
    return await apply(client, listMigrations(folder), moving)
  } catch (error) {
    throw asUnavailable(error)
  } finally {
    await client.end().catch(() => {})
  }
}

/** Why a server cannot hold our database, or null. `version` is its `server_version_num`. */
export function serverRefusal({ version, encoding }: { version: number; encoding: string }): string | null {
  if (version < OLDEST_VERSION * 10_000)
    return `PostgreSQL ${Math.floor(version / 10_000)} is too old: ${OLDEST_VERSION} or newer is needed. Update the server, or give DATABASE_URL another one; nothing was changed.`
  if (encoding !== 'UTF8')
    return `This database keeps text as ${encoding}, which has no room for every name. Make one with ENCODING 'UTF8'; nothing was changed.`
  return null
}

async function serverFacts(client: pg.Client): Promise<{ version: number; encoding: string }> {
  const { rows } = await client.query<{ version: string; encoding: string }>(
    `SELECT current_setting('server_version_num') AS version, current_setting('server_encoding') AS encoding`,
  )
  return { version: Number(rows[0]?.version), encoding: rows[0]?.encoding ?? '' }
}

async function apply(client: pg.Client, migrations: Migration[], moving: boolean): Promise<string[]> {
  if ((await pendingOnServer(client, migrations, moving)).length === 0) return []
  await client.query('BEGIN')
  try {
    await client.query(`SET LOCAL lock_timeout = '10min'`)
    await client.query('SELECT pg_advisory_xact_lock($1)', [MIGRATION_LOCK])
    // A table that somebody uses for long is not waited for: everybody else would queue behind us.
    await client.query(`SET LOCAL lock_timeout = '20s'`)
    await client.query(MIGRATIONS_TABLE)
    // Asked again: another process may have applied them while this one waited.
    const todo = await pendingOnServer(client, migrations, moving)
    for (const { name, sql, checksum } of todo) {
      await client.query(sql)
      await client.query(
        `INSERT INTO "_prisma_migrations" ("id", "checksum", "migration_name", "finished_at", "applied_steps_count")
         VALUES ($1, $2, $3, now(), 1)`,
        [randomUUID(), checksum, name],
      )
    }
    await client.query('COMMIT')
    return todo.map(({ name }) => name)
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {})
    throw error
  }
}

/** What a server's database lacks; refuses as `pendingIn`. */
export async function pendingOnServer(
  client: pg.Client,
  migrations: Migration[],
  moving = false,
): Promise<Migration[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c WHERE c.relkind IN ('r', 'p') AND c.relnamespace = current_schema()::regnamespace`,
  )
  const tables = rows.map(({ name }) => name)
  const applied = tables.includes('_prisma_migrations')
    ? await client.query<AppliedMigration>(
        'SELECT migration_name AS name, checksum, finished_at AS finished FROM _prisma_migrations WHERE rolled_back_at IS NULL',
      )
    : { rows: [] }
  return pendingIn({ tables, applied: applied.rows }, migrations, { moving })
}
