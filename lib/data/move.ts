import { exportSums, sumOf, type TableSum } from './compare'
import { databaseKind, shownAddress } from './place'
import { openSide, type Side } from './sides'
import { asUnavailable } from './unavailable'

/** A move cannot be done; the message says why and what to do. */
export class MoveRefused extends Error {
  override name = 'MoveRefused'
}

/** What was moved and compared. */
export interface Moved {
  tables: TableSum[]
  homes: number
  /** Whether what an earlier, cut-off move had left was thrown away first. */
  again: boolean
}

/**
 * Copies everything from one database into the other kind, which must be empty, and compares both: each table by rows
 * and checksum, each home by its household file. Nobody can write to the first meanwhile. Until all of it was found
 * equal the target is marked as half-moved, and no program starts on it; a move that was cut off is begun again. Throws
 * `MoveRefused`, `MigrationRefused` or `DatabaseUnavailable`.
 */
export async function moveDatabase({ from, to }: { from: string; to: string }): Promise<Moved> {
  if (databaseKind(from) === databaseKind(to))
    throw new MoveRefused('A move goes from a file to PostgreSQL, or from PostgreSQL to a file; both are of one kind.')
  return between({ from, to, hold: true }, async (source, target) => {
    if (!(await target.lock()))
      throw new MoveRefused(
        `Another move into ${shownAddress(to)} is under way. Wait for it, or end it; nothing was changed.`,
      )
    const again = await target.isMarked()
    if (!again && !(await target.isEmpty()))
      throw new MoveRefused(
        `There is something in ${shownAddress(to)} already. A move needs an empty place; nothing was changed.`,
      )
    await target.claim()
    const tables = await copyRows(source, target)
    const [before, after] = [await exportSums(from), await exportSums(to)]
    const different = [...before].filter(([id, sum]) => after.get(id) !== sum).map(([id]) => id)
    if (different.length > 0 || before.size !== after.size)
      throw new MoveRefused(
        `${different.length} homes would not be the same, the first is ${different[0]}. The new database stays marked as half-moved; the old one is as it was. Please report this.`,
      )
    await target.unmark()
    return { tables, homes: before.size, again }
  })
}

/** A copy of a PostgreSQL database at one moment as an embedded one, for a backup; others go on writing. */
export async function copyIntoFile(from: string, file: string): Promise<void> {
  await between({ from, to: `file:${file}`, hold: false }, async (source, target) => {
    await target.claim()
    await copyRows(source, target)
    await target.unmark()
  })
}

async function between<T>(
  { from, to, hold }: { from: string; to: string; hold: boolean },
  deed: (source: Side, target: Side) => Promise<T>,
): Promise<T> {
  const open: Side[] = []
  try {
    const source = await openSide(from, { toRead: true })
    open.push(source)
    if ((await source.lacking()) > 0)
      throw new MoveRefused(
        `${shownAddress(from)} is older than this program, or empty. Start Plenum on it once, stop it, and move then.`,
      )
    const target = await openSide(to, { toRead: false })
    open.push(target)
    await source.beginReading(hold)
    return await deed(source, target)
  } catch (error) {
    throw asUnavailable(error)
  } finally {
    for (const side of open) await side.close()
  }
}

async function copyRows(source: Side, target: Side): Promise<TableSum[]> {
  const tables = target.tables() ?? source.tables() ?? []
  await target.asOne(async () => {
    for (const table of tables.toReversed()) await target.end.empty(table)
    for (const table of tables) {
      for await (const rows of source.end.rows(table)) await target.end.insert(table, rows)
    }
  })
  const sums: TableSum[] = []
  await target.end.run('BEGIN')
  for (const table of tables) {
    const [before, after] = [await sumOf(source.end, table), await sumOf(target.end, table)]
    if (before.rows !== after.rows || before.sha256 !== after.sha256)
      throw new MoveRefused(
        `"${table.name}" is not the same after the move. The new database stays marked as half-moved; the old one is as it was. Please report this.`,
      )
    sums.push(after)
  }
  await target.end.run('COMMIT')
  return sums
}
