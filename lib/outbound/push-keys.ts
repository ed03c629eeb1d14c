import { randomBytes } from 'node:crypto'
import { linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import webPush from 'web-push'
import { isSecure } from '@/lib/access/public-url'
import { dataFolder } from '@/lib/data/place'

/** The pair by which browsers know that a notice is ours. */
export interface PushKeys {
  publicKey: string
  privateKey: string
}

/** Whether notices in browsers can be had at all: browsers allow them over https only. */
export function canPush(): boolean {
  return isSecure()
}

/** The installation's own pair: made on the first run, readable by its user only. */
export function pushKeys(folder = dataFolder()): PushKeys {
  const file = join(folder, 'push-keys.json')
  const read = () => JSON.parse(readFileSync(file, 'utf8')) as PushKeys
  try {
    return read()
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error
  }
  mkdirSync(folder, { recursive: true })
  const draft = `${file}.${process.pid}-${randomBytes(4).toString('hex')}`
  writeFileSync(draft, JSON.stringify(webPush.generateVAPIDKeys()), { mode: 0o600 })
  try {
    // A link appears whole or not at all, and of two processes only one makes it.
    linkSync(draft, file)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  } finally {
    rmSync(draft, { force: true })
  }
  return read()
}
