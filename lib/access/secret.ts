import { randomBytes } from 'node:crypto'
import { join } from 'node:path'
import { madeOnce } from '@/lib/data/made-once'
import { dataFolder } from '@/lib/data/place'

/** The installation's own secret, which signs the session cookies: made on the first run, readable by its user only. */
export function installationSecret(folder = dataFolder()): string {
  return madeOnce(join(folder, 'secret'), () => randomBytes(32).toString('base64url'))
}
