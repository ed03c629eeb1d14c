import { closeDatabase } from '@/lib/data/connection'
import type { RunningApp } from './app'

/** Asks the database of a running app. */
export async function inApp<T>(app: RunningApp, question: () => Promise<T>): Promise<T> {
  const before = process.env.DATABASE_URL
  process.env.DATABASE_URL = app.databaseUrl
  try {
    return await question()
  } finally {
    await closeDatabase()
    if (before === undefined) delete process.env.DATABASE_URL
    else process.env.DATABASE_URL = before
  }
}
