import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Act } from '@/lib/core/viewer'
import { findAccountByEmail } from '@/lib/data/accounts'
import { closeHousehold } from '@/lib/data/closing'
import { getHousehold } from '@/lib/data/households'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, expectBrowserProblem, newPage, OFFLINE, PHONE, screenshot, until } from '../support/browser'
import { fortyUnits } from '../support/many-units'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

const LONG = { timeout: 120_000 }
const DAY = '2026-11-25'
// What could not be sent is thrown in the page too.
const NOT_SENT = new RegExp(`${OFFLINE.source}|Failed to fetch`)
const SENT_TO = '**/homes/record/kept'

let app: RunningApp
let away: () => Promise<void>
beforeAll(async () => {
  app = await startApp({ env: { PLENUM_NOW: `${DAY}T18:00:00Z` } })
  away = besideApp(app)
}, 120_000)
afterAll(async () => {
  await away?.()
  await app?.stop()
})

/** Somebody on the walking list of Mill House, which the phone keeps from then on. Their homes' ids, by name. */
async function onTheWalk(name: string): Promise<{ page: Page; ids: string[] }> {
  const ids = await anAccount(
    name,
    fortyUnits().filter(({ building }) => building === 'Mill House'),
  )
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await signInOn(page, app.address, name)
  await page.goto('/rounds/walk?building=Mill+House&doer=resident&on=2026-12-05')
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)')
  await until(page, 'navigator.serviceWorker.controller !== null')
  await expect.poll(() => listsOf(page)).toBe(1)
  return { page, ids }
}

function listsOf(page: Page): Promise<unknown> {
  return page.evaluate(
    "caches.open('plenum-lists-1').then((c) => c.keys()).then((keys) => keys.filter(({ url }) => url.includes('/rounds')).length)",
  )
}

async function actOf(name: string): Promise<Act> {
  const account = await findAccountByEmail(`${name}@example.org`)
  if (!account) throw new Error(`there is no account of ${name}`)
  return { viewer: { kind: 'account', accountId: account.id, ...account }, at: `${DAY}T18:00:00.000Z`, door: 'page' }
}

/** How many records stand in all of these homes for the day of the walk. */
async function recordsOf(ids: string[]): Promise<number> {
  const homes = await Promise.all(ids.map((id) => getHousehold({ kind: 'system' }, id)))
  return homes.flatMap(({ household }) => household.records.filter(({ on }) => on === DAY)).length
}

// What the page sends is stopped in the page itself, for as long as its window is named so, which outlives a reload:
// the browser's own cut comes a moment late, and what it lets through then is recorded although no answer comes.
const STOPPED = `{
  const send = window.fetch
  window.fetch = (address, ...more) =>
    window.name === 'cut' && String(address).includes('/homes/record/kept')
      ? Promise.reject(new TypeError('no network'))
      : send(address, ...more)
}`

async function cut(page: Page): Promise<void> {
  await page.addInitScript(STOPPED)
  await page.evaluate(`${STOPPED}; window.name = 'cut'; undefined`)
  await page.context().setOffline(true)
}

async function mend(page: Page): Promise<void> {
  await page.evaluate("void (window.name = '')")
  await page.context().setOffline(false)
  // A phone says that the network is back; the emulation does not always say it to a page that was loaded under it.
  await page.evaluate("void dispatchEvent(new Event('online'))")
}

async function recordTwo(page: Page): Promise<void> {
  const boxes = page.locator('.tick input')
  await boxes.nth(0).check()
  await boxes.nth(1).check()
  await page.getByRole('button', { name: 'Record what is ticked' }).click()
  await page.getByText('2 kept on this phone, to be sent.').waitFor()
}

test(
  'what is recorded on the walk without network is kept, survives a reload and is sent once when it is back',
  LONG,
  async () => {
    expectBrowserProblem(NOT_SENT)
    const { page, ids } = await onTheWalk('wren')
    const before = await page.locator('.tick input').count()
    await cut(page)
    await recordTwo(page)
    expect(await page.locator('.tick input').count()).toBe(before - 2)
    await page.reload()
    await page.getByText('2 kept on this phone, to be sent.').waitFor()
    expect(await page.locator('.tick').getByText('Kept on this phone, to be sent.').count()).toBe(2)
    await page.getByRole('button', { name: 'Send now' }).click()
    await page.getByText('2 kept on this phone, to be sent.').waitFor()
    expect(await recordsOf(ids)).toBe(0)
    const kept = await page.evaluate('JSON.stringify(localStorage)')
    await mend(page)
    await page.getByText('2 things sent from this phone.').waitFor()
    await expect.poll(() => page.locator('.tick').count()).toBe(before - 2)
    expect(await recordsOf(ids)).toBe(2)
    // As if the answer had been lost on its way: the phone sends the same again.
    await page.evaluate(`Object.assign(localStorage, ${kept})`)
    await page.reload()
    await page.getByText('2 things sent from this phone.').waitFor()
    expect(await recordsOf(ids)).toBe(2)
    // The list kept on the phone is the one after sending; it is kept a moment after the page is there.
    const keptTicks = `caches.match(location.href, { cacheName: 'plenum-lists-1' })
      .then((list) => list?.text()).then((text) => (text ?? '').split('class="tick"').length - 1)`
    await expect.poll(() => page.evaluate(keptTicks)).toBe(before - 2)
    await page.context().setOffline(true)
    await page.reload()
    await expect.poll(() => page.locator('.tick').count()).toBe(before - 2)
  },
)

