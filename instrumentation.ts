/** Runs once when the server starts, before it answers anything. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { prepareDatabase } = await import('@/lib/data/prepare')
  const problem = prepareDatabase()
  if (problem === null) return
  console.error(problem)
  process.exit(1)
}
