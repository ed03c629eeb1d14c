import type Database from 'better-sqlite3'

/** How a column's values are the same in both kinds of database. A moment is an instant of the account library's. */
export type ColumnKind = 'text' | 'number' | 'boolean' | 'moment'

export interface Table {
  name: string
  columns: { name: string; kind: ColumnKind }[]
  /** The columns of the primary key, in its order: in this order rows are read. */
  key: string[]
}

interface FoundColumn {
  name: string
  type: string
  pk: number
}

/** Every table of ours as an embedded database has it, parents before children. */
export function tablesOf(db: Database.Database): Table[] {
  const names = db
    .prepare(
      `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite!_%' ESCAPE '!'
       AND name NOT LIKE '!_%' ESCAPE '!' ORDER BY name`,
    )
    .pluck()
    .all() as string[]
  const parents = new Map(
    names.map((name) => [
      name,
      (db.pragma(`foreign_key_list("${name}")`) as { table: string }[]).map(({ table }) => table),
    ]),
  )
  const ordered: string[] = []
  while (ordered.length < names.length) {
    const free = names.filter((name) => !ordered.includes(name))
    const ready = free.filter((name) =>
      parents.get(name)?.every((parent) => parent === name || ordered.includes(parent)),
    )
    if (ready.length === 0) throw new Error(`the tables ${free.join(', ')} need each other`)
    ordered.push(...ready)
  }
  return ordered.map((name) => {
    const columns = db.pragma(`table_info("${name}")`) as FoundColumn[]
    const key = columns.filter(({ pk }) => pk > 0).sort((a, b) => a.pk - b.pk)
    return {
      name,
      columns: columns.map((column) => ({ name: column.name, kind: kindOf(column) })),
      key: key.map((column) => column.name),
    }
  })
}

function kindOf({ name, type }: FoundColumn): ColumnKind {
  if (type === 'TEXT') return 'text'
  if (type === 'BOOLEAN') return 'boolean'
  if (type === 'DATETIME') return 'moment'
  if (type === 'INTEGER' || type === 'REAL') return 'number'
  throw new Error(`the column "${name}" has a type that cannot be moved: ${type}`)
}
