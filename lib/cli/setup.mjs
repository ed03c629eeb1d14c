// @ts-check
import { prepare } from './prepare.mjs'
import { ROOT } from './root.mjs'

/** `npm run setup` and `npm run build`: everything that `npm start` does, short of serving. */
export async function main() {
  const ran = await prepare({ root: ROOT })
  console.log(ran.length > 0 ? `Done: ${ran.join(', ')}.` : 'Nothing to do.')
}
