import Database from 'better-sqlite3'
import { listTables } from './rows'

interface Column {
  name: string
  type: string
  notnull: number
  pk: number
}
type Key = { from: string; table: string; to: string }

/**
 * Writes so many rows into every table of a database, whatever its version: each with a value in every column, and
 * its parents among the rows of theirs. For old databases that today's program can no longer write. `given` names the
 * columns whose texts something will read.
 */
export function fillTables(file: string, rows: number, given: Record<string, string> = {}): void {
  const db = new Database(file)
  db.pragma('foreign_keys = OFF') // a table may come before its parents; all of it is checked below
  const fill = db.transaction(() => {
    for (const table of listTables(db)) {
      const columns = db.pragma(`table_info("${table}")`) as Column[]
      const keys = db.pragma(`foreign_key_list("${table}")`) as Key[]
      const insert = db.prepare(
        `INSERT INTO "${table}" (${columns.map(({ name }) => `"${name}"`)}) VALUES (${columns.map(() => '?')})`,
      )
      for (let row = 1; row <= rows; row++)
        insert.run(columns.map((column) => given[column.name] ?? valueFor(column, keys, row, rows)))
    }
  })
  fill()
  const orphans = db.pragma('foreign_key_check') as unknown[]
  db.close()
  if (orphans.length > 0) throw new Error(`${orphans.length} rows of ${file} belong to nothing`)
}

function valueFor({ name, type, pk }: Column, keys: Key[], row: number, rows: number): string | number {
  const parent = keys.find(({ from }) => from === name)
  // Where the parent alone is the key each has one child; else some parents have several and others none.
  if (parent) return keyText(parent.to, pk > 0 ? row : Math.ceil(row / 3) + (rows > 9 ? 2 : 0))
  if (/BOOL/i.test(type)) return row % 2
  if (/INT/i.test(type)) return row
  if (/DATE/i.test(type)) return `2026-11-25T09:53:27.${String(row % 1000).padStart(3, '0')}+00:00`
  if (/REAL|FLOAT|DOUBLE/i.test(type)) return row + 0.5
  return keyText(name, row)
}

function keyText(column: string, row: number): string {
  return `${column}-${row}`
}
