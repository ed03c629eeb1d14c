import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createAccountWith } from '@/lib/access/sign-up'
import { csvText } from '@/lib/core/csv'
import { sheetRows } from '@/lib/core/unit-sheet'
import { findAccountByEmail } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { listHouseholds } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { recordTogether } from '@/lib/data/record-together'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, DESKTOP, newPage, type PageOptions, PHONE, screenshot } from '../support/browser'
import { fortyUnits } from '../support/many-units'

// One story, in its order: a landlord with forty flats, and somebody with another home.
const PASSWORD = 'four words are enough'
const LONG = { timeout: 240_000 }
let app: RunningApp

beforeAll(async () => {
  app = await startApp({ env: { PLENUM_NOW: '2026-11-25T18:00:00Z' } })
  process.env.DATABASE_URL = app.databaseUrl
  process.env.DATA_DIR = app.folder
  for (const [name, homes] of [
    ['ann', fortyUnits()],
    ['cy', [aHousehold()]],
  ] as const) {
    const email = `${name}@example.org`
    await createAccountWith({ email, password: PASSWORD, name }, [])
    const account = await findAccountByEmail(email)
    const viewer = { kind: 'account' as const, accountId: account?.id ?? '', name, administrator: false }
    const brought = await importHouseholds({ viewer, at: '2026-11-25T17:00:00.000Z', door: 'file' }, [...homes])
    if (!brought.ok) throw new Error(brought.faults[0]?.say)
  }
}, 240_000)
afterAll(async () => {
  await closeDatabase()
  await app?.stop()
})

async function signedIn(name: string, options: PageOptions = {}): Promise<Page> {
  const page = await newPage({ ...options, baseURL: app.address })
  await page.goto('/sign-in?next=/check')
  await page.getByLabel('E-mail').fill(`${name}@example.org`)
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await page.locator('main').getByRole('button', { name: 'Sign in' }).click()
  await page.waitForURL((url) => url.pathname !== '/sign-in')
  return page
}

async function looksClean(page: Page, path: string, name: string): Promise<void> {
  for (const width of [PHONE, DESKTOP])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height: 844 })
      await page.emulateMedia({ colorScheme })
      await page.goto(path)
      await screenshot(page, `${name}-${width}-${colorScheme}`)
      expect(await axeFindings(page), `${path} at ${width}, ${colorScheme}`).toEqual([])
      const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
      expect(await page.evaluate(overflow), `${path} at ${width}: nothing to scroll sideways`).toBe(0)
    }
}

test('all homes stand by building; search, state and order are in the address, without scripts', LONG, async () => {
  const page = await signedIn('ann', { javaScript: false })
  await page.goto('/homes')
  expect(await page.locator('main section > h2').allTextContents()).toEqual([
    'Ash Lane',
    'Dune Street 11',
    'Élm Row',
    'Larkspur Court',
    'Mill House',
  ])
  expect(await page.locator('.home-row').count()).toBe(40)
  await page.getByLabel('Search homes').fill('elm 3')
  await page.getByRole('button', { name: 'Show' }).click()
  expect(new URL(page.url()).searchParams.get('q')).toBe('elm 3')
  expect(await page.locator('.home-row').count()).toBe(1)
  await page.goto('/homes?sort=pressing&state=overdue')
  expect(await page.locator('.home-row').count()).toBe(await page.locator('.home-row.overdue').count())
  await page.goto('/homes?building=Nowhere')
  expect(await page.locator('.lead').textContent()).toContain('No home of yours stands in a building of this name')
})

test('the pages of many homes are clean on phone and desk, light and dark', LONG, async () => {
  const page = await signedIn('ann')
  await looksClean(page, '/homes', 'units-homes')
  await looksClean(page, '/homes/record?building=Larkspur+Court', 'units-record-choose')
  await looksClean(page, '/homes/record?building=Mill+House&task=change-filter&on=2026-11-25', 'units-record')
  await looksClean(page, '/rounds?notice=2&off=0&off=6', 'units-rounds')
  await looksClean(page, '/supplies', 'units-supplies')
  await page.goto('/rounds')
  const walk = (await page.locator('.rounds a').first().getAttribute('href')) ?? ''
  await looksClean(page, walk, 'units-walk')
  await page.emulateMedia({ media: 'print', colorScheme: 'light' })
  await screenshot(page, 'units-walk-print')
})

