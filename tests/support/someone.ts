import type { Act, Viewer } from '@/lib/core/viewer'
import { createAccount } from '@/lib/data/accounts'
import { AT } from './moment'

/** An account made straight in the database, for tests that are not about signing up. */
export async function someone(name: string): Promise<Extract<Viewer, { kind: 'account' }>> {
  const id = `account-${name}`
  const email = `${name}@example.org`
  await createAccount({ id, email, name, passwordHash: 'none', at: AT }, async () => true)
  return { kind: 'account', accountId: id, name, administrator: false }
}

/** What somebody does on the tests' page. */
export function as(viewer: Viewer, at = AT): Act {
  return { viewer, at, door: 'page' }
}
