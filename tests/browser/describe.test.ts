import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, DESKTOP, newPage, type PageOptions, PHONE, screenshot } from '../support/browser'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

let app: RunningApp
let leave: () => Promise<void>

beforeAll(async () => {
  app = await startApp({ env: { PLENUM_NOW: '2026-11-25T18:00:00Z' } })
  leave = besideApp(app)
}, 600_000)

afterAll(async () => {
  await leave?.()
  await app?.stop()
})

let people = 0

/** A page of somebody who has just signed in, with the homes given. */
async function somebody(options: PageOptions = {}, homes: Parameters<typeof anAccount>[1] = []) {
  const name = `person-${++people}`
  const ids = await anAccount(name, homes)
  const page = await newPage({ ...options, baseURL: app.address })
  await signInOn(page, app.address, name)
  return { page, name, ids }
}

const next = (page: Page) => page.getByRole('button', { name: 'Next', exact: true }).last().click()

async function isClean(page: Page, name: string) {
  expect(await axeFindings(page), name).toEqual([])
  const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
  expect(await page.evaluate(overflow).catch(() => 0), `${name}: nothing to scroll sideways`).toBe(0)
  await screenshot(page, name)
}

async function screen(page: Page, heading: string) {
  await page.getByRole('heading', { level: 1, name: heading }).waitFor()
}

/** From the first screen to the last, as somebody would who knows the usual things and no more. */
async function walk(page: Page, each: (name: string) => Promise<void> = async () => {}): Promise<number> {
  await page.goto('/describe')
  await screen(page, 'The home, and its weather')
  await page.getByLabel('What do you call this home?').fill('Larkspur Lane 9')
  await page.getByLabel('I own it and live there').check()
  await page.getByLabel('Which of these has weather most like yours?').selectOption('Minneapolis, Minnesota')
  await each('home')
  await next(page)
  await screen(page, 'Who lives there')
  await page.getByLabel('How many people live there?').fill('4')
  await page.getByLabel('How many pets with fur?').fill('2')
  await page.getByRole('group', { name: 'Could cold or heat harm' }).getByLabel('No', { exact: true }).check()
  await each('people')
  await next(page)
  await screen(page, 'What heats and cools it')
  await page.getByLabel('Warm air blows from grilles').check()
  await page.getByLabel('Natural gas').check()
  await page.getByLabel('Central cooling, through the same grilles').check()
  await page.locator('#heat-service-ago').fill('14')
  await each('system')
  await next(page)
  await screen(page, 'Its filter')
  await page.getByLabel('Behind a large grille in a wall').check()
  await page.locator('#changed-ago').fill('6')
  await page.getByLabel('I measured the filter').check()
  await page.getByLabel('Width').fill('15½')
  await page.getByLabel('Height').fill('24½')
  await page.getByLabel('Thickness').fill('¾')
  await page.getByRole('group', { name: 'What is it made of?' }).getByLabel('Pleated', { exact: false }).first().check()
  await each('filter')
  await next(page)
  await screen(page, 'Alarms and small devices')
  await page.locator('#alarm-0-made').fill('2019-03-01')
  await each('devices')
  await next(page)
  await screen(page, 'Is this your home?')
  await each('check')
  return 6
}

