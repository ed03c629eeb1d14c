import { createHash } from 'node:crypto'
import { createReadStream, existsSync, mkdirSync, readdirSync } from 'node:fs'
import { copyFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { filesBeside, LOST_AND_FOUND } from './make-backup'
import { Refused } from './refused'

/**
 * Copies every file of a data folder but databases and backups into another folder that is empty, or that an earlier
 * copy of the same was cut off in, and compares each with its original. Gives how many.
 */
export async function copyFilesBeside(from: string, to: string): Promise<number> {
  const files = filesBeside(from, join(from, 'plenum.db'))
  const known = new Set([...files.map(({ name }) => name.split('/')[0]), LOST_AND_FOUND])
  const stranger = existsSync(to) && readdirSync(to).find((name) => !known.has(name))
  if (stranger)
    throw new Refused(
      `There is ${join(to, stranger)} already. Name an empty folder for the files; nothing was changed.`,
    )
  for (const { name, path } of files) {
    const copy = join(to, name)
    mkdirSync(dirname(copy), { recursive: true, mode: 0o700 })
    await copyFile(path, copy)
    if ((await sha256(path)) !== (await sha256(copy)))
      throw new Refused(`${copy} is not what ${path} is. Do the move again.`)
  }
  return files.length
}

async function sha256(path: string): Promise<string> {
  const hash = createHash('sha256')
  for await (const chunk of createReadStream(path)) hash.update(chunk)
  return hash.digest('hex')
}
