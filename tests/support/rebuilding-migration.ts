import { cpSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'

/** Prisma's way of changing a column: the table is made anew, filled, and put in the old one's place. */
export function rebuild(file: string, table: string): string {
  const db = new Database(file, { readonly: true })
  try {
    const statements = db
      .prepare('SELECT type, sql FROM sqlite_master WHERE tbl_name = ? AND sql IS NOT NULL')
      .all(table) as { type: string; sql: string }[]
    const columns = (db.pragma(`table_info("${table}")`) as { name: string }[])
      .map(({ name }) => `"${name}"`)
      .join(', ')
    const made = statements.find(({ type }) => type === 'table')?.sql ?? ''
    return [
      'PRAGMA defer_foreign_keys=ON;\nPRAGMA foreign_keys=OFF',
      made.replace(
        `CREATE TABLE "${table}" (`,
        `CREATE TABLE "new_${table}" (\n    "added" TEXT NOT NULL DEFAULT 'new',`,
      ),
      `INSERT INTO "new_${table}" (${columns}) SELECT ${columns} FROM "${table}"`,
      `DROP TABLE "${table}"`,
      `ALTER TABLE "new_${table}" RENAME TO "${table}"`,
      ...statements.filter(({ type }) => type === 'index').map(({ sql }) => sql),
      'PRAGMA foreign_keys=ON;\nPRAGMA defer_foreign_keys=OFF;\n',
    ].join(';\n')
  } finally {
    db.close()
  }
}

/** The program's migrations and one more, in a folder of their own. */
export function folderWith(folder: string, name: string, sql: string): string {
  cpSync('prisma/sqlite/migrations', folder, { recursive: true })
  mkdirSync(join(folder, name))
  writeFileSync(join(folder, name, 'migration.sql'), sql)
  return folder
}
