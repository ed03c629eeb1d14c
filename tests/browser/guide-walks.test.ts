import { afterAll, expect, test } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { type RunningApp, startApp } from '../support/app'
import { newPage, PHONE } from '../support/browser'
import { walkByTaps } from '../support/guide-walker'

// A wait is over where the clock is later: another app, some minutes on. A browser's cookies are for a host, whatever
// its port, and nobody is signed in, so that the phone brings its memory along.
const later: { at: number; app: Promise<RunningApp> }[] = []

afterAll(async () => {
  await Promise.all(later.map(async ({ app }) => (await app).stop()))
})

/** The app in which `waits` waits have gone by; ten minutes each, and before fifteen the hazards would come again. */
function afterWaits(waits: number): { at: number; app: Promise<RunningApp> } {
  const at = Date.now() + waits * 12.5 * 60_000
  const found = later[waits - 1] ?? { at, app: startApp({ env: { PLENUM_NOW: new Date(at).toISOString() } }) }
  later[waits - 1] = found
  return found
}

for (const javaScript of [true, false])
  test(`every flow is walked by tapping on a phone, JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
    const page = await newPage({ width: PHONE, javaScript })
    const passed = new Set<string>()
    const walks: string[] = []
    for (const flow of FLOWS) {
      await page.context().clearCookies()
      let waits = 0
      const walked = await walkByTaps(page, {
        flow,
        passed,
        now: () => Math.floor((waits === 0 ? Date.now() : afterWaits(waits).at) / 60_000),
        wait: async () => {
          expect(await page.locator('.wait-left').count(), flow.id).toBe(1)
          waits++
          const { pathname, search } = new URL(page.url())
          await page.goto(`${(await afterWaits(waits).app).address}${pathname}${search}`)
          expect(await page.locator('.wait-left').count(), flow.id).toBe(0)
        },
      })
      const last = flow.nodes.find(({ id }) => id === walked.nodes.at(-1))
      expect(last?.kind, flow.id).toBe('outcome')
      expect(last?.severity, flow.id).toBeLessThan(3)
      const actions = walked.nodes.filter((id) => flow.nodes.find((node) => node.id === id)?.kind === 'check')
      expect(actions.length, flow.id).toBeLessThanOrEqual(6)
      walks.push(`${flow.id}: ${walked.taps} taps, ${actions.length} checks, ends at ${walked.nodes.at(-1)}`)
      // Back works: the screen before the end is there again, from its address alone.
      await page.getByRole('link', { name: 'Back one answer' }).click()
      await page.locator('.flow-name').waitFor()
    }
    console.info(walks.join('\n'))
  })
