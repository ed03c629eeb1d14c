import { Prisma, type Questions } from './connection'

/** A row to be written: column to value. All rows of one call have the same columns. */
export type Row = Record<string, string | number | boolean | null>

// SQLite takes 32,766 values a statement.
const VALUES_A_STATEMENT = 8_000

/** Writes many rows in few statements: the client's own `createMany` costs about 28 times as much. */
export async function insertRows(tx: Questions, table: string, rows: Row[], onConflict = Prisma.empty): Promise<void> {
  const columns = Object.keys(rows[0] ?? {})
  const rowsAStatement = Math.floor(VALUES_A_STATEMENT / Math.max(1, columns.length))
  for (let start = 0; start < rows.length; start += rowsAStatement) {
    const part = rows.slice(start, start + rowsAStatement)
    const values = part.flatMap((row) => columns.map((column) => row[column] ?? null))
    // Table and column names are our own words; every value is a parameter.
    const head = `INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')}) VALUES (`
    const texts = values.map((_, i) => (i === 0 ? head : i % columns.length === 0 ? '), (' : ', '))
    await tx.$executeRaw(Prisma.sql`${new Prisma.Sql([...texts, ')'], values)} ${onConflict}`)
  }
}

/** `ON CONFLICT (key) DO UPDATE SET …` for every column that is not part of the key. */
export function orUpdate(key: string[], columns: string[]): Prisma.Sql {
  const sets = columns.filter((column) => !key.includes(column)).map((column) => `"${column}" = excluded."${column}"`)
  return Prisma.raw(`ON CONFLICT (${key.map((column) => `"${column}"`).join(', ')}) DO UPDATE SET ${sets.join(', ')}`)
}
