import { copyFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import Database from 'better-sqlite3'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { migrate } from '@/lib/data/migrate'
import { aHousehold } from '../a-household'
import { killAfter, startChild, wholeTime } from '../child'
import { folderWith, rebuild } from '../rebuilding-migration'
import { as, someone } from '../someone'
import type { Survived } from './kill'

const TABLES = ['Household', 'Membership', 'Filter', 'System', 'Device', 'Entry', 'Reading', 'DustEvent']
export const NEXT_MIGRATION = '29991231000000_rebuild'

/** A database of the version before, 400 homes and 40,000 entries, and the migrations with one more that rebuilds two. */
export interface FullDatabase {
  file: string
  folder: string
}

/** Makes it beside the database of the environment, in `place`. */
export async function fullDatabase(place: string): Promise<FullDatabase> {
  const ann = await someone('ann')
  await importHouseholds(
    as(ann),
    Array.from({ length: 400 }, (_, i) => aHousehold({ id: `unit-${i}` })),
  )
  await closeDatabase()
  const file = join(place, 'full.db')
  const db = new Database(join(place, 'plenum.db'))
  db.exec(`INSERT INTO "Entry" ("id", "householdId", "position", "on", "kind", "subject", "byName", "at", "door")
    SELECT e."id" || '-' || n.value, e."householdId", n.value, e."on", e."kind", e."subject", e."byName", e."at", e."door"
    FROM "Entry" e, json_each('[${Array.from({ length: 99 }, (_, i) => i + 1)}]') n`)
  db.prepare('VACUUM INTO ?').run(file)
  db.close()
  const sql = rebuild(file, 'Household') + rebuild(file, 'Entry')
  return { file, folder: folderWith(join(place, 'migrations'), NEXT_MIGRATION, sql) }
}

/** How many rows the main tables have. Throws where the file is damaged or a row belongs to nothing. */
export function countsOf(file: string): number[] {
  const db = new Database(file, { readonly: true })
  try {
    const faults = [db.pragma('integrity_check', { simple: true }), ...(db.pragma('foreign_key_check') as unknown[])]
    if (!isDeepStrictEqual(faults, ['ok'])) throw new Error(JSON.stringify(faults).slice(0, 300))
    return TABLES.map((table) => db.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number)
  } finally {
    db.close()
  }
}

/**
 * Kills a process in the middle of a migration, each time of a fresh copy; the next start does it whole. `share` is when
 * it is killed, of the time that a whole one takes. `confirmed` counts those that were still to be done.
 */
export async function killMigrations(
  { file: full, folder }: FullDatabase,
  { times, share }: { times: number; share: (kill: number) => number },
): Promise<Survived> {
  const before = countsOf(full)
  const whole = await timeOf(full, folder)
  const torn: string[] = []
  let unfinished = 0
  for (let kill = 0; kill < times; kill++) {
    const file = `${full}.copy-${kill}`
    copyFileSync(full, file)
    await killAfter(startChild('migrate', [file, folder]), whole * share(kill))
    unfinished += migrate({ file, folder }).length
    const after = countsOf(file)
    if (!isDeepStrictEqual(after, before)) torn.push(`${after} instead of ${before}`)
    for (const end of ['', '-wal', '-shm', `.before-${NEXT_MIGRATION}`]) rmSync(file + end, { force: true })
  }
  return { confirmed: unfinished, lost: [], torn }
}

async function timeOf(full: string, folder: string): Promise<number> {
  const file = `${full}.timed`
  copyFileSync(full, file)
  const whole = await wholeTime(startChild('migrate', [file, folder]))
  for (const end of ['', '-wal', '-shm', `.before-${NEXT_MIGRATION}`]) rmSync(file + end, { force: true })
  return whole
}
