import type { Instant } from '@/lib/core/viewer'
import { ask, Prisma } from './connection'
import { later } from './instant'

/**
 * Counts one more attempt under a key and gives how many there were since the count began; the count ends `seconds`
 * after its first. Counted before it is judged, in one statement, so that attempts side by side cannot slip past.
 */
export function countAttempt(key: string, at: Instant, seconds: number): Promise<number> {
  return ask(async (db) => {
    const until = later(at, seconds)
    // A count that ends later than one begun now was begun by a clock that was wrong; it would bar somebody for years.
    const isOver = Prisma.sql`("Attempt"."until" <= ${at} OR "Attempt"."until" > ${until})`
    const rows = await db.$queryRaw<{ count: number }[]>`
      INSERT INTO "Attempt" ("key", "count", "until") VALUES (${key}, 1, ${until})
      ON CONFLICT ("key") DO UPDATE SET
        "count" = CASE WHEN ${isOver} THEN 1 ELSE "Attempt"."count" + 1 END,
        "until" = CASE WHEN ${isOver} THEN ${until} ELSE "Attempt"."until" END
      RETURNING "count"`
    // Each look at the table also clears what is over: no job is needed for it.
    await db.attempt.deleteMany({ where: { until: { lte: at } } })
    return rows[0]?.count ?? 1
  })
}

/** Forgets what was counted under a key. */
export async function clearAttempts(key: string): Promise<void> {
  await ask((db) => db.attempt.deleteMany({ where: { key } }))
}
