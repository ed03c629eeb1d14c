import { ask } from '@/lib/data/connection'

/** The account library hides why the database failed it: asks it a question that writes nothing, which says why. */
export async function throwWhy(error: unknown): Promise<never> {
  await ask((db) => db.$executeRaw`UPDATE "User" SET "name" = "name" WHERE 1 = 0`)
  throw error
}
