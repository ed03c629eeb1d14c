import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import axe from 'axe-core'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest'
import { ROOT } from '@/lib/cli/root.mjs'
import { findChromium } from './chromium.mjs'

export const PHONE = 390
export const DESKTOP = 1280

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

export interface PageOptions {
  /** Window width in CSS pixels; default `DESKTOP`. A phone's height goes with a phone's width. */
  width?: number
  dark?: boolean
  javaScript?: boolean
  /** Address that relative paths are taken from; default the app that all browser tests share. */
  baseURL?: string
}

/** `SLOW=8` makes every page that many times slower, to find what a quick machine gets right by luck only. */
const SLOW = Number(process.env.SLOW ?? 1)
const { DAYS_ON } = process.env

let browser: Browser
let contexts: BrowserContext[] = []
const profiles = new WeakMap<BrowserContext, BrowserContextOptions>()
let problems: string[] = []
let expected: RegExp[] = []

/**
 * Opens a page in a browser profile of its own, closed after the test. The test fails on any error in the browser's
 * console, any uncaught exception and any refusal by the page's own security policy, unless it was expected.
 */
export async function newPage(options: PageOptions = {}): Promise<Page> {
  const width = options.width ?? DESKTOP
  const profile: BrowserContextOptions = {
    viewport: { width, height: width < 700 ? 844 : 900 },
    colorScheme: options.dark ? 'dark' : 'light',
    javaScriptEnabled: options.javaScript ?? true,
    baseURL: options.baseURL ?? inject('appAddress'),
  }
  const context = await browser.newContext(profile)
  contexts.push(context)
  profiles.set(context, profile)
  context.on('page', (page) => {
    page.on('crash', crashed)
    page.on('pageerror', (error) => problems.push(`uncaught: ${error.stack ?? error.message}`))
    page.on('console', (message) => {
      // Chromium reports a refused script or style as an error as well; some of its policy notes are only warnings.
      if (message.type() === 'error' || /Content Security Policy/i.test(message.text())) {
        problems.push(`${message.text()} (${message.location().url})`)
      }
    })
  })
  if (DAYS_ON) {
    await context.addInitScript(`globalThis.daysOn = ${Number(DAYS_ON)}`)
    await context.addInitScript({ path: join(ROOT, 'tests/support/days-on.cjs') })
  }
  const page = await context.newPage()
  if (SLOW > 1) {
    context.setDefaultTimeout(30_000 * SLOW)
    const session = await context.newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW })
  }
  return page
}

// The browser's own process ended, as it does once in about a thousand pages: by these words vitest.config.ts tries anew.
const crashed = () => problems.push('the browser’s own page crashed')

/** What a browser says when the network is cut is no fault of the page. */
export const OFFLINE = /ERR_INTERNET_DISCONNECTED|Failed to load resource/

/** Lets a matching problem of this test pass, such as the 404 that it asks for. */
export function expectBrowserProblem(pattern: RegExp): void {
  expected.push(pattern)
}

/** What axe finds on the page as it stands, one line each; an empty list is a clean page. */
export async function axeFindings(shown: Page): Promise<string[]> {
  const page = profiles.get(shown.context())?.javaScriptEnabled === false ? await scriptedCopy(shown) : shown
  // Whether or not its title came with its heading: a page that another led to may get it a moment later.
  await until(page, "document.title !== ''")
  const session = await page.context().newCDPSession(page)
  // By the debugger's own line, which the page's policy does not bind: the policy stays as visitors have it.
  await session.send('Runtime.evaluate', { expression: axe.source })
  const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
    expression:
      "axe.run(document, { preload: false, resultTypes: ['violations'] }).then(r => JSON.stringify(r.violations))",
    awaitPromise: true,
  })
  await session.detach()
  if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text)
  const violations: axe.Result[] = JSON.parse(result.value)
  return violations.flatMap((found) =>
    found.nodes.map((node) => `${found.id}: ${node.target} — ${node.failureSummary}`),
  )
}

// axe is a script itself, so a page without scripts is judged by a copy of its markup with its own scripts taken out.
async function scriptedCopy(page: Page): Promise<Page> {
  const context = await browser.newContext({ ...profiles.get(page.context()), javaScriptEnabled: true })
  contexts.push(context)
  const body = (await page.content()).replace(/<script\b[\s\S]*?<\/script>/g, '').replace(/<\/?noscript[^>]*>/g, '')
  const copy = await context.newPage()
  copy.on('crash', crashed)
  await copy.route(page.url(), (route) => route.fulfill({ body, contentType: 'text/html; charset=utf-8' }))
  await copy.goto(page.url())
  return copy
}

/** Waits until an expression is true in the page. (A wait inside the page evaluates text there, which the security policy forbids.) */
export async function until(page: Page, expression: string): Promise<void> {
  // A page that is just leaving answers nothing; one that never answers fails with why.
  await expect.poll(() => page.evaluate(expression).catch((fault: Error) => fault.message)).toBe(true)
}

/** Writes `tests/browser/shots/<name>.png`, the whole page, for looking at; the folder is not kept. Gives the path. */
export async function screenshot(page: Page, name: string): Promise<string> {
  const folder = join(ROOT, 'tests/browser/shots')
  mkdirSync(folder, { recursive: true })
  const path = join(folder, `${name}.png`)
  await page.screenshot({ path, fullPage: true })
  return path
}

beforeAll(async () => {
  const executablePath = findChromium()
  if (!executablePath) throw new Error('no chromium: `npm test` installs one or says how')
  browser = await chromium.launch({ executablePath, headless: true, args: FLAGS })
})

afterEach(async () => {
  await Promise.all(contexts.map((context) => context.close()))
  const surplus = problems.filter((problem) => !expected.some((pattern) => pattern.test(problem)))
  contexts = []
  problems = []
  expected = []
  if (surplus.length > 0) throw new Error(`the browser reported:\n${surplus.join('\n')}`)
})

afterAll(() => browser?.close())
