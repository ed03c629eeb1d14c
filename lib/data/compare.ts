import { createHash } from 'node:crypto'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { clientFor } from './connection'
import type { End } from './ends'
import { readHouseholds } from './households'
import { databaseKind } from './place'
import type { Table } from './tables'

/** How many rows a table has, and the SHA-256 of all of them in the order of its key. */
export interface TableSum {
  name: string
  rows: number
  sha256: string
}

/** Sums a table up; the same rows give the same sum in both kinds of database. */
export async function sumOf(end: End, table: Table): Promise<TableSum> {
  const hash = createHash('sha256')
  let rows = 0
  for await (const part of end.rows(table)) {
    rows += part.length
    for (const row of part) hash.update(`${JSON.stringify(row)}\n`)
  }
  return { name: table.name, rows, sha256: hash.digest('hex') }
}

const HOMES_AT_ONCE = 500
const SYSTEM = { kind: 'system' } as const

/** The SHA-256 of every home's household file, by our id, as the program itself reads them. */
export async function exportSums(url: string): Promise<Map<string, string>> {
  const client = clientFor(url)
  const sums = new Map<string, string>()
  try {
    let after = ''
    for (;;) {
      const homes = await client.household.findMany({
        where: { id: { gt: after } },
        orderBy: { id: 'asc' },
        take: HOMES_AT_ONCE,
        select: { id: true },
      })
      const ids = homes.map(({ id }) => id)
      for (const { id, household } of await readHouseholds(client, SYSTEM, ids, databaseKind(url))) {
        sums.set(
          id,
          createHash('sha256')
            .update(writeHouseholdFile([household]))
            .digest('hex'),
        )
      }
      const last = ids.at(-1)
      if (last === undefined) return sums
      after = last
    }
  } finally {
    await client.$disconnect()
  }
}
