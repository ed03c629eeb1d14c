import { Prisma } from './connection'
import { databaseKind } from './place'
import { storable } from './storable'

type Kind = 'text' | 'number'

/**
 * Rows as a table named `j`, with a column for each key: `FROM ${jsonRows(rows, { id: 'text', people: 'number' })}`.
 * A list of values cannot be typed as columns in both kinds of database; JSON text can, each in its own words.
 */
export function jsonRows<K extends string>(
  rows: readonly Record<K, string | number | null>[],
  columns: Record<K, Kind>,
): Prisma.Sql {
  const json = JSON.stringify(rows, (_, value) => storable(value))
  const each = Object.entries<Kind>(columns)
  // Column names are our own words; the rows are one parameter.
  if (databaseKind() === 'postgresql') {
    const typed = each.map(([name, kind]) => `"${name}" ${kind === 'text' ? 'text' : 'double precision'}`)
    return Prisma.sql`json_to_recordset(${json}::json) AS j(${Prisma.raw(typed.join(', '))})`
  }
  const read = each.map(([name]) => `r."value" ->> '${name}' AS "${name}"`)
  return Prisma.sql`(SELECT ${Prisma.raw(read.join(', '))} FROM json_each(${json}) r) j`
}
