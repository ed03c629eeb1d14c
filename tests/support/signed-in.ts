import type { Page } from 'playwright-core'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import type { Household } from '@/lib/core/household'
import { closeDatabase } from '@/lib/data/connection'
import type { RunningApp } from './app'

const PASSWORD = 'a plain long passphrase'

/** Turns this process's own questions to the database of a running app, until the function it gives is called. */
export function besideApp(app: RunningApp): () => Promise<void> {
  const before = { DATABASE_URL: process.env.DATABASE_URL, DATA_DIR: process.env.DATA_DIR }
  process.env.DATA_DIR = app.folder
  process.env.DATABASE_URL = app.databaseUrl
  return async () => {
    await closeDatabase()
    for (const [key, value] of Object.entries(before)) {
      if (value === undefined) delete process.env[key]
      else process.env[key] = value
    }
  }
}

/** Makes an account with households in it, in the app's database. Gives their ids. */
export async function anAccount(name: string, households: Household[] = []): Promise<string[]> {
  const made = await createAccountWith({ email: `${name}@example.org`, password: PASSWORD, name }, households)
  if (!made.ok) throw new Error(made.faults.map(({ say }) => say).join(' '))
  return made.ids
}

/** Signs somebody in on a page: the session's cookie, as the sign-in page would set it. */
export async function signInOn(page: Page, address: string, name: string): Promise<void> {
  const signed = await signIn(new Headers({ 'x-forwarded-for': '127.0.0.1' }), {
    email: `${name}@example.org`,
    password: PASSWORD,
  })
  if (!signed.ok) throw new Error(signed.faults.map(({ say }) => say).join(' '))
  // A cookie that says so in its name is set by TLS only; a browser sends it to this machine all the same.
  const url = (cookie: string) => (cookie.startsWith('__Secure-') ? address.replace('http:', 'https:') : address)
  const cookies = signed.cookies.map(({ name, value }) => ({ name, value: encodeURIComponent(value), url: url(name) }))
  await page.context().addCookies(cookies)
}
