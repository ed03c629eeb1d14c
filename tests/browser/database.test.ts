import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, newPage, screenshot } from '../support/browser'

const PASSWORD = 'four words are enough'
let folder = ''
let app: RunningApp

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plenum-broken-'))
  app = await startApp({ folder })
})
afterAll(async () => {
  await app?.stop()
  await rm(folder, { recursive: true, force: true })
})

async function signUp(page: Page): Promise<void> {
  await page.goto(`${app.address}/sign-up`)
  await page.getByLabel('Your name').fill('Ann')
  await page.getByLabel('E-mail').fill('ann@example.org')
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await page.getByRole('button', { name: 'Make the account' }).click()
  await page.waitForURL('**/homes')
}

test('a locked database is said in the form, what was typed stays, and the next try works', async () => {
  const page = await newPage()
  await signUp(page)
  await page.goto(`${app.address}/account`)
  const other = new Database(join(folder, 'plenum.db'))
  other.exec('BEGIN IMMEDIATE')
  await page.getByLabel('Name', { exact: true }).fill('Ann of the hill')
  await page.getByRole('button', { name: 'Save the name' }).click()
  await page.getByText('The database is busy').waitFor()
  expect(await page.getByLabel('Name', { exact: true }).inputValue()).toBe('Ann of the hill')
  other.exec('ROLLBACK')
  other.close()
  await page.getByRole('button', { name: 'Save the name' }).click()
  await page.getByText('Saved.').waitFor()
  await page.locator('.who-name', { hasText: 'Ann of the hill' }).waitFor()
})

test('a broken database is said on the page, the help stays open, and a restored file is back at once', async () => {
  const [page, plain] = [await newPage(), await newPage({ javaScript: false })]
  for (const each of [page, plain]) {
    await each.goto(`${app.address}/sign-in`)
    await each.getByLabel('E-mail').fill('ann@example.org')
    await each.getByLabel('Password', { exact: true }).fill(PASSWORD)
    await each.locator('main').getByRole('button', { name: 'Sign in' }).click()
    await each.waitForURL('**/homes')
    // Nothing is fetched any more while there is no server.
    await each.goto('about:blank')
  }
  await app.stop()
  // The app opens the file with its first question, so that it starts with a good one and then meets a broken one.
  app = await startApp({ folder })
  const file = join(folder, 'plenum.db')
  const good = await readFile(file)
  await writeFile(file, 'This was a database once. '.repeat(400))
  for (const each of [page, plain]) {
    for (const path of ['/homes', '/', '/account', '/home/some/people', '/invitation/some']) {
      await each.goto(app.address + path)
      expect(await each.locator('main').textContent(), path).toContain('The database file is damaged')
    }
    expect(await axeFindings(each)).toEqual([])
    await each.goto(`${app.address}/check`)
    expect(await each.locator('.hazard h2').first().textContent()).toContain('Gas smell')
  }
  await page.goto(`${app.address}/homes`)
  await screenshot(page, 'account-database-broken')
  expect((await fetch(`${app.address}/healthz`)).status).toBe(503)
  await writeFile(file, good)
  await page.goto(`${app.address}/account`)
  expect(await page.locator('main').textContent()).toContain('You sign in as ann@example.org')
  expect(await page.locator('.who-name').textContent()).toBe('Ann of the hill')
})
