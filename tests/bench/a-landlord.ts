import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { findAccountByEmail } from '@/lib/data/accounts'
import { listHomes } from '@/lib/data/households'
import { createFeed } from '@/lib/outbound/feed'
import { manyHouseholds } from './many-households'

export const HOMES = 60
const ON = '2026-11-25'
const PASSWORD = 'four words are enough'

export interface Prepared {
  viewer: { kind: 'account'; accountId: string; name: string; administrator: boolean }
  cookie: string
  feed: string
  homes: string[]
}

/** A landlord with homes in the database of this process's environment, signed in, with a calendar. */
export async function prepared(): Promise<Prepared> {
  const made = await createAccountWith(
    { email: 'ann@example.org', password: PASSWORD, name: 'ann' },
    manyHouseholds(HOMES, ON).map((home) => ({ ...home, records: [] })),
  )
  if (!made.ok) throw new Error(made.faults[0]?.say)
  const account = await findAccountByEmail('ann@example.org')
  const viewer = { kind: 'account' as const, accountId: account?.id ?? '', name: 'ann', administrator: true }
  const signed = await signIn(new Headers({ 'x-forwarded-for': '127.0.0.1' }), {
    email: 'ann@example.org',
    password: PASSWORD,
  })
  if (!signed.ok) throw new Error(signed.faults[0]?.say)
  const cookie = signed.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; ')
  const feed = await createFeed({ viewer, at: `${ON}T12:00:00.000Z`, door: 'page' })
  if (!feed) throw new Error('no calendar address was made')
  return { viewer, cookie, feed: feed.path, homes: (await listHomes(viewer)).map(({ id }) => id) }
}
