import { join } from 'node:path'
import webPush from 'web-push'
import { isSecure } from '@/lib/access/public-url'
import { madeOnce } from '@/lib/data/made-once'
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
  return JSON.parse(madeOnce(join(folder, 'push-keys.json'), () => JSON.stringify(webPush.generateVAPIDKeys())))
}
