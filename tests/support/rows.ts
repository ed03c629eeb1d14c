import Database from 'better-sqlite3'

/** How many rows each table of a database has; fails where the file is damaged. */
export function countRows(file: string): Record<string, number> {
  const db = new Database(file, { readonly: true })
  try {
    const faults = [...(db.pragma('integrity_check') as unknown[]), ...(db.pragma('foreign_key_check') as unknown[])]
    if (JSON.stringify(faults) !== '[{"integrity_check":"ok"}]') throw new Error(JSON.stringify(faults))
    return Object.fromEntries(
      listTables(db).map((table) => [table, db.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number]),
    )
  } finally {
    db.close()
  }
}

/** The tables of ours. */
export function listTables(db: Database.Database): string[] {
  return db
    .prepare(
      "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_%' ESCAPE '\\' ORDER BY name",
    )
    .pluck()
    .all() as string[]
}
