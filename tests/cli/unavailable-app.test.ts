import {
  chmodSync,
  chownSync,
  closeSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeAll, expect, test } from 'vitest'
import { installationSecret } from '@/lib/access/secret'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { closeDatabase } from '@/lib/data/connection'
import { cookieText, sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { freshDatabase } from '../support/fresh-database'
import { countRows } from '../support/rows'
import { ask, sendForm, wordsOf } from '../support/web-form'

// What whoever lives in the house sees while the disk or the database fails: the built app, over HTTP, without scripts.

const place = freshDatabase()
const ASKED = { email: 'ann@example.org', password: 'four words are enough' }
const NOBODY = 65_534
let home = ''
let cookie = ''
let app: RunningApp | undefined
const folders: string[] = []

beforeAll(async () => {
  const made = await createAccountWith(ASKED, [aHousehold()])
  home = made.ok ? `/home/${made.ids[0]}` : ''
  const signedIn = await signIn(sentWith(), ASKED)
  cookie = cookieText(signedIn.ok ? signedIn.cookies : null)
  installationSecret()
  await closeDatabase()
})

afterEach(async () => {
  await app?.stop()
  app = undefined
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true })
})

/** A data folder of its own, as the one above is. */
function aFolder(): { folder: string; file: string } {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-failing-'))
  folders.push(folder)
  const db = new Database(join(place.folder, 'plenum.db'))
  db.pragma('wal_checkpoint(TRUNCATE)')
  db.close()
  for (const name of ['plenum.db', 'secret']) copyFileSync(join(place.folder, name), join(folder, name))
  return { folder, file: join(folder, 'plenum.db') }
}

const see = (path: string, running: RunningApp) => ask(`${running.address}${path}`, { headers: { cookie } })
const health = (running: RunningApp) => ask(`${running.address}/healthz`)

test('a database that another program holds for long: reading goes on, a write says that nothing was saved', async () => {
  const { folder, file } = aFolder()
  app = await startApp({ folder })
  const before = countRows(file)
  const other = new Database(file)
  other.exec('BEGIN IMMEDIATE')
  expect((await health(app)).status).toBe(200)
  expect(wordsOf(await see(home, app))).toContain('Larkspur Court 2')
  const refused = wordsOf(await sendForm(`${app.address}/sign-in`, ASKED))
  expect(refused).toMatch(/The database is busy.*Nothing was saved.*try again/)
  other.exec('ROLLBACK')
  other.close()
  expect(countRows(file)).toEqual(before)
  expect((await sendForm(`${app.address}/sign-in`, ASKED)).status).toBe(303)
}, 120_000)

test('a file that is overwritten while the app runs: the pages say so, and after a restore it is all there', async () => {
  const { folder, file } = aFolder()
  const good = readFileSync(file)
  app = await startApp({ folder })
  expect(wordsOf(await see(home, app))).toContain('Larkspur Court 2')
  // Somebody else's write makes the app's own memory of the file void.
  const other = new Database(file)
  other.exec('UPDATE "User" SET "name" = "name" || \'!\'')
  const handle = openSync(file, 'r+')
  writeSync(handle, Buffer.alloc(good.length, 'not a database '), 0)
  closeSync(handle)
  expect(await health(app)).toMatchObject({ status: 503, text: '{"ok":false}' })
  for (const path of ['/', '/homes', home]) {
    expect(wordsOf(await see(path, app))).toMatch(/database file is damaged.*restore a backup/)
  }
  expect(wordsOf(await sendForm(`${app.address}/sign-in`, ASKED))).toContain('database file is damaged')
  // What needs no database goes on.
  expect((await ask(`${app.address}/sample`)).status).toBe(200)
  other.close()
  await app.stop()
  for (const name of readdirSync(folder)) if (name.startsWith('plenum.db')) rmSync(join(folder, name))
  writeFileSync(file, good)
  app = await startApp({ folder })
  expect(wordsOf(await see(home, app))).toContain('Larkspur Court 2')
}, 120_000)

test('a file that may only be read: reading goes on, a write says so and keeps what was typed', async () => {
  const { folder, file } = aFolder()
  // The tests' own account may be root, whom no permission binds.
  const uid = process.getuid?.() === 0 ? NOBODY : undefined
  if (uid) for (const path of [folder, file, join(folder, 'secret')]) chownSync(path, uid, uid)
  chmodSync(file, 0o444)
  const before = countRows(file)
  if (uid) for (const name of readdirSync(folder)) chownSync(join(folder, name), uid, uid)
  app = await startApp({ folder, uid })
  expect((await health(app)).status).toBe(200)
  expect(wordsOf(await see(home, app))).toContain('Larkspur Court 2')
  const refused = await sendForm(`${app.address}/sign-in`, ASKED)
  expect(wordsOf(refused)).toMatch(/can only be read.*Nothing was saved/)
  expect(refused.text).toContain(`value="${ASKED.email}"`)
  expect(refused.text).not.toContain(ASKED.password)
  expect(countRows(file)).toEqual(before)
}, 120_000)

test('a start on what is no database ends with one plain sentence, and leaves the file as it is', async () => {
  const { folder, file } = aFolder()
  const letter = 'a letter, long enough to be taken for the head of a database. '.repeat(100)
  writeFileSync(file, letter)
  const said = await startApp({ folder }).then(
    () => 'started',
    (error: Error) => error.message,
  )
  expect(said).toContain('The database file is damaged or is not a database')
  expect(said).not.toMatch(/\n\s+at /)
  expect(readFileSync(file, 'utf8')).toBe(letter)
}, 120_000)

test('a start on a folder in the place of the database says so', async () => {
  const { folder, file } = aFolder()
  rmSync(file)
  mkdirSync(file)
  await expect(startApp({ folder })).rejects.toThrow(/The database cannot be opened/)
}, 120_000)
