/** Runs once when the server starts, before it answers anything. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { prepareOrExit } = await import('@/lib/data/prepare')
  await prepareOrExit()
  const { keepReminding } = await import('@/app/keep-reminding')
  keepReminding()
  const { keepLearning } = await import('@/app/learn-from-each-other')
  keepLearning()
}
