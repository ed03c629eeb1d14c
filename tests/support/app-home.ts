import type { Household } from '@/lib/core/household'
import { findAccountByEmail } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import type { RunningApp } from './app'

/** Puts a home into an account of a running app, by the database; gives our id of it. */
export async function putHome(app: RunningApp, email: string, household: Household): Promise<string> {
  const before = process.env.DATABASE_URL
  process.env.DATABASE_URL = app.databaseUrl
  try {
    const account = await findAccountByEmail(email)
    if (!account) throw new Error(`there is no account for ${email}`)
    const viewer = { kind: 'account' as const, accountId: account.id, ...account }
    const imported = await importHouseholds({ viewer, at: new Date().toISOString(), door: 'page' }, [household])
    if (!imported.ok) throw new Error(imported.faults[0]?.say)
    return imported.ids[0] ?? ''
  } finally {
    await closeDatabase()
    if (before === undefined) delete process.env.DATABASE_URL
    else process.env.DATABASE_URL = before
  }
}