test('a list is there at every moment while it is kept anew', LONG, async () => {
  const { page } = await onTheWalk('dunnock')
  const asked = await page.evaluate(`(async () => {
    const kept = () => caches.match(location.href, { cacheName: 'plenum-lists-1' })
    const dated = async () => (await kept())?.headers.get('date')
    const { active } = await navigator.serviceWorker.ready
    const [first, end] = [await dated(), Date.now() + 20_000]
    let [missed, anew] = [0, first]
    for (let i = 0; i < 12; i++) active.postMessage({ keep: location.href })
    while (anew === first && Date.now() < end) {
      for (let i = 0; i < 50; i++) if (!(await kept())) missed++
      anew = await dated()
    }
    return { missed, anew: anew !== first }
  })()`)
  expect(asked).toEqual({ missed: 0, anew: true })
})

test('a network that goes while the list is sent loses no tick', LONG, async () => {
  expectBrowserProblem(NOT_SENT)
  const { page, ids } = await onTheWalk('robin')
  // The phone believes it has network; what it sends gets nowhere.
  await page
    .context()
    .route('**/*', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()))
  await recordTwo(page)
  // Here and not where the network is cut: the checker's own line to the browser would lift the cut.
  await screenshot(page, 'rounds-kept')
  expect(await axeFindings(page)).toEqual([])
  expect(await recordsOf(ids)).toBe(0)
  await page.context().unroute('**/*')
  await page.getByRole('button', { name: 'Send now' }).click()
  await page.getByText('2 things sent from this phone.').waitFor()
  expect(await recordsOf(ids)).toBe(2)
})

test(
  'a home that was closed meanwhile keeps its item on the phone with the reason, and holds no other back',
  LONG,
  async () => {
    expectBrowserProblem(NOT_SENT)
    const { page, ids } = await onTheWalk('lark')
    const units = page.locator('.walk-unit')
    await cut(page)
    for (const unit of [0, 1]) await units.nth(unit).locator('.tick input').first().check()
    const closing = (await units.nth(0).locator('h2').getAttribute('id'))?.replace('home-', '') ?? ''
    await page.getByRole('button', { name: 'Record what is ticked' }).click()
    await page.getByText('2 kept on this phone, to be sent.').waitFor()
    await closeHousehold(await actOf('lark'), closing, DAY)
    await mend(page)
    await page.getByText('1 could not be recorded.').waitFor()
    await page.getByText('1 thing sent from this phone.').waitFor()
    await page.getByText('One of these homes was closed meanwhile').waitFor()
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await screenshot(page, `rounds-refused-${colorScheme}`)
      expect(await axeFindings(page)).toEqual([])
    }
    expect(await recordsOf(ids.filter((id) => id !== closing))).toBe(1)
    await page.reload()
    await page.getByRole('button', { name: 'Try again' }).click()
    await page.getByText('One of these homes was closed meanwhile').waitFor()
    await page.getByRole('button', { name: 'Take it off this phone' }).click()
    await expect.poll(() => page.getByText('could not be recorded').count()).toBe(0)
  },
)

test(
  'signing out lets go of the kept lists; what was not sent waits for the one who recorded it, and for nobody else',
  LONG,
  async () => {
    expectBrowserProblem(NOT_SENT)
    const { page, ids } = await onTheWalk('finch')
    await page.context().route(SENT_TO, (route) => route.abort())
    await page.context().setOffline(true)
    await recordTwo(page)
    await page.context().setOffline(false)
    await page.goto('/homes')
    await page.getByText('2 kept on this phone, to be sent.').waitFor()
    await page.getByRole('button', { name: 'Sign out', exact: true }).click()
    await page.waitForURL('**/sign-in')
    await expect.poll(() => listsOf(page)).toBe(0)
    await page.context().unroute(SENT_TO)
    await anAccount('stranger')
    await signInOn(page, app.address, 'stranger')
    await page.goto('/rounds')
    await page.locator('h1').waitFor()
    expect(await page.getByText('kept on this phone').count()).toBe(0)
    await page.context().clearCookies()
    await signInOn(page, app.address, 'finch')
    await page.goto('/rounds')
    await page.getByText('2 things sent from this phone.').waitFor()
    expect(await recordsOf(ids)).toBe(2)
  },
)
