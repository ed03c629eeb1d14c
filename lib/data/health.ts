import { ask } from './connection'
import { isUpToDate } from './migrations'

/** Whether the database answers and has every migration of this program. Never throws. */
export async function isHealthy(): Promise<boolean> {
  try {
    const rows = await ask(
      (db) => db.$queryRaw<{ name: string }[]>`SELECT "migration_name" AS "name" FROM "_prisma_migrations"
        WHERE "finished_at" IS NOT NULL AND "rolled_back_at" IS NULL`,
    )
    return isUpToDate(rows.map(({ name }) => name))
  } catch {
    return false
  }
}
