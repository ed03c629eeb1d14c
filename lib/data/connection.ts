import { PrismaClient as PostgresClient } from '@/prisma/generated/postgresql/client'
import { Prisma, PrismaClient } from '@/prisma/generated/sqlite/client'
import { again } from './again'
import { FencedSqlite } from './fence'
import { databaseFile, databaseKind, databaseUrl } from './place'
import { postgresAdapter } from './postgres'
import { asUnavailable, wordsOf } from './unavailable'

/** What a question is asked through: the client, or one transaction of it. */
export type Questions = Pick<Prisma.TransactionClient, '$queryRaw' | '$executeRaw'> & Prisma.TransactionClient

// One client a process and address, also over the module reloads of a development server.
const kept = globalThis as typeof globalThis & { plenumDatabase?: { url: string; client: PrismaClient } }

/** The client of the database that `DATABASE_URL` names. Nothing is opened before the first question. */
export function database(): PrismaClient {
  const url = databaseUrl()
  if (kept.plenumDatabase?.url === url) return kept.plenumDatabase.client
  const client = clientFor(url)
  kept.plenumDatabase = { url, client }
  return client
}

/** A client of its own, for a command that reads two databases; whoever asks for it ends it. */
export function clientFor(url: string): PrismaClient {
  const options = { errorFormat: 'minimal' as const, log: [] }
  if (databaseKind(url) === 'postgresql') {
    // Both are made of the same models: the one cast that lets all other code know one of them only.
    return new PostgresClient({ adapter: postgresAdapter(url), ...options }) as unknown as PrismaClient
  }
  // A missing file is an error here: only the migrations make one.
  return new PrismaClient({
    adapter: new FencedSqlite({ url: `file:${databaseFile(url)}`, fileMustExist: true }),
    ...options,
  })
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
    return await again(() => question(database()), wordsOf)
  } catch (error) {
    throw asUnavailable(error)
  }
}

/**
 * Several statements as one: all of it is saved, or nothing. A write's first statement must itself write the row that
 * it hangs on (a household, an account, an invitation), so that it waits for other writers there. On SQLite it is then
 * alone. On PostgreSQL all of it sees the moment of that first statement, and where somebody else wrote the same row
 * since, the deed is done once more from the beginning: two that hang on one row are never decided on the same past.
 * Throws `DatabaseUnavailable`.
 */
export async function together<T>(deed: (tx: Questions) => Promise<T>): Promise<T> {
  try {
    return await again(() => atOneMoment(deed), wordsOf)
  } catch (error) {
    throw asUnavailable(error)
  }
}

// Every statement of one transaction sees the same moment. The types are the SQLite client's, which knows one isolation
// only and does not take its name.
const REPEATABLE_READ = 'RepeatableRead' as string as Prisma.TransactionIsolationLevel

function atOneMoment<T>(deed: (tx: Questions) => Promise<T>): Promise<T> {
  const isolationLevel = databaseKind() === 'postgresql' ? REPEATABLE_READ : undefined
  return database().$transaction(deed, { maxWait: 30_000, timeout: 120_000, isolationLevel })
}

export { Prisma }
