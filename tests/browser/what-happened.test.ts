import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { DUSTY_YEAR } from '../support/a-dusty-year'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, DESKTOP, newPage, PHONE, screenshot } from '../support/browser'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

const LONG = { timeout: 240_000 }
const NOW = '2026-11-25T18:00:00Z'
let app: RunningApp
let back: () => Promise<void>
let homes: string[] = []

const told = aHousehold({ ...DUSTY_YEAR, id: 'told', name: 'Larkspur Court 2' })

beforeAll(async () => {
  app = await startApp({ env: { PLENUM_NOW: NOW } })
  back = besideApp(app)
  process.env.PLENUM_NOW = NOW
  homes = await anAccount('ann', [told, aHousehold({ id: 'bare', name: 'Bare House', records: [], readings: [] })])
}, 300_000)
afterAll(async () => {
  delete process.env.PLENUM_NOW
  await back?.()
  await app?.stop()
})

async function open(options: Parameters<typeof newPage>[0] = {}): Promise<Page> {
  const page = await newPage({ ...options, baseURL: app.address })
  await signInOn(page, app.address, 'ann')
  return page
}

async function expectNoSideways(page: Page): Promise<void> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(wide).toBeLessThanOrEqual(0)
}

test('it is reached from what is due, why, details and the log, without scripts too', LONG, async () => {
  const page = await open({ javaScript: false })
  const home = `/home/${homes[0]}`
  await page.goto(`${home}/why/hall`)
  await page.getByRole('link', { name: /^What happened to it/ }).click()
  await page.getByRole('heading', { level: 1, name: 'What happened: Main' }).waitFor()
  for (const from of ['details', 'log']) {
    await page.goto(`${home}/${from}`)
    await page.getByText('What happened, in pictures:').getByRole('link').click()
    await page.getByRole('heading', { level: 2, name: 'Hours it ran' }).waitFor()
  }
  await page.getByText('What was learned of the dust, Main system, as a table').click()
  await page.getByRole('cell', { name: 'Hardly any light comes through' }).first().waitFor()
  expect((await page.request.get(`${home}/what-happened/none`)).status()).toBe(404)
})

test('the drawings read on a phone and a desk, light and dark, and on paper', LONG, async () => {
  for (const [width, dark] of [
    [PHONE, false],
    [PHONE, true],
    [DESKTOP, false],
    [DESKTOP, true],
  ] as const) {
    const page = await open({ width, dark })
    for (const [name, id] of [
      ['told', homes[0]],
      ['bare', homes[1]],
    ] as const) {
      await page.goto(`/home/${id}/what-happened/main`)
      expect([name, await axeFindings(page)]).toEqual([name, []])
      await expectNoSideways(page)
      await screenshot(page, `story-${name}-${width}-${dark ? 'dark' : 'light'}`)
    }
    if (width === PHONE && !dark) {
      // Words in a drawing are read on a phone: 14 CSS pixels at the least.
      const smallest = await page.evaluate(() =>
        Math.min(
          ...[...document.querySelectorAll('svg.chart-narrow')].map(
            (svg) => (15 * svg.getBoundingClientRect().width) / (svg as SVGSVGElement).viewBox.baseVal.width,
          ),
        ),
      )
      expect(smallest).toBeGreaterThanOrEqual(14)
    }
    if (width === DESKTOP && !dark) {
      await page.goto(`/home/${homes[0]}/what-happened/main`)
      await page.locator('details').evaluateAll((all) => {
        for (const one of all) (one as HTMLDetailsElement).open = true
      })
      expect(await axeFindings(page)).toEqual([])
      await screenshot(page, 'story-told-tables')
      await page.emulateMedia({ media: 'print' })
      await page.setViewportSize({ width: 700, height: 1000 })
      await screenshot(page, 'story-told-print')
      await page.emulateMedia({ media: 'screen', forcedColors: 'active' })
      await screenshot(page, 'story-told-forced')
    }
  }
})

test('what is due and the page of a look say whether a look is worth it', LONG, async () => {
  const page = await open({ width: PHONE })
  await page.goto(`/home/${homes[0]}`)
  await page.getByText(/up to a lamp now: much light means it can stay\. (Worth it|Not needed|A look today)/).waitFor()
  await screenshot(page, 'story-due')
  await page.goto(`/home/${homes[0]}/record/look-at-filter/hall`)
  await page.getByText(/^(Worth it|Not needed|A look today)/).waitFor()
  expect(await axeFindings(page)).toEqual([])
  await page.goto(`/home/${homes[1]}/record/look-at-filter/hall`)
  await page.getByText('A look today would teach nothing yet').waitFor()
})

test('the sample homes show theirs without an account', LONG, async () => {
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await page.goto('/sample/wrenfield-road')
  await page.getByRole('link', { name: 'Furnace in the basement' }).last().click()
  await page.getByRole('heading', { level: 1, name: 'What happened: Furnace in the basement' }).waitFor()
  expect(await axeFindings(page)).toEqual([])
  await expectNoSideways(page)
  await screenshot(page, 'story-sample')
  await page.goto('/sample/cove-lane')
  const links = await page
    .locator('a[href*="/what-happened/"]')
    .evaluateAll((all) => all.map((a) => a.getAttribute('href')))
  for (const href of links) {
    await page.goto(href ?? '')
    expect(await axeFindings(page)).toEqual([])
  }
  await screenshot(page, 'story-sample-last')
})
