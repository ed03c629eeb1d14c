// @ts-check
import { prepare } from './prepare.mjs'
import { ROOT } from './root.mjs'
import { STEPS } from './steps.mjs'

/**
 * `npm run dev`: Next's own development server, on this machine only.
 * @param {string[]} args
 */
export async function main(args) {
  await prepare({ root: ROOT, steps: STEPS.filter((step) => step.name !== 'build') })
  process.chdir(ROOT)
  const next = `${ROOT}/node_modules/next/dist/bin/next`
  // Next reads its arguments from the process, and stays in it: signals need no forwarding.
  process.argv = [process.execPath, next, 'dev', '--hostname', process.env.HOST || '127.0.0.1', ...args]
  await import(next)
}