for (const javaScript of [true, false])
  test(`a person comes from the first screen to a dated plan, JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
    const { page } = await somebody({ width: PHONE, javaScript })
    const began = Date.now()
    const screens = await walk(page)
    expect(screens).toBeLessThanOrEqual(8)
    expect(await page.getByText('16 × 25 × 1').count()).toBeGreaterThan(0)
    expect(await page.getByText('MERV 8 is assumed').count(), 'what is not known is named').toBe(1)
    expect(await page.getByText('hard is assumed').count()).toBe(1)
    await page.getByRole('button', { name: 'Save, and show what is due' }).click()
    await page.waitForURL(/\/home\/[a-z0-9]+$/)
    await page
      .getByRole('heading', { name: /Change the filter/ })
      .first()
      .waitFor()
    const text = await page.locator('main').textContent()
    expect(text).toContain('16 × 25 × 1')
    console.log(
      `described on ${screens} screens in ${((Date.now() - began) / 1000).toFixed(1)} s, JavaScript ${javaScript}`,
    )
    await page.goto('/describe')
    await screen(page, 'The home, and its weather')
    expect(await page.getByLabel('What do you call this home?').inputValue(), 'the draft is gone').toBe('')
  })

for (const width of [PHONE, DESKTOP])
  for (const dark of [false, true])
    test(`every screen is clean, ${width}${dark ? ' dark' : ''}`, async () => {
      const { page } = await somebody({ width, dark })
      await walk(page, (name) => isClean(page, `describe-${name}-${width}${dark ? '-dark' : ''}`))
    }, 180_000)

for (const javaScript of [true, false])
  test(`every fault is said at once and nothing typed is lost, JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
    const { page } = await somebody({ javaScript })
    await page.goto('/describe/home')
    await page.getByLabel('I rent it').check()
    await next(page)
    const faults = page.getByRole('alert').filter({ hasText: 'to put right' })
    await faults.getByText('Give the home a name').waitFor()
    expect(await faults.getByRole('listitem').count()).toBe(3)
    expect(await page.getByLabel('I rent it').isChecked()).toBe(true)
    await isClean(page, `describe-faults-${javaScript}`)
  })

test('a description is left and taken up again, in another browser, with what was typed', async () => {
  const { page, name } = await somebody({ javaScript: false })
  await page.goto('/describe/home')
  await page.getByLabel('What do you call this home?').fill('Half a home')
  await page.getByLabel('I let it to others').check()
  await page.getByLabel('Which of these has weather most like yours?').selectOption('Denver, Colorado')
  await next(page)
  await page.getByLabel('How many people live there?').fill('seven')
  await page.getByRole('button', { name: 'Keep this and leave for now' }).click()
  await page.waitForURL(/\/$|\/homes?$/)
  const other = await newPage({ baseURL: app.address })
  await signInOn(other, app.address, name)
  await other.goto('/describe')
  await screen(other, 'You have begun to describe “Half a home”')
  await isClean(other, 'describe-begun')
  await other.getByRole('link', { name: 'Go on where I was' }).click()
  await screen(other, 'Who lives there')
  expect(await other.getByLabel('How many people live there?').inputValue()).toBe('seven')
  await other.getByRole('button', { name: 'Back' }).click()
  await screen(other, 'The home, and its weather')
  expect(await other.getByLabel('What do you call this home?').inputValue()).toBe('Half a home')
})

test('the size helper names what was measured, and says what is missing', async () => {
  const { page } = await somebody()
  await page.goto('/describe')
  await walk(page)
  await page.goto('/describe/filter-1-1')
  await page.getByRole('button', { name: 'Work out the size' }).click()
  await page.getByText('is its name in a shop').waitFor()
  expect(await page.getByRole('status').textContent()).toContain('16 × 25 × 1')
  await page.getByLabel('Width').fill('')
  await page.getByRole('button', { name: 'Work out the size' }).click()
  await page.getByRole('alert').getByText('Write the width').waitFor()
})

