import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { databaseFile } from '@/lib/data/place'
import { aHousehold } from '../a-household'
import { type Child, confirmedTo, startChild } from '../child'
import { as, someone } from '../someone'
import type { Kills, Survived } from './kill'

const SPOILT = ['none', 'tail', 'pages'] as const

/**
 * Cuts the power in the middle of recording, in `place`: the process is stopped, the files are copied as they lie there,
 * and in turn the copy is left as it is, has a torn end, or has noise in every page that the log holds.
 */
export async function cutPowers(place: string, { times, pause: wait }: Kills): Promise<Survived> {
  const dee = await someone('dee')
  const imported = await importHouseholds(as(dee), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const survived: Survived = { confirmed: 0, lost: [], torn: [] }
  await closeDatabase()
  for (let cut = 0; cut < times; cut++) {
    const child = startChild('record', [dee.accountId, home, String(cut)])
    const folder = join(place, `cut-${cut}`)
    const spoil = SPOILT[cut % SPOILT.length] ?? 'none'
    const { file, confirmed } = await cutPower({ child, folder }, { after: wait(cut), spoil })
    survived.confirmed += confirmed.length
    try {
      const kept = recordedIn(file)
      for (const on of confirmed) if (!kept.has(on)) survived.lost.push(`${spoil} ${on}`)
    } catch (error) {
      survived.torn.push(`${spoil}: ${error instanceof Error ? error.message : error}`)
    }
    rmSync(folder, { recursive: true, force: true })
  }
  return survived
}

interface Cut {
  file: string
  confirmed: string[]
}

// Worse is done to the copy than a stop alone does: what a disk may still be writing is spoilt.
async function cutPower(
  { child, folder }: { child: Child; folder: string },
  { after, spoil }: { after: number; spoil: (typeof SPOILT)[number] },
): Promise<Cut> {
  await child.said('begin')
  await pause(after)
  child.process.kill('SIGSTOP')
  // What it had said before it stopped is still on its way here.
  await pause(150)
  const confirmed = confirmedTo(child)
  const database = databaseFile()
  mkdirSync(folder, { recursive: true })
  const file = join(folder, 'plenum.db')
  for (const end of ['', '-wal', '-shm']) if (existsSync(database + end)) copyFileSync(database + end, file + end)
  child.process.kill('SIGKILL')
  await child.over
  if (spoil === 'tail') spoilTail(file)
  if (spoil === 'pages') spoilPages(file)
  return { file, confirmed }
}

interface Log {
  pageBytes: number
  /** Pages that the log holds up to its last commit, and where that ends. */
  pages: Set<number>
  committedBytes: number
}

// The format of the write-ahead log: https://www.sqlite.org/fileformat2.html#the_write_ahead_log
function readLog(log: Buffer): Log {
  const pageBytes = log.readUInt32BE(8)
  const salt = log.subarray(16, 24)
  const found: Log = { pageBytes, pages: new Set(), committedBytes: 32 }
  const pending: number[] = []
  for (let at = 32; at + 24 + pageBytes <= log.length; at += 24 + pageBytes) {
    // Frames with another salt are left over from before the log began anew.
    if (!log.subarray(at + 8, at + 16).equals(salt)) break
    pending.push(log.readUInt32BE(at))
    if (log.readUInt32BE(at + 4) === 0) continue
    for (const page of pending.splice(0)) found.pages.add(page)
    found.committedBytes = at + 24 + pageBytes
  }
  return found
}

/** Whatever stands behind the last commit is half there. */
function spoilTail(file: string): void {
  const log = readFileSync(`${file}-wal`)
  const { committedBytes, pageBytes } = readLog(log)
  const behind = Buffer.alloc(24 + pageBytes, 0x5a)
  log.copy(behind, 0, committedBytes, committedBytes + behind.length)
  writeFileSync(`${file}-wal`, Buffer.concat([log.subarray(0, committedBytes), behind.subarray(0, pageBytes >> 1)]))
}

/** A page is only copied into the main file after its log is safe, so a copy that breaks off may leave anything there. */
function spoilPages(file: string): void {
  const { pages, pageBytes } = readLog(readFileSync(`${file}-wal`))
  const main = readFileSync(file)
  for (const page of pages) {
    // The first page is left: who reads it first finds out from it that there is a log.
    if (page > 1 && page * pageBytes <= main.length) main.fill(0xa5, (page - 1) * pageBytes, page * pageBytes)
  }
  writeFileSync(file, main)
}

/** The days of the changed filters in a copy, after it was opened as a start opens it. Throws where it is damaged. */
function recordedIn(file: string): Set<string> {
  const db = new Database(file)
  try {
    const whole = db.pragma('integrity_check', { simple: true })
    const orphans = db.pragma('foreign_key_check') as unknown[]
    if (whole !== 'ok' || orphans.length > 0) throw new Error(`${whole}, ${orphans.length} rows belong to nothing`)
    return new Set(db.prepare(`SELECT "on" FROM "Entry" WHERE "kind" = 'filter-changed'`).pluck().all() as string[])
  } finally {
    db.close()
  }
}
