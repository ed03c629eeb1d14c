import type { Household } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { entryRows, readingRows } from './brought-rows'
import { Prisma, type Questions } from './connection'
import { DESCRIBED_TABLES, type DescribedTable, describedRows, householdRow } from './household-rows'
import { insertRows, orUpdate } from './insert'
import { recordRow, recordValue } from './record-rows'
import { signature } from './scope'

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

/**
 * Lets a file's version of a household stand instead of the kept one. Entries that the file has too stay as they are,
 * those that it hasn't are marked undone, new ones are added: the log keeps what was.
 */
export async function replaceHousehold(
  tx: Questions,
  act: Act,
  householdId: string,
  household: Household,
): Promise<void> {
  await tx.$executeRaw`UPDATE "Household" SET "revision" = "revision" + 1, "profileAt" = "revision" + 1
    WHERE "id" = ${householdId}`
  await writeDescription(tx, householdId, household)
  await tx.$executeRaw`DELETE FROM "Reading" WHERE "householdId" = ${householdId}`
  // What was brought piece by piece is gone with it, and nothing of it can be taken back any more.
  await tx.$executeRaw`DELETE FROM "Measuring" WHERE "householdId" = ${householdId}`
  await insertRows(tx, 'Reading', readingRows(householdId, household))
  await replaceRecords(tx, act, householdId, household)
}

async function replaceRecords(tx: Questions, act: Act, householdId: string, household: Household): Promise<void> {
  const standing = await tx.entry.findMany({
    where: { householdId, undoneAt: null, correctedBy: null },
    orderBy: { position: 'asc' },
  })
  const unmatched = new Map<string, { id: string; position: number }[]>()
  for (const entry of standing) {
    const key = sameness(recordValue(entry))
    unmatched.set(key, [...(unmatched.get(key) ?? []), entry])
  }
  const moved: { id: string; position: number }[] = []
  const fresh = entryRows(act, householdId, household).filter((_, position) => {
    const record = household.records[position]
    const twin = record && unmatched.get(sameness(record))?.shift()
    if (twin && twin.position !== position) moved.push({ id: twin.id, position })
    return !twin
  })
  for (const { id, position } of moved) await tx.entry.update({ where: { id }, data: { position } })
  const gone = [...unmatched.values()].flat().map(({ id }) => id)
  const undoneBy = signature(act.viewer).byName
  await tx.entry.updateMany({ where: { id: { in: gone } }, data: { undoneAt: act.at, undoneBy } })
  await insertRows(tx, 'Entry', fresh)
}

function sameness(record: Household['records'][number]): string {
  return JSON.stringify(recordRow(record))
}
