import type { BrowserContext } from 'playwright-core'
import { createRenterLink } from '@/lib/access/links'
import { type SessionCookie, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import type { Viewer } from '@/lib/core/viewer'
import { closeDatabase } from '@/lib/data/connection'
import { sentWith } from './a-browser'
import { aHousehold } from './a-household'
import type { RunningApp } from './app'
import { as } from './fresh-database'

export interface HomeInTheApp {
  home: string
  /** Another home of the same owner, which no link of the first may show. */
  other: string
  owner: Viewer
  cookies: SessionCookie[]
  /** Path of a renter's link, `/r/…`, and its id. */
  link: string
  linkId: string
}

/** An owner with two homes and a renter's link to the first, made in a running app's own database. */
export async function aHomeInTheApp(app: RunningApp): Promise<HomeInTheApp> {
  return inDatabaseOf(app, async () => {
    const email = 'owner@example.org'
    const password = 'four words are enough'
    const homes = [aHousehold({ id: 'a', name: 'Larkspur Court 2' }), aHousehold({ id: 'b', name: 'Hidden House' })]
    const made = await createAccountWith({ email, password }, homes)
    if (!made.ok) throw new Error(made.faults[0]?.say)
    const [home = '', other = ''] = made.ids
    const owner: Viewer = { kind: 'account', accountId: made.accountId, name: 'Ann', administrator: true }
    const signedIn = await signIn(sentWith(), { email, password })
    if (!signedIn.ok) throw new Error(signedIn.faults[0]?.say)
    const place = { householdId: home, name: 'Unit 2', lastDay: '2099-01-01', expiresAt: '2099-01-02T00:00:00.000Z' }
    const link = await createRenterLink(as(owner), place)
    if (!link.ok) throw new Error(link.because)
    return { home, other, owner, cookies: signedIn.cookies, link: `/r/${link.token}`, linkId: link.renterLink.id }
  })
}

/** Does something in a running app's database from here. */
export async function inDatabaseOf<T>(app: RunningApp, deed: () => Promise<T>): Promise<T> {
  const before = { ...process.env }
  process.env.DATA_DIR = app.folder
  process.env.DATABASE_URL = app.databaseUrl
  try {
    return await deed()
  } finally {
    await closeDatabase()
    for (const key of ['DATA_DIR', 'DATABASE_URL']) {
      if (before[key] === undefined) delete process.env[key]
      else process.env[key] = before[key]
    }
  }
}

/** Signs a browser in by the cookies of a session. */
export async function signInBrowser(context: BrowserContext, app: RunningApp, cookies: SessionCookie[]): Promise<void> {
  await context.addCookies(
    cookies.map(({ name, value }) => ({
      name,
      value: encodeURIComponent(decodeURIComponent(value)),
      url: app.address,
    })),
  )
}
