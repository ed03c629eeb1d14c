import { cpSync, existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { migrate } from '@/lib/data/migrate'
import { listMigrations } from '@/lib/data/migrations'
import { fillTables } from '../support/fill-tables'
import { freshDatabase } from '../support/fresh-database'
import { countRows, listTables } from '../support/rows'

const place = freshDatabase()
const names = listMigrations().map(({ name }) => name)
const ROWS = 200

/** A database as the program made it when it had only the first migrations, with rows in every table. */
function databaseOf(count: number, called = `version-${count}`): string {
  const folder = join(place.folder, `${called}-migrations`)
  mkdirSync(folder)
  for (const name of names.slice(0, count))
    cpSync(join('prisma/sqlite/migrations', name), join(folder, name), { recursive: true })
  const file = join(place.folder, `${called}.db`)
  expect(migrate({ file, folder })).toEqual(names.slice(0, count))
  fillTables(file, ROWS)
  return file
}

/** How many rows of each table belong to which row of another, so that no child changes its parent unseen. */
function belongings(file: string, tables: string[]): Record<string, unknown> {
  const db = new Database(file, { readonly: true })
  try {
    return Object.fromEntries(
      tables.flatMap((table) =>
        (db.pragma(`foreign_key_list("${table}")`) as { from: string }[]).map(({ from }) => [
          `${table}.${from}`,
          db.prepare(`SELECT "${from}", count(*) FROM "${table}" GROUP BY "${from}" ORDER BY "${from}"`).raw().all(),
        ]),
      ),
    )
  } finally {
    db.close()
  }
}

// Whoever updates after a long while comes from any of them; the last is the program's own and changes nothing.
for (let count = 1; count <= names.length; count++)
  test(`a full database of ${names[count - 1]} comes to this version with every row, and with a copy from before`, () => {
    const file = databaseOf(count)
    const rows = countRows(file)
    const tables = Object.keys(rows)
    expect(Object.values(rows).filter((found) => found !== ROWS)).toEqual([])
    expect(rows.Entry).toBe(ROWS)
    const before = belongings(file, tables)
    const todo = names.slice(count)
    expect(migrate({ file })).toEqual(todo)
    expect(countRows(file)).toMatchObject(rows)
    expect(belongings(file, tables)).toMatchObject(before)
    expect(existsSync(`${file}.before-${todo[0]}`)).toBe(todo.length > 0)
    if (todo.length > 0) expect(countRows(`${file}.before-${todo[0]}`)).toEqual(rows)
  })

test('the full database that these tests begin with has children whose loss would be seen', () => {
  const file = databaseOf(names.length, 'to-lose')
  const before = countRows(file)
  const db = new Database(file)
  db.pragma('foreign_keys = ON')
  db.exec('DELETE FROM "Household"')
  const lost = listTables(db).filter(
    (table) => db.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() !== before[table],
  )
  db.close()
  expect(lost).toEqual(expect.arrayContaining(['Household', 'Membership', 'System', 'Filter', 'Entry', 'Reading']))
})
