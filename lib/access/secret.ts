import { randomBytes } from 'node:crypto'
import { linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { dataFolder } from '@/lib/data/place'

/** The installation's own secret, which signs the session cookies: made on the first run, readable by its user only. */
export function installationSecret(folder = dataFolder()): string {
  const file = join(folder, 'secret')
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
  }
  mkdirSync(folder, { recursive: true })
  const draft = `${file}.${process.pid}-${randomBytes(4).toString('hex')}`
  writeFileSync(draft, randomBytes(32).toString('base64url'), { mode: 0o600 })
  try {
    // A link appears whole or not at all, and of two processes only one makes it.
    linkSync(draft, file)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  } finally {
    rmSync(draft, { force: true })
  }
  return readFileSync(file, 'utf8')
}