for (const javaScript of [true, false])
  test(
    `a whole building is recorded at once and taken back; JavaScript ${javaScript ? 'on' : 'off'}`,
    LONG,
    async () => {
      const page = await signedIn('ann', { javaScript })
      await page.goto('/homes/record?building=Larkspur+Court')
      await page.getByLabel('What was done').selectOption('change-filter')
      await page.getByRole('button', { name: 'Show the list' }).click()
      await page.locator('.tick input').first().waitFor()
      expect(await page.locator('.tick input:checked').count()).toBe(16)
      await page.locator('.tick input').first().uncheck()
      await page.getByRole('button', { name: 'Record what is ticked' }).click()
      await page.getByText('15 things recorded').waitFor()
      await page.getByRole('button', { name: 'Take it all back' }).click()
      await page.getByText('15 records taken back').waitFor()
    },
  )

test('two who record the same get one record, and the later is told by whom', LONG, async () => {
  const address = '/homes/record?building=Ash+Lane&task=change-filter&on=2026-11-24'
  const [first, second] = [await signedIn('ann'), await signedIn('ann')]
  await first.goto(address)
  await second.goto(address)
  await first.getByRole('button', { name: 'Record what is ticked' }).click()
  await first.getByText('16 things recorded').waitFor()
  await second.getByRole('button', { name: 'Record what is ticked' }).click()
  await second.getByText('Recorded already by ann').waitFor()
})

test('a future day and nothing ticked are refused, and the ticks stay', LONG, async () => {
  const page = await signedIn('ann')
  await page.goto('/homes/record?building=Mill+House&task=change-filter&on=2026-11-25')
  await page.locator('.tick input').first().uncheck()
  await page.getByLabel('The day it was done').fill('2026-12-24')
  await page.getByRole('button', { name: 'Record what is ticked' }).click()
  await page.getByText('Choose today or an earlier day').first().waitFor()
  expect(await page.locator('.tick input:checked').count()).toBe(15)
})

for (const javaScript of [true, false])
  test(
    `a round is walked: it says what it saves, and what was ticked leaves the list; JavaScript ${javaScript}`,
    LONG,
    async () => {
      const page = await signedIn('ann', { width: PHONE, javaScript })
      await page.goto('/rounds')
      expect(await page.locator('.lead').textContent()).toMatch(/\d+ visits? for .* \d+ visits? saved/)
      await page.locator('.rounds a').first().click()
      await page.locator('.tick input').first().waitFor()
      const before = await page.locator('.tick input').count()
      await page.locator('.tick input').first().check()
      await page.getByRole('button', { name: 'Record what is ticked' }).click()
      await page.getByText('1 thing recorded').waitFor()
      await page.reload()
      await page.locator('h1').waitFor()
      expect(await page.locator('.tick input').count()).toBe(before - 1)
    },
  )

test('days when nobody can come are left out, and what cannot be read is said', LONG, async () => {
  const page = await signedIn('ann')
  await page.goto('/rounds?off=0&off=6&closed=2026-11-26+to+2026-11-27')
  const days = await page.locator('.rounds h3').allTextContents()
  expect(days.filter((day) => /Saturday|Sunday|26 November|27 November/.test(day))).toEqual([])
  await page.goto('/rounds?closed=Christmas&notice=many')
  expect(await page.locator('.faults li').count()).toBe(2)
  expect(await page.getByLabel('Nor on these days').inputValue()).toBe('Christmas')
})

