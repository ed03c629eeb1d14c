import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { isGuidePath } from '@/app/outside-guide'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, newPage, PHONE } from '../support/browser'
import { unheard } from '../support/ears'
import { everyPage, type Shown } from '../support/every-page'
import { EVERYBODY_ENV, EVERYBODY_NOW, everybodyThere, type There, type Who } from '../support/everybody-there'
import { lostInForcedColours, moving, unreadable } from '../support/eyes'
import { unreachable } from '../support/hands'
import { pageRoutes } from '../support/routes'
import { besideApp } from '../support/signed-in'

// Each page is loaded once and then looked at, listened to and gone through by whoever uses it otherwise.
const LONG = { timeout: 240_000 }
const SIZES = [
  { width: PHONE, text: '100%' },
  { width: PHONE, text: '225%' },
  { width: 320, text: '112.5%' },
]
let app: RunningApp
let back: () => Promise<void>
let there: There
let pages: Shown[]

beforeAll(async () => {
  app = await startApp({ env: EVERYBODY_ENV })
  back = besideApp(app)
  there = await everybodyThere()
  pages = everyPage(there)
}, 300_000)
afterAll(async () => {
  await back?.()
  await app?.stop()
})

async function open(who: Who): Promise<Page> {
  const page = await newPage({ width: PHONE, baseURL: app.address })
  await page.emulateMedia({ reducedMotion: 'reduce' })
  // The phone's clock is the app's, which is held.
  await page.clock.setFixedTime(EVERYBODY_NOW)
  await page.context().addCookies(there.cookies[who].map((cookie) => ({ ...cookie, url: app.address })))
  return page
}

async function faultsOf(page: Page, { path, deed, leadsTo }: Shown): Promise<string[]> {
  await page.setViewportSize({ width: PHONE, height: 844 })
  const answer = await page.goto(path)
  await deed?.(page)
  const at = new URL(page.url())
  if (leadsTo) return at.pathname.startsWith(leadsTo) ? [] : [`leads to ${at.pathname}`]
  if (answer?.status() !== 200) return [`answers ${answer?.status()}`]
  if (!deed && at.pathname + at.search !== path) return [`leads to ${at.pathname}`]
  const found = [...(await moving(page)), ...(await unheard(page, { inGuide: isGuidePath(at.pathname) }))]
  await page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true })")
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    found.push(...(await axeFindings(page)).map((each) => `${colorScheme}: ${each}`))
  }
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, forcedColors: 'active' })
    found.push(...(await lostInForcedColours(page)).map((each) => `forced, ${colorScheme}: ${each}`))
  }
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' })
  found.push(...(await unreachable(page)))
  for (const { width, text } of SIZES) {
    await page.setViewportSize({ width, height: 844 })
    await page.evaluate(`document.documentElement.style.fontSize = '${text}'`)
    found.push(...(await unreadable(page)).map((each) => `${width} px, ${text}: ${each}`))
  }
  return found
}

test('a page that nobody gave an address is missed', () => {
  expect(() => everyPage(there, [...pageRoutes(), '/new/[page]'])).toThrow('no address in tests/support/page-places.ts')
  expect(pageRoutes().length).toBeGreaterThan(70)
})

describe('everybody reads, hears and goes through', () => {
  test.each(pageRoutes())('%s', LONG, async (route) => {
    const found: string[] = []
    let page: Page | undefined
    let who: Who | undefined
    for (const shown of pages.filter((each) => each.route === route)) {
      if (!page || who !== shown.who) page = await open(shown.who)
      who = shown.who
      const faults = await faultsOf(page, shown)
      found.push(
        ...faults.map((each) => `${shown.who}, ${shown.path.slice(0, 90)}${shown.deed ? ', after' : ''}: ${each}`),
      )
    }
    // The first of them are enough to begin with.
    expect(found.slice(0, 12)).toEqual([])
  })
})