for (const javaScript of [true, false])
  test(`a change shows what it does to the dates before it is saved, JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
    const { page, ids } = await somebody({ javaScript, width: PHONE }, [aHousehold()])
    const details = `/home/${ids[0]}/details`
    await page.goto(details)
    await page.getByRole('link', { name: /Change: Filter/ }).click()
    await page.getByLabel('MERV rating').waitFor()
    await page.getByLabel('Thickness').fill('4')
    await page.getByRole('button', { name: 'Show what it changes' }).last().click()
    await page.getByRole('heading', { name: 'What it does to the dates' }).waitFor()
    expect(await page.locator('.changes').textContent()).toMatch(
      /Change the filter, wall grille: \d+ \w+( \d{4})? → \d+ \w+ \d{4}/,
    )
    await isClean(page, `details-preview-${javaScript}`)
    await page.getByRole('button', { name: 'Change it again' }).click()
    await page.getByLabel('Thickness').waitFor()
    expect(await page.getByLabel('Thickness').inputValue()).toBe('4')
    await page.getByRole('button', { name: 'Show what it changes' }).last().click()
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await page.getByText('Saved.').waitFor()
    expect(await page.locator('main').textContent()).toContain('16 × 25 × 4')
  })

test('of two who change one home at once neither loses anything', async () => {
  const { page, name, ids } = await somebody({}, [aHousehold()])
  const other = await newPage({ baseURL: app.address })
  await signInOn(other, app.address, name)
  const details = `/home/${ids[0]}/details`
  await page.goto(`${details}/people`)
  await other.goto(`${details}/filters/hall`)
  await page.getByLabel('How many pets with fur?').fill('3')
  await page.getByRole('button', { name: 'Show what it changes' }).last().click()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved.').waitFor()
  await other.getByLabel('Time limit printed on it').fill('60')
  await other.getByRole('button', { name: 'Show what it changes' }).last().click()
  await other.getByRole('button', { name: 'Save', exact: true }).click()
  await other.getByText('Somebody else changed this home meanwhile').waitFor()
  await isClean(other, 'details-conflict')
  await other.getByRole('button', { name: 'Save', exact: true }).click()
  await other.getByText('Saved.').waitFor()
  const text = await other.locator('main').textContent()
  expect(text).toContain('3 pets')
  expect(text).toContain('60 days at most')
})

test('a filter and a system are added and taken out, with what becomes of their records', async () => {
  const { page, ids } = await somebody({}, [aHousehold()])
  const details = `/home/${ids[0]}/details`
  await page.goto(`${details}/systems/new`)
  await page.getByLabel('Units high on the wall that blow').check()
  await page.getByLabel('The heat pump, or the units on the wall').check()
  await page.getByRole('button', { name: 'Show what it changes' }).last().click()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved.').waitFor()
  expect(await page.locator('main').textContent()).toContain('Ductless units')
  await page.goto(`${details}/filters/hall`)
  await page.getByRole('button', { name: 'Take it out' }).click()
  await page.getByText('1 record about it stays in the log').waitFor()
  await page.getByRole('button', { name: 'Take it out' }).click()
  await page.getByText('Saved.').waitFor()
  expect(await page.getByText('Filter, wall grille').count()).toBe(0)
})

test('dusty times, a bill and whom to call are entered', async () => {
  const { page, ids } = await somebody({ width: PHONE }, [aHousehold()])
  const details = `/home/${ids[0]}/details`
  await page.goto(details)
  await page.getByRole('link', { name: 'Something happened: smoke, building work, a heat wave' }).click()
  await page.getByLabel('Wildfire smoke').check()
  await page.locator('#from').fill('2026-11-01')
  await page.locator('#to').fill('2026-11-10')
  await isClean(page, 'details-happened')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved.').waitFor()
  await page.goto(details)
  await page.getByText('Wildfire smoke, 1 November 2026').waitFor()
  await page.getByRole('link', { name: 'Measured hours: a thermostat, an hour meter, bills' }).click()
  await page.getByRole('link', { name: 'Bills for gas, oil, propane or electric heat' }).click()
  await page.locator('#from-0').fill('2026-09-01')
  await page.locator('#to-0').fill('2026-09-30')
  await page.getByLabel('The bills count in').selectOption('hundred cubic feet (CCF)')
  await page.locator('#amount-0').fill('52')
  await page.locator('#base-0').fill('20')
  await page.getByRole('button', { name: 'Show what it comes to' }).click()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('a bill of 53.9 therms, 20.7 of them not for heating').waitFor()
  await page.goto(details)
  await page.getByText('2 readings, the last up to 31 October 2026.').waitFor()
  await page.goto(`${details}/contacts`)
  await page.locator('#gas-company-phone').fill('call them')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByRole('alert').getByText('in digits').waitFor()
  expect(await page.locator('#gas-company-phone').inputValue()).toBe('call them')
  await page.locator('#gas-company-phone').fill('555 0134')
  await page.getByLabel('Where the filter is: wall grille').fill('behind the coats')
  await isClean(page, 'details-contacts')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Gas company: 555 0134').waitFor()
  await isClean(page, 'details')
})