test('what is on the shelf comes off the order, and the order is a CSV', LONG, async () => {
  const page = await signedIn('ann')
  await page.goto('/supplies')
  const row = page.locator('.order tbody tr').filter({ hasText: '16 × 25 × 1' })
  const needed = Number(await row.locator('td').first().textContent())
  await row.getByLabel('On the shelf').fill('10')
  await row.getByLabel('In a box').fill('12')
  await page.getByRole('button', { name: 'Keep what is on the shelf' }).click()
  await page.getByText('Kept.').waitFor()
  await row.getByText(`${needed - 10}: ${Math.ceil((needed - 10) / 12)} box`).waitFor()
  expect(await page.getByText('looks like the size of the frame itself').count()).toBe(1)
  const csv = await page.request.get('/supplies/csv?months=12&lead=7')
  expect(csv.headers()['content-type']).toContain('text/csv')
  expect(await csv.text()).toContain(`16x25x1,pleated,8,${needed},10,${needed - 10},12,`)
  await row.getByLabel('On the shelf').fill('some')
  await page.getByRole('button', { name: 'Keep what is on the shelf' }).click()
  await page.locator('.faults').waitFor()
  expect(await row.getByLabel('On the shelf').inputValue()).toBe('some')
})

test('nobody else sees any of it', LONG, async () => {
  const page = await signedIn('cy')
  await page.goto('/rounds')
  expect(await page.locator('main').textContent()).not.toContain('Mill House')
  expect((await page.request.get('/rounds/walk?building=Mill+House&doer=resident&on=2026-11-25')).status()).toBe(404)
  await page.goto('/homes/record?building=Mill+House')
  expect(await page.locator('main').textContent()).not.toContain('Mill House')
})

test('a technician is invited into one building, sees its visits and records nothing', LONG, async () => {
  const ann = await signedIn('ann')
  await looksClean(ann, '/homes/people', 'units-people')
  await ann.getByLabel('Technician').check()
  await ann.getByLabel('Which homes?').selectOption('Mill House')
  await ann.getByRole('button', { name: 'Make an invitation link' }).click()
  const link = new URL(await ann.getByLabel('The link').inputValue()).pathname
  const cy = await signedIn('cy')
  await cy.goto(link)
  expect(await cy.locator('h1').textContent()).toContain('their homes in “Mill House”')
  await cy.getByRole('button', { name: 'Accept' }).click()
  await cy.waitForURL('**/homes')
  await cy.goto('/rounds/walk?building=Mill+House&doer=resident&on=2026-11-25')
  expect(await cy.locator('.tick input').count()).toBe(0)
  await cy.goto('/rounds/walk?building=Mill+House&doer=technician&on=2027-06-01')
  expect(await cy.locator('.tick').count()).toBeGreaterThan(0)
  expect(await cy.locator('.tick input').count()).toBe(0)
  await cy.goto('/homes/record?building=Mill+House')
  expect(await cy.locator('main').textContent()).not.toContain('Mill House')
  await ann.goto('/homes/people')
  await ann.getByText('Remove cy').first().click()
  await ann.getByRole('button', { name: 'Remove cy from all my homes' }).click()
  await ann.getByText('They no longer see 8 homes of yours').waitFor()
  const gone = await cy.request.get('/rounds/walk?building=Mill+House&doer=technician&on=2027-06-01')
  expect(gone.status()).toBe(404)
})

for (const javaScript of [true, false])
  test(
    `forty units come by a spreadsheet, its faults by row, and its export brings nothing new; JavaScript ${javaScript}`,
    LONG,
    async () => {
      const name = javaScript ? 'dee' : 'eli'
      await createAccountWith({ email: `${name}@example.org`, password: PASSWORD, name }, [])
      const page = await signedIn(name, { javaScript })
      await page.goto('/homes/import')
      await choose(page, sheet('Complex', { 4: 'many', 9: 'many' }))
      await page.getByRole('button', { name: 'Show what is in it' }).click()
      // The column that names the building has a heading nobody knows; rows are said once it is chosen.
      await page.getByText('Choose which column names the building').first().waitFor()
      await page.getByLabel('Complex').selectOption({ label: 'Building' })
      await page.getByRole('button', { name: 'Read it again with these columns' }).click()
      await page.getByText('Rows 6 and 11').waitFor()
      if (javaScript) {
        await screenshot(page, 'units-import-faults')
        expect(await axeFindings(page)).toEqual([])
      }
      expect(await page.getByRole('button', { name: /^Keep/ }).count()).toBe(0)
      await choose(page, sheet('Building', {}))
      await page.getByRole('button', { name: 'Read this file instead' }).click()
      await page.getByText('40 new units, 0 that change').waitFor()
      expect(await page.locator('.sheet-lines li').count()).toBe(40)
      if (javaScript) {
        await screenshot(page, 'units-import-preview')
        expect(await axeFindings(page)).toEqual([])
      }
      await page.getByLabel('The place whose weather is most like theirs').selectOption({ label: 'Chicago, Illinois' })
      await page.getByRole('button', { name: 'Keep 40 units' }).click()
      await page.getByText('Kept: 40 new units, 0 changed, 0 as they were.').waitFor()
      await page.goto('/homes')
      expect(await page.locator('main section > h2').count()).toBe(5)
      expect(await page.locator('.home-row').count()).toBe(40)
      await page.goto('/homes/import')
      await choose(page, await (await page.request.get('/homes/export.csv')).text())
      await page.getByRole('button', { name: 'Show what is in it' }).click()
      await page.getByText('0 new units, 0 that change, 40 that stay as they are').waitFor()
      expect(await page.getByRole('button', { name: /^Keep/ }).count()).toBe(0)
      await page.getByRole('link', { name: 'Done: nothing to change' }).click()
      await page.getByRole('button', { name: 'Show what is in it' }).waitFor()
    },
  )

