import type { Act, Viewer } from '@/lib/core/viewer'
import { ask, together } from './connection'
import { newId } from './new-id'
import { holdAccount } from './scope'

/** A browser that shows notices, as it gave itself to be reached. */
export interface PushTarget {
  endpoint: string
  p256dh: string
  auth: string
}

/** Keeps a browser of the account that acts; one that was another's before is this account's from now on. */
export async function savePushTarget(act: Act, { endpoint, p256dh, auth }: PushTarget): Promise<boolean> {
  if (act.viewer.kind !== 'account') return false
  const { accountId } = act.viewer
  await together(async (tx) => {
    await holdAccount(tx, accountId)
    await tx.pushTarget.deleteMany({ where: { endpoint } })
    await tx.pushTarget.create({ data: { id: newId(), accountId, endpoint, p256dh, auth, createdAt: act.at } })
    await tx.reminding.updateMany({ where: { accountId }, data: { push: true } })
  })
  return true
}

/** Ends all notices in all browsers of the account that acts. */
export async function endPush(act: Act): Promise<boolean> {
  if (act.viewer.kind !== 'account') return false
  const { accountId } = act.viewer
  await together(async (tx) => {
    await holdAccount(tx, accountId)
    await tx.pushTarget.deleteMany({ where: { accountId } })
    await tx.reminding.updateMany({ where: { accountId }, data: { push: false } })
  })
  return true
}

/** How many browsers show notices to the account that asks. */
export function countPushTargets(viewer: Viewer): Promise<number> {
  if (viewer.kind !== 'account') return Promise.resolve(0)
  return ask((db) => db.pushTarget.count({ where: { accountId: viewer.accountId } }))
}

/** The ids of an account's browsers: for the runner. */
export function listPushIds(accountId: string): Promise<string[]> {
  return ask(async (db) =>
    (await db.pushTarget.findMany({ where: { accountId }, select: { id: true }, orderBy: { id: 'asc' } })).map(
      ({ id }) => id,
    ),
  )
}

/** One browser, or null once it is gone: for the runner. */
export function findPushTarget(id: string): Promise<PushTarget | null> {
  return ask((db) => db.pushTarget.findUnique({ where: { id }, select: { endpoint: true, p256dh: true, auth: true } }))
}

/** Forgets a browser that is reached no more. */
export async function dropPushTarget(id: string): Promise<void> {
  await ask((db) => db.pushTarget.deleteMany({ where: { id } }))
}
