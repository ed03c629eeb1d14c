import { readFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import pg from 'pg'
import { databaseFile, databaseKind, databaseUrl } from '@/lib/data/place'

/** What is wrong with the file of the database; a PostgreSQL server looks after its own. */
export function faultsOfFile(): unknown[] {
  if (databaseKind() === 'postgresql') return []
  const db = new Database(databaseFile(), { readonly: true })
  try {
    const found = db.pragma('integrity_check') as { integrity_check: string }[]
    return [...found.filter((row) => row.integrity_check !== 'ok'), ...(db.pragma('foreign_key_check') as unknown[])]
  } finally {
    db.close()
  }
}

/** Everything that the database keeps, as one text to look for something in that must not be there. */
export async function storedText(): Promise<string> {
  if (databaseKind() === 'sqlite') return readFileSync(databaseFile(), 'latin1')
  const client = new pg.Client({ connectionString: databaseUrl() })
  await client.connect()
  try {
    const { rows } = await client.query<{ text: string }>(
      `SELECT query_to_xml(format('SELECT * FROM %I', tablename), true, true, '')::text AS text
       FROM pg_tables WHERE schemaname = current_schema()`,
    )
    return rows.map(({ text }) => text).join('\n')
  } finally {
    await client.end()
  }
}
