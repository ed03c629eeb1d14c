import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { listEpisode } from '@/lib/data/episodes'
import { getHousehold } from '@/lib/data/households'
import { type GuideHome, unknownHome } from '@/lib/guide/place'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { putHome } from '../support/app-home'
import { expectBrowserProblem, newPage, OFFLINE, PHONE, until } from '../support/browser'
import { gentlest, stateOf, walkByTaps } from '../support/guide-walker'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

let app: RunningApp
let away: () => Promise<void>
beforeAll(async () => {
  app = await startApp()
  away = besideApp(app)
  await anAccount('nell')
}, 120_000)
afterAll(async () => {
  await away?.()
  await app?.stop()
})

/** One visit: the worker has kept what it needs and holds the page. */
async function visited(page: Page, path = '/check'): Promise<void> {
  await page.goto(path)
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)')
  await until(page, 'navigator.serviceWorker.controller !== null')
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

test('after one visit every flow is walked by tapping with the network cut', async () => {
  expectBrowserProblem(OFFLINE)
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await visited(page)
  await page.context().setOffline(true)
  const clock = clockOf(page)
  const passed = new Set<string>()
  for (const flow of FLOWS) {
    // What was tried in the flow before is not this one's story.
    await page.context().clearCookies()
    await forgetQueue(page)
    await clock.set()
    const walked = await walkByTaps(page, { flow, passed, now: clock.now, wait: clock.on })
    expect(await page.getByText('No network.').count()).toBe(1)
    const last = flow.nodes.find(({ id }) => id === walked.nodes.at(-1))
    expect(last?.kind, flow.id).toBe('outcome')
    expect(last?.severity, flow.id).toBeLessThan(3)
  }
})

test('the kept page leads on by its scripts only, which know the home and the minute; without scripts to the server', async () => {
  const html = await (await fetch(`${app.address}/check/offline`)).text()
  const [without = ''] = /<noscript>.*?<\/noscript>/s.exec(html.slice(html.indexOf('id="main"'))) ?? []
  expect(without).toContain('href="/check"')
  expect(without).toContain('No gas smell here')
  const scripted = html.replace(/<(noscript|script)\b.*?<\/\1>/gs, '')
  expect(scripted).toContain('Do you smell gas?')
  expect(scripted).not.toContain('No gas smell here')
  // A tap in the moment before they run is a tap on nothing: on a slow phone it would have left the home's guide.
  const page = await newPage({ width: PHONE, baseURL: app.address, javaScript: false })
  await page.goto('/check/offline')
  expect(await page.getByText('One moment').isVisible()).toBe(false)
  await page.getByRole('link', { name: 'No gas smell here' }).click()
  await page.waitForURL('**/check')
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
  await signInOn(page, app.address, 'nell')
  const home = await putHome(app, 'nell@example.org', aHousehold())
  // The phone has seen the first screen of this home once.
  await visited(page, `/home/${home}/check`)
  await until(page, `localStorage.getItem('plenum.home.${home}') !== null`)
  await page.context().setOffline(true)
  const clock = clockOf(page)
  await clock.set()
  await page.goto(`/home/${home}/check`)
  await page.getByText('No network.').waitFor()
  expect(await page.getByText('has not opened this home').count()).toBe(0)
  await page.getByRole('link', { name: 'No gas smell here' }).click()
  await page.locator('.taps').getByText('No heat', { exact: true }).click()
  const nodes = await walkOn(page, await homeOf(home), clock)
  // It burns gas, as the home says: nobody was asked, and the one start was given.
  expect(nodes).not.toContain('heat-source')
  expect(nodes).toContain('start')
  // A second walk on the same phone, still without network: the start is known to be spent.
  await page.goto(`/home/${home}/check/trouble?at=${clock.now()}`)
  await page.getByText('the one start was used').waitFor()
  expect(await eventsOf(home)).toEqual([])
  await page.clock.setFixedTime(Date.now())
  await page.context().setOffline(false)
  await page.goto(`/home/${home}/check/clearance`)
  await expect.poll(() => eventsOf(home)).toEqual(['trouble-began', 'start-spent'])
  // Sent again, it is still one.
  await page.reload()
  await page.getByText('the one start was used').first().waitFor()
  expect(await eventsOf(home)).toEqual(['trouble-began', 'start-spent'])
  expect(await queueOf(page)).toBe(0)
})

test('a home that this phone never opened is not mistaken for nobody’s: the page says so, asks, and sends to that home', async () => {
  expectBrowserProblem(OFFLINE)
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await signInOn(page, app.address, 'nell')
  const home = await putHome(app, 'nell@example.org', aHousehold({ id: 'unseen', name: 'Unseen' }))
  await visited(page)
  await page.context().setOffline(true)
  await page.goto(`/home/${home}/check/trouble?at=${Math.floor(Date.now() / 60_000)}`)
  await page.getByText('has not opened this home’s guide before').waitFor()
  await page.locator('.taps').getByText('No heat', { exact: true }).click()
  await page.waitForURL((url) => url.pathname === `/home/${home}/check/no-heat`)
  await page.getByRole('button', { name: 'Something changed' }).click()
  await page.getByText('get everyone out now').first().waitFor()
  await page.context().setOffline(false)
  await page.goto(`/home/${home}`)
  await expect.poll(() => eventsOf(home)).toEqual(['trouble-began', 'hazard-leave'])
})

test('what a phone kept of homes goes when its people sign out', async () => {
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await signInOn(page, app.address, 'nell')
  const home = await putHome(app, 'nell@example.org', aHousehold({ id: 'kept', name: 'Kept' }))
  const kept = "Object.keys(localStorage).filter((key) => key.startsWith('plenum.home.')).length"
  await page.goto(`/home/${home}/check`)
  await until(page, `${kept} === 1`)
  await page.goto('/homes')
  await page.getByRole('button', { name: 'Sign out', exact: true }).click()
  await page.waitForURL('**/sign-in')
  await until(page, `${kept} === 0`)
})

/** The home as the guide of a phone knows it. */
async function homeOf(id: string): Promise<GuideHome> {
  const { systems, tenure, vulnerable, timeZone } = (await getHousehold({ kind: 'system' }, id)).household
  return { ...unknownHome(id, timeZone), profile: { systems, tenure, vulnerable } }
}

async function eventsOf(home: string): Promise<string[]> {
  return (await listEpisode({ kind: 'system' }, home)).map(({ kind }) => kind)
}

function queueOf(page: Page): Promise<unknown> {
  return page.evaluate("caches.open('plenum-queue-1').then((queue) => queue.keys()).then((keys) => keys.length)")
}

function forgetQueue(page: Page): Promise<unknown> {
  return page.evaluate("caches.delete('plenum-queue-1')")
}

/** Goes on by the gentlest answers, as the guide's own replay offers them in this home; gives the screens seen. */
async function walkOn(page: Page, home: GuideHome, clock: ReturnType<typeof clockOf>): Promise<string[]> {
  const nodes: string[] = []
  for (let taps = 0; taps < 80; taps++) {
    await page.locator('.flow-name, .urgency').first().waitFor()
    if ((await page.locator('.urgency').count()) > 0) return nodes
    if ((await page.locator('.wait-left').count()) > 0) await clock.on(10)
    const found = stateOf(page.url(), clock.now(), home)
    nodes.push(found.node.id)
    const before = page.url()
    await page
      .locator('.taps')
      .getByText(gentlest(found.node, found, {}).text, { exact: true })
      .click()
    await page.waitForURL((url) => url.href !== before, { waitUntil: 'commit' })
  }
  throw new Error(`no end after ${nodes.join(' ')}`)
}