/** The forty units as a spreadsheet; `building` heads the first column, `people` replaces what stands in some rows. */
function sheet(building: string, people: Record<number, string>): string {
  const [headings = [], ...rows] = sheetRows(fortyUnits().map((household) => ({ household, accessNote: null })))
  const at = headings.indexOf('People')
  for (const [row, said] of Object.entries(people)) rows[Number(row)]?.splice(at, 1, said)
  return csvText([[building, ...headings.slice(1)], ...rows])
}

function choose(page: Page, text: string): Promise<void> {
  return page
    .locator('input[type=file]')
    .setInputFiles({ name: 'units.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
}

/** A look at the filters of five homes, twenty days after they were changed: dark, all of them. */
async function lookAtSome(email: string): Promise<void> {
  const account = await findAccountByEmail(email)
  const viewer = { kind: 'account' as const, accountId: account?.id ?? '', name: 'ann', administrator: false }
  const act = { viewer, at: '2026-11-25T17:30:00.000Z', door: 'page' as const }
  const homes = (await listHouseholds(viewer)).filter(({ household }) => household.filters.length > 0).slice(0, 5)
  const records = homes.flatMap(({ id, household }) => {
    const filter = household.filters[0]?.id as string
    return [
      { householdId: id, record: { on: '2026-10-20', kind: 'filter-changed' as const, filter }, key: null },
      {
        householdId: id,
        record: { on: '2026-11-20', kind: 'filter-looked' as const, filter, light: 'dark' as const },
        key: null,
      },
    ]
  })
  expect((await recordTogether(act, records)).ok).toBe(true)
}

test('a landlord lets the homes learn from each other, sees how far they are believed, and ends it', LONG, async () => {
  const page = await signedIn('cy', { javaScript: false })
  await page.goto('/homes/learning')
  expect(await page.locator('main').textContent()).toContain('at least two heating or cooling systems')

  const ann = await signedIn('ann', { javaScript: false })
  await ann.goto('/homes')
  await ann.getByRole('link', { name: 'Learning' }).click()
  expect(await ann.locator('main').textContent()).toContain('Nothing has been seen at any filter')
  await lookAtSome('ann@example.org')
  await ann.reload()
  await ann.getByRole('button', { name: 'Let my homes learn from each other' }).click()
  expect(await ann.getByRole('status').textContent()).toContain('learn from each other now')
  expect(await ann.locator('table thead').textContent()).toContain('Told by the others')
  await ann.locator('table tbody a').first().click()
  await ann.getByRole('link', { name: /Why/ }).first().click()
  expect(await ann.locator('main').textContent()).toContain('of the same owner')

  const shown = await signedIn('ann')
  await looksClean(shown, '/homes/learning', 'learning')
  await ann.goto('/homes/learning')
  await ann.getByRole('button', { name: 'Let every home learn alone' }).click()
  expect(await ann.getByRole('status').textContent()).toContain('its own looks alone again')
})
