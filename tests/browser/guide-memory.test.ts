import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { getFlow } from '@/content/guide/flows'
import { localDay } from '@/lib/core/zone'
import { listEpisode } from '@/lib/data/episodes'
import { getHousehold } from '@/lib/data/households'
import { encodeWalk, type Walk } from '@/lib/guide/address'
import { guideFacts } from '@/lib/guide/household-facts'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { putHome } from '../support/app-home'
import { axeFindings, expectBrowserProblem, newPage, PHONE, screenshot } from '../support/browser'
import { walksToAll } from '../support/guide-reach'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

// One story, in its order: two phones of one household, and one of nobody.
// The clock runs on: what is written down one after the other has moments one after the other.
const minute = Math.floor(Date.now() / 60_000)
const today = () => localDay(new Date().toISOString(), aHousehold().timeZone)
let app: RunningApp
let away: () => Promise<void>
let home = ''
let base = ''
let hers: Page
let his: Page

beforeAll(async () => {
  app = await startApp()
  away = besideApp(app)
  await anAccount('ada')
}, 120_000)
afterAll(async () => {
  await away?.()
  await app?.stop()
})

async function signedIn(javaScript = true): Promise<Page> {
  const page = await newPage({ width: PHONE, javaScript, baseURL: app.address })
  await signInOn(page, app.address, 'ada')
  return page
}

/** The address of the shortest walk of this household to a node. */
function to(id: string): string {
  const walk = walksToAll(getFlow('no-heat'), guideFacts(aHousehold(), null, null), minute).get(id) as Walk
  return `${base}/no-heat${encodeWalk(walk)}`
}

const events = async () => (await listEpisode({ kind: 'system' }, home)).map(({ kind }) => kind)
const tap = async (page: Page, name: string | RegExp) => {
  const before = page.url()
  await page.locator('.taps').getByText(name).click()
  await page.waitForURL((url) => url.href !== before)
}

test('a start on one phone is spent on the other; a second trip leaves nothing to do; a visit gives it back', {
  timeout: 180_000,
}, async () => {
  expectBrowserProblem(/404/)
  hers = await signedIn()
  home = await putHome(app, 'ada@example.org', aHousehold())
  base = `/home/${home}/check`
  his = await signedIn(false)

  await hers.goto(to('start'))
  await tap(hers, 'Done')
  expect(await hers.locator('h1').textContent()).toContain('Wait')
  expect(await events()).toEqual(['start-spent'])

  // Sent once more, by the back button: it is not offered, and nothing is booked.
  await hers.goBack()
  expect(await hers.locator('main').textContent()).toContain('Something was written down since')
  expect(await events()).toEqual(['start-spent'])

  // The other phone: the start is known, and the walk to it is no walk any more.
  await his.goto(`${base}/trouble?at=${minute}`)
  expect(await his.locator('.notice').textContent()).toContain('the one start was used')
  await his.goto(to('start'))
  expect(await his.locator('main').textContent()).toContain('Something was written down since')

  // He says that it stopped again: the second trip.
  await his.goto(`${base}/trouble?at=${minute}`)
  await walkDenying(his, 'No heat')
  expect(await his.locator('.urgency').textContent()).toBe('Today')
  const seen = await his.locator('main').textContent()
  expect(seen).not.toMatch(/Only if/)

  await his.goto(`${base}/clearance`)
  await his.getByRole('button', { name: 'Record it' }).click()
  expect((await his.locator('.faults li').allTextContents()).length).toBe(3)
  await his.getByLabel('Worked on the heating or cooling').check()
  await his.getByLabel('Who was it?').fill('Northside Heating')
  await his.getByLabel(/It was a crew or a licensed technician/).check()
  await his.getByRole('button', { name: 'Record it' }).click()
  await his.waitForURL(`**${base}`)
  expect((await events()).at(-1)).toBe('technician-visit')
  await hers.goto(`${base}/trouble?at=${minute}`)
  expect(await hers.locator('.notice').count()).toBe(0)

  // A hazard on her phone closes every check on his, over restarts, until a professional clears it.
  await hers.goto(to('boom'))
  await tap(hers, 'Not sure')
  expect((await events()).at(-1)).toBe('hazard-stop')
  await hers.goBack()
  await his.goto(`${base}/trouble?at=${minute}`)
  expect(await his.locator('.notice').textContent()).toContain('a hazard was met')
  const ends = await walkDenying(his, 'No heat')
  expect(ends).not.toMatch(/Only if/)

  await his.goto(`${base}/clearance`)
  await his.getByLabel('Looked at the hazard').check()
  await his.getByLabel('Who was it?').fill('The fire crew')
  await his.getByLabel(/It was a crew or a licensed technician/).check()
  await his.getByRole('button', { name: 'Record it' }).click()
  await his.waitForURL(`**${base}`)
  await hers.goto(`${base}/trouble?at=${minute}`)
  expect(await hers.locator('.notice').count()).toBe(0)

  // "Something changed" is one step and books a hazard.
  await hers.goto(to('filter'))
  await hers.getByRole('button', { name: 'Something changed' }).click()
  await hers.getByText('get everyone out now').first().waitFor()
  expect((await events()).at(-1)).toBe('hazard-leave')
  await screenshot(hers, 'guide-home-changed')

  // All of it stands in the log, for whoever looks there.
  await his.goto(`/home/${home}/log?kind=checked`)
  const lines = (await his.locator('.log-line').allTextContents()).join('\n')
  for (const line of [
    'The one start was used',
    'Self-check begun',
    'A technician worked on it',
    'Northside Heating',
    'Hazard: every check stops',
    'A bang, or soot',
    'A professional cleared the hazard',
    'Hazard: the home is to be left',
    'Trouble: No heat',
  ])
    expect(lines.toLowerCase()).toContain(line.toLowerCase())
  expect(await axeFindings(his)).toEqual([])
})

