import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { FLOWS } from '@/content/guide/flows'
import { type RunningApp, startApp } from '../support/app'
import { newPage, PHONE } from '../support/browser'
import { walkByTaps } from '../support/guide-walker'

// One house, four clocks: a wait is over where the clock is later. A browser's cookies are for a host, whatever its port.
const CLOCKS = ['18:00', '18:10', '18:20', '18:30'].map((time) => `2026-11-25T${time}:00Z`)
let folder = ''
let apps: RunningApp[] = []

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plenum-walks-'))
  for (const at of CLOCKS) apps.push(await startApp({ folder, env: { PLENUM_NOW: at } }))
}, 120_000)

afterAll(async () => {
  await Promise.all(apps.map((app) => app.stop()))
  apps = []
  await rm(folder, { recursive: true, force: true })
})

const minute = (i: number) => Date.parse(CLOCKS[i] ?? '') / 60_000

for (const javaScript of [true, false])
  for (const flow of FLOWS)
    test(`${flow.title}: walked by tapping, JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
      const page = await newPage({ width: PHONE, javaScript, baseURL: apps[0]?.address ?? '' })
      let clock = 0
      const walked = await walkByTaps(page, {
        title: flow.title,
        now: () => minute(clock),
        wait: async () => {
          expect(await page.locator('.wait-left').count()).toBe(1)
          clock++
          const { pathname, search } = new URL(page.url())
          await page.goto(`${apps[clock]?.address}${pathname}${search}`)
          expect(await page.locator('.wait-left').count()).toBe(0)
        },
      })
      const last = flow.nodes.find(({ id }) => id === walked.nodes.at(-1))
      expect(last?.kind).toBe('outcome')
      expect(last?.severity).toBeLessThan(3)
      const actions = walked.nodes.filter((id) => flow.nodes.find((node) => node.id === id)?.kind === 'check')
      expect(actions.length).toBeLessThanOrEqual(6)
      console.info(`${flow.id}: ${walked.taps} taps, ${actions.length} checks, ends at ${walked.nodes.at(-1)}`)
      // Back works: the screen before the end is there again, from its address alone.
      await page.getByRole('link', { name: 'Back one answer' }).click()
      await page.locator('main h1').first().waitFor()
    })
