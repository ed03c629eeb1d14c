import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { listEpisode } from '@/lib/data/episodes'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { inApp } from '../support/app-data'
import { putHome } from '../support/app-home'
import { expectBrowserProblem, newPage, PHONE } from '../support/browser'
import { walkByTaps } from '../support/guide-walker'

let app: RunningApp
beforeAll(async () => {
  app = await startApp()
}, 120_000)
afterAll(async () => {
  await app?.stop()
})

/** One visit: the worker has kept what it needs and holds the page. */
async function visited(page: Page, path = '/check'): Promise<void> {
  await page.goto(path)
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)')
  await page.waitForFunction('navigator.serviceWorker.controller !== null')
}

/** A walk's waits without waiting: the phone's own clock is set on. */
function clockOf(page: Page) {
  let at = Date.now()
  return {
    now: () => Math.floor(at / 60_000),
    set: () => page.clock.setFixedTime(at),
    on: async (minutes: number) => {
      at += minutes * 60_000
      await page.clock.setFixedTime(at)
      await page.reload()
      await page.locator('.taps').waitFor()
    },
  }
}

// What a browser says when the network is cut is no fault of the page.
const OFFLINE = /ERR_INTERNET_DISCONNECTED|Failed to load resource/

for (const flow of FLOWS)
  test(`${flow.title}: walked with the network cut after one visit`, async () => {
    expectBrowserProblem(OFFLINE)
    const page = await newPage({ width: PHONE, baseURL: app.address })
    await visited(page)
    await page.context().setOffline(true)
    const clock = clockOf(page)
    await clock.set()
    const walked = await walkByTaps(page, { title: flow.title, now: clock.now, wait: clock.on })
    expect(await page.getByText('No network.').count()).toBe(1)
    const last = flow.nodes.find(({ id }) => id === walked.nodes.at(-1))
    expect(last?.kind).toBe('outcome')
    expect(last?.severity).toBeLessThan(3)
  })

test('with the network cut an emergency page opens, leads nowhere, and a broken link begins at the hazards', async () => {
  expectBrowserProblem(OFFLINE)
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await visited(page, '/')
  await page.context().setOffline(true)
  await page.goto('/check/emergency')
  await page.getByText('No network.').waitFor()
  expect(await page.locator('a, button').evaluateAll((each) => each.map((tap) => tap.getAttribute('href')))).toEqual([
    'tel:911',
  ])
  await page.goto('/check/no-heat?flow=no-heat&at=29000000&s=gas.no.0&n=2')
  await page.getByText('cut short').waitFor()
  await page.goto('/check/no-heat')
  await page.getByRole('button', { name: 'Something changed' }).click()
  await page.getByText('get everyone out now').first().waitFor()
})

test('a start spent without network closes the next one on the phone, and is sent once when the network is back', async () => {
  expectBrowserProblem(OFFLINE)
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await page.goto('/sign-up')
  await page.getByLabel('Your name').fill('Nell')
  await page.getByLabel('E-mail').fill('nell@example.org')
  await page.getByLabel('Password', { exact: true }).fill('four words are enough')
  await page.getByRole('button', { name: 'Make the account' }).click()
  await page.waitForURL((url) => url.pathname !== '/sign-up')
  const home = await putHome(app, 'nell@example.org', aHousehold())
  // The phone has seen this home once.
  await visited(page, `/home/${home}/check/no-heat`)
  await page.waitForFunction(`localStorage.getItem('plenum.home.${home}') !== null`)
  await page.context().setOffline(true)
  const clock = clockOf(page)
  await clock.set()
  await page.goto(`/home/${home}/check/trouble?at=${clock.now()}`)
  await page.getByRole('link', { name: 'No heat', exact: true }).click()
  await walkOn(page, clock.on)
  expect(await page.locator('.urgency').textContent()).toBeTruthy()
  // A second walk on the same phone, still without network: the start is known to be spent.
  await page.goto(`/home/${home}/check/trouble?at=${clock.now()}`)
  await page.getByText('the one start was used').waitFor()
  expect(await eventsOf(home)).toEqual([])
  await page.context().setOffline(false)
  await page.goto(`/home/${home}/check/clearance`)
  await expect.poll(() => eventsOf(home)).toEqual(['start-spent'])
  // Sent again, it is still one.
  await page.goto(`/home/${home}/check/clearance`)
  await page.reload()
  expect(await eventsOf(home)).toEqual(['start-spent'])
  await page.getByText('the one start was used').first().waitFor()
})

function eventsOf(home: string): Promise<string[]> {
  return inApp(app, async () => (await listEpisode({ kind: 'system' }, home)).map(({ kind }) => kind))
}

/** Goes on by the gentlest answers, whatever the home already answers by itself. */
async function walkOn(page: Page, wait: (minutes: number) => Promise<void>): Promise<void> {
  for (let taps = 0; taps < 80; taps++) {
    await page.locator('.flow-name, .urgency').first().waitFor()
    if ((await page.locator('.urgency').count()) > 0) return
    if ((await page.locator('.wait-left').count()) > 0) await wait(10)
    const before = page.url()
    const taps = page.locator('.taps').locator('a, button')
    const texts = await taps.allTextContents()
    const index = texts.findIndex((text) =>
      /^(No\b|Yes, I am|Yes, all|Yes, and it works|Done|The time is over)/.test(text),
    )
    await taps.nth(Math.max(0, index)).click()
    await page.waitForURL((url) => url.href !== before)
  }
  throw new Error('no end')
}
