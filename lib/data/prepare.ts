import { MigrationRefused, migrate } from './migrate'
import { DatabaseUnavailable } from './unavailable'

/** Brings the database up to date; gives the sentence that says why it can't, or null. For a start that must not go on. */
export function prepareDatabase(): string | null {
  try {
    migrate()
    return null
  } catch (error) {
    if (error instanceof MigrationRefused) return error.message
    if (!(error instanceof DatabaseUnavailable)) throw error
    const cause = error.cause instanceof Error ? ` (${error.cause.message})` : ''
    return `${error.message}${cause}`
  }
}

/** Brings the database up to date, or says why it can't and ends the process: a server without it must not answer. */
export function prepareOrExit(): void {
  const problem = prepareDatabase()
  if (problem === null) return
  console.error(problem)
  process.exit(1)
}
