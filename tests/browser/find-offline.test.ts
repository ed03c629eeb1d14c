import { afterAll, beforeAll, expect, test } from 'vitest'
import { aHomeInTheApp, signInBrowser } from '../support/a-home-in-the-app'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, expectBrowserProblem, newPage, PHONE, until } from '../support/browser'

let app: RunningApp
beforeAll(async () => {
  app = await startApp()
}, 60_000)
afterAll(() => app?.stop())

/** Waits until the worker has kept what it keeps, and gives the kept text of a page. */
const KEPT = `(async () => {
  await navigator.serviceWorker.ready
  for (;;) {
    const found = await caches.match('/find/kept')
    if (found) return (await caches.match('/find')).text()
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
})()`

test('after one visit of the first page the finder opens cold, with the server gone', async () => {
  const there = await aHomeInTheApp(app)
  const first = await newPage({ width: PHONE, baseURL: app.address })
  await signInBrowser(first.context(), app, there.cookies)
  await first.goto('/')
  const kept = await first.evaluate<string>(KEPT)
  expect(kept).toContain('First: is it safe to look?')
  expect(kept, 'fetched without the visitor’s cookie').not.toContain('Sign out')

  // Everything that ran is ended, the worker too, and nobody answers any more.
  const session = await first.context().newCDPSession(first)
  await session.send('ServiceWorker.enable')
  await session.send('ServiceWorker.stopAllWorkers')
  const context = first.context()
  await app.stop()
  await first.close()
  expectBrowserProblem(/ERR_CONNECTION_REFUSED/)

  const page = await context.newPage()
  await page.goto('/find')
  expect(await page.locator('h1').textContent()).toBe('First: is it safe to look?')
  await page.getByRole('link', { name: 'No, none of these', exact: true }).click()
  await page.waitForURL(/a=no/)
  await page.getByRole('link', { name: 'No, or I have not seen the unit', exact: true }).click()
  await page.getByRole('link', { name: 'I rent it', exact: true }).waitFor()
  expect(await axeFindings(page)).toEqual([])

  // A saved link of its middle, opened cold too.
  const now = Math.floor(Date.now() / 60_000)
  await page.goto(`/find?a=no.no.own&t=${now}`)
  await until(page, "document.querySelector('h1')?.textContent !== 'First: is it safe to look?'")
  await page.goto('/find/light')
  expect(await page.locator('h1').textContent()).toBe('How much light comes through?')
  await page.goto('/find/kept')
  expect(await page.locator('h1').textContent()).toBe('Cards kept on this phone')
})
