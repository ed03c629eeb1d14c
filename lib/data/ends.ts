import type Database from 'better-sqlite3'
import type pg from 'pg'
import { storable } from './storable'
import type { ColumnKind, Table } from './tables'

/** A value as it is compared and handed over, the same from both kinds of database; a moment is ISO text. */
export type Value = string | number | boolean | null
export type Row = Value[]

/** One of the two databases of a move. */
export interface End {
  /** All rows in the order of the key, in parts; never all at once. */
  rows(table: Table): AsyncIterable<Row[]>
  insert(table: Table, rows: Row[]): Promise<void>
  empty(table: Table): Promise<void>
  run(statement: string): Promise<void>
}

const ROWS_A_PART = 2_000

function quoted(names: string[]): string {
  return names.map((name) => `"${name}"`).join(', ')
}

export function sqliteEnd(db: Database.Database): End {
  const fromFile: Record<ColumnKind, (value: unknown) => Value> = {
    text: (value) => storable(value as string),
    number: (value) => value as number,
    boolean: (value) => value === 1,
    moment: (value) => new Date(value as string | number).toISOString(),
  }
  const intoFile: Record<ColumnKind, (value: Value) => string | number> = {
    text: (value) => value as string,
    number: (value) => value as number,
    boolean: (value) => (value ? 1 : 0),
    // As the client writes it; it is compared as text.
    moment: (value) => (value as string).replace('Z', '+00:00'),
  }
  return {
    async *rows({ name, columns, key }) {
      const names = quoted(columns.map((column) => column.name))
      const found = db
        .prepare(`SELECT ${names} FROM "${name}" ORDER BY ${quoted(key)}`)
        .raw()
        .iterate()
      let part: Row[] = []
      for (const row of found as Iterable<unknown[]>) {
        part.push(columns.map(({ kind }, i) => (row[i] === null ? null : fromFile[kind](row[i]))))
        if (part.length < ROWS_A_PART) continue
        yield part
        part = []
      }
      yield part
    },
    async insert({ name, columns }, rows) {
      const names = quoted(columns.map((column) => column.name))
      const insert = db.prepare(`INSERT INTO "${name}" (${names}) VALUES (${columns.map(() => '?').join(', ')})`)
      for (const row of rows)
        insert.run(row.map((value, i) => (value === null ? null : intoFile[columns[i]?.kind ?? 'text'](value))))
    },
    async empty({ name }) {
      db.exec(`DELETE FROM "${name}"`)
    },
    async run(statement) {
      db.exec(statement)
    },
  }
}

export function postgresEnd(client: pg.Client): End {
  return {
    async *rows({ name, columns, key }) {
      const read = columns.map((column) =>
        column.kind === 'moment' ? `to_char("${column.name}", 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')` : `"${column.name}"`,
      )
      await client.query(
        `DECLARE "moving" NO SCROLL CURSOR FOR SELECT ${read.join(', ')} FROM "${name}" ORDER BY ${quoted(key)}`,
      )
      for (;;) {
        const { rows } = await client.query<Row>({ text: `FETCH ${ROWS_A_PART} FROM "moving"`, rowMode: 'array' })
        yield rows
        if (rows.length < ROWS_A_PART) break
      }
      await client.query('CLOSE "moving"')
    },
    async insert({ name, columns }, rows) {
      if (rows.length === 0) return
      const names = quoted(columns.map((column) => column.name))
      const keyed = rows.map((row) => Object.fromEntries(columns.map((column, i) => [column.name, row[i]])))
      await client.query(
        `INSERT INTO "${name}" (${names}) SELECT ${names} FROM json_populate_recordset(NULL::"${name}", $1::json)`,
        [JSON.stringify(keyed)],
      )
    },
    async empty({ name }) {
      await client.query(`DELETE FROM "${name}"`)
    },
    async run(statement) {
      await client.query(statement)
    },
  }
}
