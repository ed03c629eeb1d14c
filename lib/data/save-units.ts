import type { Household, LogRecord } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { entryRows } from './brought-rows'
import { Prisma, type Questions, together } from './connection'
import { describedRows, householdRow } from './household-rows'
import { addHouseholdsIn } from './import'
import { insertRows, orUpdate, type Row } from './insert'
import { jsonRows } from './json-rows'
import { within } from './scope'

export interface FreshUnit {
  household: Household
  accessNote: string | null
}

/** A home as it is to stand, made from what stood at `revision`. Nothing of it is taken out. */
export interface ChangedUnit extends FreshUnit {
  id: string
  revision: number
  records: LogRecord[]
}

/** `changed`: one of the homes was written to meanwhile, or is not the viewer's to change any more. */
export type SavedUnits = { ok: true } | { ok: false; because: 'changed' | 'not-allowed' }

class ChangedMeanwhile extends Error {}
class NotAllowed extends Error {}

/** Saves new units and changed ones as one: all of it, or nothing. New ones belong to whoever acts. */
export async function saveUnits(
  act: Act,
  { fresh, changed }: { fresh: readonly FreshUnit[]; changed: readonly ChangedUnit[] },
): Promise<SavedUnits> {
  try {
    return await together(async (tx) => {
      if (changed.length > 0) await writeChanged(tx, act, changed)
      if (fresh.length === 0) return { ok: true }
      const added = await addHouseholdsIn(
        tx,
        act,
        fresh.map(({ household }) => household),
      )
      // Thrown, so that the changed ones are not kept either.
      if (!added.ok) throw new NotAllowed()
      await writeNotes(
        tx,
        fresh.flatMap(({ accessNote }, i) => (accessNote === null ? [] : [[added.ids[i] ?? '', accessNote] as const])),
      )
      return { ok: true }
    })
  } catch (error) {
    if (error instanceof ChangedMeanwhile) return { ok: false, because: 'changed' }
    if (error instanceof NotAllowed) return { ok: false, because: 'not-allowed' }
    throw error
  }
}

// SQLite takes 32,766 values a statement.
const A_STATEMENT = 10_000

// Ten thousand homes one by one would hold everybody up for half a minute: a few statements for all of them.
async function writeChanged(tx: Questions, act: Act, changed: readonly ChangedUnit[]): Promise<void> {
  const revisions = new Map<string, number>()
  const positions = new Map<string, number>()
  for (let start = 0; start < changed.length; start += A_STATEMENT) {
    const ids = Prisma.join(changed.slice(start, start + A_STATEMENT).map(({ id }) => id))
    const raised = await tx.$queryRaw<{ id: string; revision: number }[]>`
      UPDATE "Household" SET "revision" = "revision" + 1, "profileAt" = "revision" + 1
      WHERE "id" IN (${ids}) AND ${within(act.viewer, 'manage', Prisma.sql`"Household"."id"`)} AND "state" = 'open'
      RETURNING "id", "revision"`
    for (const { id, revision } of raised) revisions.set(id, revision)
    const last = await tx.$queryRaw<{ householdId: string; position: number }[]>`
      SELECT "householdId", max("position") AS "position" FROM "Entry" WHERE "householdId" IN (${ids})
      GROUP BY "householdId"`
    for (const { householdId, position } of last) positions.set(householdId, Number(position))
  }
  // Thrown, so that what was raised is taken back as well.
  if (changed.some(({ id, revision }) => revisions.get(id) !== revision + 1)) throw new ChangedMeanwhile()
  await writeProfiles(tx, changed)
  for (const table of ['System', 'Filter'] as const) {
    const rows = changed.flatMap(({ id, household }) => describedRows(id, household)[table])
    await insertRows(tx, table, rows, orUpdate(['householdId', 'id'], Object.keys(rows[0] ?? {})))
  }
  const entries = changed.flatMap(({ id, household, records }) => {
    const next = (positions.get(id) ?? -1) + 1
    return entryRows(act, id, { ...household, records }).map((row, i): Row => ({ ...row, position: next + i }))
  })
  await insertRows(tx, 'Entry', entries)
}

const PROFILE = { people: 'number', pets: 'number', assumed: 'text' } as const

/** Of a home's own row a sheet changes these and the note of how to get in. */
async function writeProfiles(tx: Questions, changed: readonly ChangedUnit[]): Promise<void> {
  const rows = changed.map(({ id, household, accessNote }) => {
    const { people, pets, assumed } = householdRow(household) as Record<keyof typeof PROFILE, string | number | null>
    return { id, people, pets, assumed, accessNote }
  })
  await tx.$executeRaw`UPDATE "Household" SET
      "people" = j."people", "pets" = j."pets", "assumed" = j."assumed", "accessNote" = j."accessNote"
    FROM ${jsonRows(rows, { id: 'text', ...PROFILE, accessNote: 'text' })} WHERE "Household"."id" = j."id"`
}

async function writeNotes(tx: Questions, notes: readonly (readonly [string, string])[]): Promise<void> {
  if (notes.length === 0) return
  const rows = notes.map(([id, note]) => ({ id, note }))
  await tx.$executeRaw`UPDATE "Household" SET "accessNote" = j."note"
    FROM ${jsonRows(rows, { id: 'text', note: 'text' })} WHERE "Household"."id" = j."id"`
}
