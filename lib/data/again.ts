/** Two writers met: PostgreSQL let one of them through and took back all that the other had done. */
const MET = /\bP2034\b|TransactionWriteConflict|\b40001\b|\b40P01\b/
/** A row of that key came in since this one looked. */
const CAME_IN = /\bP2002\b|UniqueConstraintViolation|\b23505\b/

const WITHIN_MS = 30_000
const LONGEST_PAUSE_MS = 400

/**
 * Does a deed once more where PostgreSQL asks for it: SQLite lets writers wait in a line, PostgreSQL sends the later
 * one back to look again. What the deed changes outside the database it must be able to change twice. A key that is
 * taken is looked at once more only: if it was there all the time, it is the deed's own fault.
 */
export async function again<T>(deed: () => Promise<T>, wordsOf: (error: unknown) => string): Promise<T> {
  const begun = performance.now()
  for (let attempt = 1; ; attempt++) {
    try {
      return await deed()
    } catch (error) {
      const said = wordsOf(error)
      const may = MET.test(said) ? performance.now() - begun < WITHIN_MS : CAME_IN.test(said) && attempt < 3
      if (!may) throw error
      // By chance, so that the two do not meet again.
      const pause = Math.random() * Math.min(LONGEST_PAUSE_MS, 10 * 2 ** attempt)
      await new Promise((resolve) => setTimeout(resolve, pause))
    }
  }
}