/** Denies every hazard, and answers the rest by its last way, to the end. Fails on anything to do. */
async function walkDenying(page: Page, title: string): Promise<string> {
  await page.locator('.taps').getByText(title, { exact: true }).click()
  for (let i = 0; i < 60; i++) {
    await page.locator('main h1').first().waitFor()
    const text = (await page.locator('main').textContent()) ?? ''
    expect(text).not.toMatch(/The one start|Only if/)
    if ((await page.locator('.urgency').count()) > 0 || (await page.locator('[data-emergency]').count()) > 0)
      return text
    const taps = page.locator('.taps').locator('a, button')
    const texts = await taps.allTextContents()
    const no = texts.findIndex((each) => /^(No\b|Yes, I am|Yes, all|Yes, and it works)/.test(each))
    const before = page.url()
    await taps.nth(Math.max(no, 0)).click()
    await page.waitForURL((url) => url.href !== before)
  }
  throw new Error('no end')
}

test('a look at the filter in the guide stands in the log, and the brief is written, shared and ends', {
  timeout: 180_000,
}, async () => {
  expectBrowserProblem(/404/)
  const page = await signedIn()
  const id = await putHome(app, 'ada@example.org', aHousehold({ id: 'second', name: 'Second home' }))
  base = `/home/${id}/check`
  await page.goto(to('filter'))
  await tap(page, 'It was dark: a new one is in')
  const { household } = await getHousehold({ kind: 'system' }, id)
  expect(household.records.at(-1)).toMatchObject({
    on: today(),
    kind: 'filter-changed',
    filter: 'hall',
    light: 'dark',
  })

  await page.goto(to('still-cold'))
  expect(await axeFindings(page)).toEqual([])
  await page.getByLabel(/How warm is the room/).fill('61')
  await page.getByRole('button', { name: 'Make the brief' }).click()
  await page.getByRole('button', { name: 'Write it into the log' }).click()
  await page.waitForURL(`**/home/${id}/brief/*`)
  const sheet = (await page.locator('.brief').textContent()) ?? ''
  expect(sheet).toContain('61 °F')
  expect(sheet).toContain(`last changed ${today()}`)
  expect(sheet).toContain('gas furnace')
  expect(await axeFindings(page)).toEqual([])
  await screenshot(page, 'guide-brief-written')
  const pdf = await page.pdf({ format: 'Letter' })
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBe(1)

  await page.goto(`/home/${id}/log`)
  await page.getByRole('link', { name: 'Brief made' }).click()
  await page.waitForURL(`**/home/${id}/brief/*`)

  await page.getByRole('button', { name: 'Make a link for two weeks' }).click()
  const link = new URL(await page.getByLabel('The link').inputValue()).pathname
  const stranger = await newPage({ width: PHONE, javaScript: false, baseURL: app.address })
  await stranger.goto(link)
  expect(await stranger.locator('.brief').textContent()).toBe(sheet)
  expect(await axeFindings(stranger)).toEqual([])
  await page.reload()
  await page.getByRole('button', { name: 'End the link' }).click()
  await expect.poll(async () => (await stranger.goto(link))?.status()).toBe(404)
})

test('of several filters the guide asks which one it was, and the one meant stands in the log', async () => {
  const [hall] = aHousehold().filters
  if (!hall) throw new Error('no filter')
  const filters = [hall, { ...hall, id: 'stairs', place: 'ceiling-grille' as const }]
  const page = await signedIn(false)
  const id = await putHome(app, 'ada@example.org', aHousehold({ id: 'third', name: 'Third home', filters }))
  base = `/home/${id}/check`
  await page.goto(to('filter'))
  await tap(page, 'Light comes through: I put it back')
  await page.getByRole('heading', { name: 'Which filter was it?' }).waitFor()
  expect(await axeFindings(page)).toEqual([])
  await screenshot(page, 'guide-which-filter')
  await tap(page, 'The one in the ceiling grille')
  expect(await page.locator('.flow-name').textContent()).toContain('Third home')
  const { household } = await getHousehold({ kind: 'system' }, id)
  expect(household.records.filter(({ on }) => on === today())).toMatchObject([
    { kind: 'filter-looked', filter: 'stairs', light: 'clear' },
  ])
})

test('nobody signed in: the phone remembers, without scripts too, until a professional is said to have been there', async () => {
  const page = await newPage({ width: PHONE, javaScript: false, baseURL: app.address })
  const walk = walksToAll(getFlow('no-heat'), {}, minute).get('boom') as Walk
  await page.goto(`/check/no-heat${encodeWalk(walk)}`)
  await tap(page, 'Yes, one of these')
  expect(await page.locator('.hazard').textContent()).toContain('not normal')
  await page.goto(`/check/trouble?at=${minute}`)
  expect(await page.locator('.notice').textContent()).toContain('On this phone a hazard was met')
  await walkDenying(page, 'No heat')
  await page.goto('/check/cleared')
  await page.getByLabel('Looked at the hazard').check()
  await page.getByLabel('Who was it?').fill('Gas company')
  await page.getByLabel(/It was a crew or a licensed technician/).check()
  await page.getByRole('button', { name: 'Record it' }).click()
  await page.waitForURL('**/check')
  await page.goto(`/check/trouble?at=${minute}`)
  expect(await page.locator('.notice').count()).toBe(0)
})
