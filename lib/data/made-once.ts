import { randomBytes } from 'node:crypto'
import { linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/** The text of a file that is made on the first run and never changed, readable by its user only. */
export function madeOnce(file: string, make: () => string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
  }
  mkdirSync(dirname(file), { recursive: true })
  const draft = `${file}.${process.pid}-${randomBytes(4).toString('hex')}`
  writeFileSync(draft, make(), { mode: 0o600 })
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
