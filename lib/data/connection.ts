import { Prisma, PrismaClient } from '@/prisma/generated/sqlite/client'
import { FencedSqlite } from './fence'
import { databaseFile, databaseUrl } from './place'
import { asUnavailable } from './unavailable'

/** What a question is asked through: the client, or one transaction of it. */
export type Questions = Pick<Prisma.TransactionClient, '$queryRaw' | '$executeRaw'> & Prisma.TransactionClient

// One client a process and address, also over the module reloads of a development server.
const kept = globalThis as typeof globalThis & { plenumDatabase?: { url: string; client: PrismaClient } }

/** The client of the database that `DATABASE_URL` names. Nothing is opened before the first question. */
export function database(): PrismaClient {
  const url = databaseUrl()
  if (kept.plenumDatabase?.url === url) return kept.plenumDatabase.client
  // A missing file is an error here: only the migrations make one.
  const adapter = new FencedSqlite({ url: `file:${databaseFile(url)}`, fileMustExist: true })
  const client = new PrismaClient({ adapter, errorFormat: 'minimal', log: [] })
  kept.plenumDatabase = { url, client }
  return client
}

/** Ends the connection; the next question opens a new one. */
export async function closeDatabase(): Promise<void> {
  const open = kept.plenumDatabase
  kept.plenumDatabase = undefined
  await open?.client.$disconnect()
}

/** Asks one statement. Throws `DatabaseUnavailable`. */
export async function ask<T>(question: (db: PrismaClient) => Promise<T>): Promise<T> {
  try {
    return await question(database())
  } catch (error) {
    throw asUnavailable(error)
  }
}

/**
 * Several statements as one: all of it is saved, or nothing. A write's first statement must itself write, so that
 * it waits for other processes there; a reader sees one moment. Throws `DatabaseUnavailable`.
 */
export async function together<T>(deed: (tx: Questions) => Promise<T>): Promise<T> {
  try {
    return await database().$transaction(deed, { maxWait: 30_000, timeout: 120_000 })
  } catch (error) {
    throw asUnavailable(error)
  }
}

export { Prisma }
