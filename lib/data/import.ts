import type { Fault } from '@/lib/core/fault'
import type { Household } from '@/lib/core/household'
import type { Act } from '@/lib/core/viewer'
import { localDay } from '@/lib/core/zone'
import { entryRows, readingRows } from './brought-rows'
import { type Questions, together } from './connection'
import { DESCRIBED_TABLES, describedRows, householdRow } from './household-rows'
import { freeId } from './households'
import { insertRows } from './insert'
import { newId } from './new-id'
import { holdAccount, signature } from './scope'

export type Imported = { ok: true; ids: string[] } | { ok: false; faults: Fault[] }

/**
 * Brings households into the account of whoever acts: all of them, or none.
 * An id that the account already has is a fault. Gives our ids in the order of the file.
 */
export function importHouseholds(act: Act, households: Household[]): Promise<Imported> {
  return together((tx) => importInto(tx, act, households))
}

/** One household more, described here, inside a transaction; an id that the account has gets a number behind it. */
export function addHouseholdIn(tx: Questions, act: Act, household: Household): Promise<Imported> {
  return addHouseholdsIn(tx, act, [household])
}

/** Many households more; each whose id is taken gets a number behind it. */
export async function addHouseholdsIn(tx: Questions, act: Act, households: Household[]): Promise<Imported> {
  const owner = await lockOwner(tx, act)
  if (!owner) return noOwner()
  const taken = new Set((await owned(tx, owner)).keys())
  const named = households.map((household) => {
    const id = freeId(household.id, taken)
    taken.add(id)
    return { ...household, id }
  })
  return importInto(tx, act, named)
}

/** `importHouseholds` inside a transaction that is already going on. */
export async function importInto(tx: Questions, act: Act, households: Household[]): Promise<Imported> {
  const owner = await lockOwner(tx, act)
  if (!owner) return noOwner()
  const known = await owned(tx, owner)
  const seen = new Set<string>()
  const faults = households.flatMap(({ id }, i): Fault[] => {
    const before = seen.size
    if (seen.add(id).size === before) {
      return [{ path: `households[${i}].id`, say: `"${id}" stands twice in this file.` }]
    }
    if (!known.has(id)) return []
    return [
      {
        path: `households[${i}].id`,
        say: `You have a household "${id}" already, and a file replaces none. Give this one another id.`,
      },
    ]
  })
  if (faults.length > 0) return { ok: false, faults }

  const first = Math.max(-1, ...[...known.values()].map((home) => home.position)) + 1
  const fresh = households.map((household, i) => ({ id: newId(), household, position: first + i }))
  await insertHouseholds(tx, act, owner, fresh)
  return { ok: true, ids: fresh.map(({ id }) => id) }
}

// The first statement of an import writes the owner's row: two imports of one account wait for each other here.
async function lockOwner(tx: Questions, act: Act): Promise<string | null> {
  if (act.viewer.kind !== 'account') return null
  const owner = act.viewer.accountId
  return (await holdAccount(tx, owner)) ? owner : null
}

function noOwner(): Imported {
  return { ok: false, faults: [{ path: '', say: 'There is no account to keep this in. Sign in first.' }] }
}

async function owned(tx: Questions, owner: string): Promise<Map<string, { id: string; position: number }>> {
  const rows = await tx.$queryRaw<{ id: string; fileId: string; position: number }[]>`
    SELECT "id", "fileId", "position" FROM "Household" WHERE "ownerId" = ${owner}`
  return new Map(rows.map((row) => [row.fileId, row]))
}

async function insertHouseholds(
  tx: Questions,
  act: Act,
  owner: string,
  fresh: { id: string; household: Household; position: number }[],
): Promise<void> {
  await insertRows(
    tx,
    'Household',
    fresh.map(({ id, household, position }) => ({
      ...{ id, fileId: household.id, ownerId: owner, position, createdAt: act.at },
      ...householdRow(household),
    })),
  )
  await insertRows(
    tx,
    'Membership',
    fresh.map(({ id }) => ({ householdId: id, accountId: owner, role: 'owner', since: act.at })),
  )
  const described = fresh.map(({ id, household }) => describedRows(id, household))
  for (const table of DESCRIBED_TABLES) {
    await insertRows(
      tx,
      table,
      described.flatMap((rows) => rows[table]),
    )
  }
  await insertRows(
    tx,
    'Entry',
    fresh.flatMap(({ id, household }) => entryRows(act, id, household)),
  )
  // A file brings no memory of what was tried, and what is unknown is the cautious case: its one start counts as used.
  if (act.door === 'file' || act.door === 'command')
    await insertRows(
      tx,
      'EpisodeEvent',
      fresh.map(({ id, household }) => ({
        ...{ id: newId(), householdId: id, kind: 'imported', on: localDay(act.at, household.timeZone) },
        ...{ minute: Math.floor(Date.parse(act.at) / 60_000), note: null, key: 'imported' },
        ...{ ...signature(act.viewer), at: act.at, door: act.door },
      })),
    )
  await insertRows(
    tx,
    'Reading',
    fresh.flatMap(({ id, household }) => readingRows(id, household)),
  )
}
