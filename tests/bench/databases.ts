import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createAccount } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { migrate } from '@/lib/data/migrate'
import { moveDatabase } from '@/lib/data/move'
import { databaseFile } from '@/lib/data/place'
import { createDatabase, startPostgres } from '../support/postgres'
import type { Measured } from './databases-measure'
import { manyHouseholds } from './many-households'
import { atMost, milliseconds, type Row } from './table'

// Both kinds of database side by side, with the same homes in them: ten owners of as many homes each, and one person
// with one. `BENCH_HOMES=10000 npm run bench -- databases` takes fewer.

const HOMES = Number(process.env.BENCH_HOMES || 100_000)
const OWNERS = 10
const AT_ONCE = 2_000
export const DAY = '2026-11-25'
const at = `${DAY}T12:00:00.000Z`

/** One of the owners, `owner-0` and so on, or `one`. */
export function viewerOf(id: string) {
  return { kind: 'account', accountId: id, name: id, administrator: false } as const
}

async function fill(homes: number): Promise<void> {
  for (const [i, owner] of [...Array.from({ length: OWNERS }, (_, n) => `owner-${n}`), 'one'].entries()) {
    await createAccount(
      { id: owner, email: `${owner}@example.org`, name: owner, passwordHash: '-', at },
      async () => true,
    )
    const own = owner === 'one' ? 1 : homes / OWNERS
    for (let done = 0; done < own; done += AT_ONCE) {
      const part = manyHouseholds(Math.min(AT_ONCE, own - done), DAY).map((home, n) => ({
        ...home,
        id: `${i}-${done + n}`,
      }))
      const brought = await importHouseholds({ viewer: viewerOf(owner), at, door: 'file' }, part)
      if (!brought.ok) throw new Error(brought.faults[0]?.say)
    }
  }
}

function measured(url: string): Measured {
  const file = join(import.meta.dirname, 'databases-measure.ts')
  const args = ['--conditions=react-server', '--import=tsx', file, url]
  return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] }))
}

/** Fills an embedded database, moves it into a PostgreSQL of its own, and asks both the same. */
export async function databasesRows(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  const server = await startPostgres({ fsync: 'on' })
  try {
    const file = `file:${join(folder, 'plenum.db')}`
    process.env.DATABASE_URL = file
    migrate()
    const filled = await milliseconds(() => fill(HOMES))
    await closeDatabase()
    const to = await createDatabase(server.port, 'bench')
    const moved = await milliseconds(() => moveDatabase({ from: file, to }))
    const memory = Math.round(process.memoryUsage.rss() / 1e6)
    const megabytes = (statSync(databaseFile(file)).size / 1e6).toFixed(0)
    return [
      { what: `${HOMES} homes brought into SQLite`, figure: `${(filled / 1000).toFixed(0)} s, ${megabytes} MB` },
      { what: 'moved into PostgreSQL and compared', figure: `${(moved / 1000).toFixed(0)} s, ${memory} MB of memory` },
      ...sideBySide(measured(file), measured(to)),
    ]
  } finally {
    server.remove()
    rmSync(folder, { recursive: true, force: true })
  }
}

function sideBySide(embedded: Measured, served: Measured): Row[] {
  const both = (what: string, key: keyof Measured): Row => ({
    what: `${what}, SQLite and PostgreSQL`,
    figure: `${embedded[key].toFixed(1)} and ${served[key].toFixed(1)} ms`,
  })
  const homes = HOMES / OWNERS
  return [
    both('Due page of one account', 'due'),
    both('its bare SQL', 'bareDue'),
    atMost('Due page on PostgreSQL / its bare SQL', served.due / served.bareDue, 3),
    both(`page of ${homes} homes`, 'homes'),
    both('its bare SQL', 'bareHomes'),
    atMost(`page of ${homes} homes on SQLite / its bare SQL`, embedded.homes / embedded.bareHomes, 3),
    atMost(`page of ${homes} homes on PostgreSQL / its bare SQL`, served.homes / served.bareHomes, 3),
    both('the same page, nothing kept yet', 'firstHomes'),
    both('one record saved', 'record'),
  ]
}
