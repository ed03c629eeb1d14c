import type { Act, Viewer } from '@/lib/core/viewer'
import { ask } from './connection'

/** What an account shows of itself to whoever is signed in with it, or null for nobody. */
export function findOwnAccount(viewer: Viewer): Promise<{ email: string; name: string } | null> {
  return ask(async (db) => {
    if (viewer.kind !== 'account') return null
    return db.user.findUnique({ where: { id: viewer.accountId }, select: { email: true, name: true } })
  })
}

/** Sets the name that a household's people see; what the log says already stays as it was signed. */
export function renameAccount(act: Act, name: string): Promise<boolean> {
  return ask(async (db) => {
    if (act.viewer.kind !== 'account') return false
    const { count } = await db.user.updateMany({ where: { id: act.viewer.accountId }, data: { name } })
    return count === 1
  })
}

/** Ends every session of the account that acts, this one too. */
export async function endSessions(act: Act): Promise<void> {
  const { viewer } = act
  if (viewer.kind === 'account') await ask((db) => db.session.deleteMany({ where: { userId: viewer.accountId } }))
}
