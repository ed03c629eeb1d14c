import { migrate } from './migrate'
import { migratePostgres } from './migrate-postgresql'
import { MigrationRefused } from './migrations'
import { databaseKind, WrongAddress } from './place'
import { poolSize } from './postgres'
import { DatabaseUnavailable } from './unavailable'

/** Brings the database up to date; gives the sentence that says why it can't, or null. For a start that must not go on. */
export async function prepareDatabase(): Promise<string | null> {
  try {
    if (databaseKind() === 'sqlite') migrate()
    else {
      poolSize()
      await migratePostgres()
    }
    return null
  } catch (error) {
    return whyNot(error)
  }
}

/** The sentence for an error of a start, without a password in it. Throws what is a defect. */
export function whyNot(error: unknown): string {
  if (error instanceof MigrationRefused || error instanceof WrongAddress) return error.message
  if (!(error instanceof DatabaseUnavailable)) throw error
  const { message, code } = (error.cause ?? {}) as { message?: string; code?: string }
  const cause = message || code
  return cause ? `${error.message} (${cause})` : error.message
}

/** Brings the database up to date, or says why it can't and ends the process: a server without it must not answer. */
export async function prepareOrExit(): Promise<void> {
  const problem = await prepareDatabase()
  if (problem === null) return
  console.error(problem)
  process.exit(1)
}
