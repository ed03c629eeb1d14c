import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { getFlow } from '@/content/guide/flows'
import { encodeWalk, type Walk } from '@/lib/guide/address'
import { guideFacts } from '@/lib/guide/household-facts'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, newPage, PHONE, screenshot } from '../support/browser'
import { walksToAll } from '../support/guide-reach'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

// One story in its order: a home that counts in °C, on a phone, with and without scripts.
const LONG = { timeout: 240_000 }
const NOW = '2026-11-25T18:00:00Z'
const HOME = aHousehold({ units: 'metric', readings: [] })
let app: RunningApp
let restore: () => Promise<void>
let home = ''

beforeAll(async () => {
  app = await startApp({ env: { PLENUM_NOW: NOW } })
  restore = besideApp(app)
  ;[home = ''] = await anAccount('ann', [HOME])
}, 240_000)
afterAll(async () => {
  await restore?.()
  await app?.stop()
})

async function signedIn(options: { javaScript: boolean; dark?: boolean }): Promise<Page> {
  const page = await newPage({ width: PHONE, ...options, baseURL: app.address })
  await page.clock.setFixedTime(NOW)
  await signInOn(page, app.address, 'ann')
  return page
}

test('a plate in kilowatts is typed as it stands there, and kept in Btu/h', LONG, async () => {
  for (const [javaScript, typed, kept] of [
    [false, '23 kW', '78,479'],
    [true, '24 kW', '81,891'],
  ] as const) {
    const page = await signedIn({ javaScript })
    await page.goto(`/home/${home}/details/systems/main`)
    await page.getByText('Name and ratings, if you have them at hand').click()
    const input = page.getByLabel('Heating input, Btu/h')
    // A keyboard of numbers alone could not write it.
    expect(await input.getAttribute('inputmode')).toBe('text')
    const show = () => page.locator('button.main', { hasText: 'Show what it changes' }).click()
    await input.fill('118 kW')
    await show()
    await page.getByText('Write a number between 3 and 117 (kW), not 118.').first().waitFor()
    expect(await input.inputValue()).toBe('118 kW')
    await input.fill(typed)
    await screenshot(page, `metric-plate-${javaScript}`)
    await show()
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await page.getByText(`${kept} Btu/h in`).waitFor()
  }
})

test('bills count in cubic metres first, with the heat of one in MJ, and are told in gigajoules', LONG, async () => {
  const page = await signedIn({ javaScript: true, dark: true })
  await page.goto(`/home/${home}/measured/bills`)
  const unit = page.getByLabel('The bills count in')
  expect(await unit.inputValue()).toBe('m3')
  await page.getByLabel('Heat in a cubic metre of gas, MJ').fill('38.6')
  for (const [i, [from, to, amount]] of [
    ['2026-01-05', '2026-02-04', '300'],
    ['2026-07-05', '2026-08-03', '30'],
  ].entries()) {
    await page.locator(`#from-${i}`).fill(from as string)
    await page.locator(`#to-${i}`).fill(to as string)
    await page.locator(`#amount-${i}`).fill(amount as string)
  }
  await page.getByRole('button', { name: 'Show what it comes to' }).click()
  await page.getByText('1.00 cubic metres a day').first().waitFor()
  await screenshot(page, 'metric-bills')
  expect(await axeFindings(page)).toEqual([])
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  // 300 and 31 cubic metres of 38.6 MJ.
  await page.getByText('a bill of 11.6 GJ, 1.20 of them not for heating').waitFor()
  await screenshot(page, 'metric-bill-kept')
})

test('the guide asks how warm the room is in °C, and the brief says it in both', LONG, async () => {
  const minute = Math.floor(Date.parse(NOW) / 60_000)
  const walk = walksToAll(getFlow('no-heat'), guideFacts(HOME, null, null), minute).get('still-cold') as Walk
  for (const javaScript of [false, true]) {
    const page = await signedIn({ javaScript })
    await page.goto(`/home/${home}/check/no-heat${encodeWalk(walk)}`)
    await page.getByLabel('How warm is the room, in °C?').fill('14')
    await screenshot(page, `metric-room-${javaScript}`)
    await page.locator('form', { hasText: 'How warm is the room' }).getByRole('button').click()
    await page.getByText('Room temperature: 14 °C (57.2 °F)').waitFor()
    await screenshot(page, `metric-brief-${javaScript}`)
  }
})
