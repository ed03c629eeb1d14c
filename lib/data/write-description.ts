import type { Household } from '@/lib/core/household'
import { Prisma, type Questions } from './connection'
import { DESCRIBED_TABLES, type DescribedTable, describedRows, householdRow } from './household-rows'
import { insertRows, orUpdate } from './insert'

/** Writes what describes a home over what stood there, and raises both revisions. Notes at a filter that stays, stay. */
export async function writeDescription(tx: Questions, householdId: string, household: Household): Promise<void> {
  const sets = Object.entries(householdRow(household)).map(
    ([column, value]) => Prisma.sql`${Prisma.raw(`"${column}"`)} = ${value}`,
  )
  await tx.$executeRaw`UPDATE "Household" SET ${Prisma.join(sets)} WHERE "id" = ${householdId}`
  const described = describedRows(householdId, household)
  for (const table of DESCRIBED_TABLES) await writeList(tx, householdId, table, described[table])
}

async function writeList(
  tx: Questions,
  householdId: string,
  table: DescribedTable,
  rows: ReturnType<typeof describedRows>[DescribedTable],
): Promise<void> {
  const own = table === 'DustEvent' || table === 'WeatherSpell' ? 'position' : 'id'
  const kept = rows.map((row) => row[own])
  const but = kept.length > 0 ? Prisma.sql`AND ${Prisma.raw(`"${own}"`)} NOT IN (${Prisma.join(kept)})` : Prisma.empty
  await tx.$executeRaw`DELETE FROM ${Prisma.raw(`"${table}"`)} WHERE "householdId" = ${householdId} ${but}`
  await insertRows(tx, table, rows, orUpdate(['householdId', own], Object.keys(rows[0] ?? {})))
}
