import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { installationSecret } from '@/lib/access/secret'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { createFeed } from '@/lib/outbound/feed'
import { cookieText, sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { as, freshDatabase } from '../support/fresh-database'
import { countRows } from '../support/rows'
import { ask, sendForm, wordsOf } from '../support/web-form'

// The clock of the machine is set back before everything that was recorded, and then years ahead.

const place = freshDatabase()
const ASKED = { email: 'ann@example.org', password: 'four words are enough' }
let home = ''
let cookie = ''
let feed = ''
let app: RunningApp | undefined

beforeAll(async () => {
  process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'
  const made = await createAccountWith(ASKED, [])
  const viewer = {
    kind: 'account',
    accountId: made.ok ? made.accountId : '',
    name: 'ann',
    administrator: true,
  } as const
  const imported = await importHouseholds(as(viewer), [
    aHousehold({ records: [{ on: '2026-11-20', kind: 'filter-changed', filter: 'hall' }] }),
  ])
  home = imported.ok ? `/home/${imported.ids[0]}` : ''
  feed = (await createFeed(as(viewer)))?.path ?? ''
  const signedIn = await signIn(sentWith(), ASKED)
  cookie = cookieText(signedIn.ok ? signedIn.cookies : null)
  installationSecret()
  await closeDatabase()
})
afterEach(async () => {
  await app?.stop()
  app = undefined
})
afterAll(() => {
  delete process.env.PLENUM_NOW
})

async function startAt(now: string): Promise<RunningApp> {
  app = await startApp({ folder: place.folder, databaseUrl: null, env: { PLENUM_NOW: now } })
  return app
}

const PAGES = ['', '/year', '/log', '/details', '/why/hall', '/what-happened/main', '/measured', '/check', '/away']

test('set back before all that was recorded, every page of the home answers, and a record of that day is kept', async () => {
  const { address } = await startAt('2026-10-01T18:00:00Z')
  const sent = { headers: { cookie } }
  for (const path of PAGES) expect([path, (await ask(address + home + path, sent)).status]).toEqual([path, 200])
  for (const path of ['/homes', '/rounds', '/supplies', feed])
    expect([path, (await ask(address + path, sent)).status]).toEqual([path, 200])
  const before = countRows(`${place.folder}/plenum.db`).Entry ?? 0
  expect((await sendForm(`${address}${home}/record/change-filter/hall`, { on: '2026-09-30' }, sent)).status).toBe(303)
  expect(countRows(`${place.folder}/plenum.db`).Entry).toBe(before + 1)
  // What was recorded "in the future" is told in the log, not hidden.
  expect(wordsOf(await ask(`${address}${home}/log`, sent))).toContain('20 November')
}, 120_000)

test('set ten years ahead, every page of the home answers, and the filter is long overdue', async () => {
  const { address } = await startAt('2036-11-25T18:00:00Z')
  const sent = { headers: { cookie } }
  for (const path of PAGES) expect([path, (await ask(address + home + path, sent)).status]).toEqual([path, 200])
  expect(wordsOf(await ask(address + home, sent))).toMatch(/overdue/i)
}, 120_000)
