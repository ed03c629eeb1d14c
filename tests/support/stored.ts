import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import pg from 'pg'
import { databaseFile, databaseKind, databaseUrl } from '@/lib/data/place'
import { ask } from './postgres'
import { listTables } from './rows'

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
  if (databaseKind() === 'sqlite') {
    // What was written last stands beside the file until it is taken over.
    const files = [databaseFile(), `${databaseFile()}-wal`].filter((file) => existsSync(file))
    return files.map((file) => readFileSync(file, 'latin1')).join('')
  }
  const rows = await ask<{ text: string }>(
    databaseUrl(),
    `SELECT query_to_xml(format('SELECT * FROM %I', tablename), true, true, '')::text AS text
     FROM pg_tables WHERE schemaname = current_schema()`,
  )
  return rows.map(({ text }) => text).join('\n')
}

/** How many rows each table has, and a sum over all they hold; left out is who tried how often. */
export async function everyRow(): Promise<Record<string, string>> {
  const sumOf = (rows: string[]) =>
    `${rows.length} ${createHash('sha256').update(rows.sort().join('\n')).digest('hex')}`
  const places = (await listStored()).filter(([table]) => table !== 'Attempt')
  return Object.fromEntries(places.map(([table, rows]) => [table, sumOf(rows)]))
}

/** The tables in whose rows a word stands. */
export async function tablesWith(word: string): Promise<string[]> {
  const places = await listStored()
  return places.filter(([, rows]) => rows.some((row) => row.includes(word))).map(([table]) => table)
}

async function listStored(): Promise<[table: string, rows: string[]][]> {
  const asText = (rows: unknown[]) => rows.map((row) => JSON.stringify(row))
  if (databaseKind() === 'sqlite') {
    const db = new Database(databaseFile(), { readonly: true })
    try {
      return listTables(db).map((table) => [table, asText(db.prepare(`SELECT * FROM "${table}"`).all())])
    } finally {
      db.close()
    }
  }
  const client = new pg.Client({ connectionString: databaseUrl() })
  await client.connect()
  try {
    const { rows } = await client.query<{ tablename: string }>(
      'SELECT tablename FROM pg_tables WHERE schemaname = current_schema() ORDER BY tablename',
    )
    const places: [string, string[]][] = []
    for (const { tablename } of rows)
      places.push([tablename, asText((await client.query(`SELECT * FROM "${tablename}"`)).rows)])
    return places
  } finally {
    await client.end()
  }
}
