import { afterAll, beforeAll, expect, test } from 'vitest'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, DESKTOP, expectBrowserProblem, newPage, PHONE, screenshot } from '../support/browser'
import { larkspur } from '../support/larkspur'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

let app: RunningApp
let leave: () => Promise<void>

beforeAll(async () => {
  app = await startApp()
  leave = besideApp(app)
}, 600_000)

afterAll(async () => {
  await leave?.()
  await app?.stop()
})

const file = (text: string | Buffer, name = 'homes.json') => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
})
const good = () => JSON.stringify(larkspur())
const NAME = larkspur().households[0]?.name ?? ''

for (const javaScript of [true, false])
  test(`a chosen file shows what is due, why, and the year; JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
    const page = await newPage({ width: PHONE, javaScript })
    await page.goto('/bring')
    await page.getByLabel('Choose a file').setInputFiles(file(good()))
    await page.getByRole('button', { name: 'Show what is due' }).click()
    await page.getByRole('heading', { level: 1, name: NAME }).waitFor()
    expect(await page.getByText('Change the filter').count()).toBeGreaterThan(0)
    expect(await page.getByText('How it is reckoned').count()).toBe(1)
    expect(await page.locator('figure.year').count()).toBe(1)
    expect(await page.getByText('Nothing of this is stored').count()).toBe(1)
    expect(await axeFindings(page)).toEqual([])
    await screenshot(page, `brought-${javaScript}`)
  })

test('a pasted file with several faults names them all with their places, and keeps what was pasted', async () => {
  const page = await newPage()
  await page.goto('/bring')
  const broken = { ...larkspur().households[0], people: -1, colour: 'red' }
  const text = JSON.stringify({ plenum: 1, households: [broken] })
  await page.getByLabel('Or paste').fill(text)
  await page.getByRole('button', { name: 'Show what is due' }).click()
  const faults = page.getByRole('alert').first()
  await faults.getByText('households[0].people').waitFor()
  expect(await faults.getByText('households[0].colour').count()).toBe(1)
  expect(await page.getByLabel('Or paste').inputValue()).toBe(text)
  expect(await axeFindings(page)).toEqual([])
})

test('nothing, ten megabytes and another kind of file are each refused in plain words', async () => {
  const page = await newPage()
  await page.goto('/bring')
  await page.getByRole('button', { name: 'Show what is due' }).click()
  await page.getByText('Choose a file, or paste what stands in one.').waitFor()
  await page.getByLabel('Choose a file').setInputFiles(file(Buffer.alloc(10_000_000, ' ')))
  await page.getByRole('button', { name: 'Show what is due' }).click()
  await page.getByText(/larger than 9 MB.*account -- bring/).waitFor()
  await page.getByLabel('Choose a file').setInputFiles(file(Buffer.alloc(13_000_000, ' ')))
  await page.getByRole('button', { name: 'Show what is due' }).click()
  await page.getByText(/larger than 11 MB.*account -- bring/).waitFor()
  await page.getByLabel('Choose a file').setInputFiles(file(Buffer.from([0xff, 0xfe, 0x7b, 0x00]), 'wide.json'))
  await page.getByRole('button', { name: 'Show what is due' }).click()
  await page.getByText(/UTF-16/).waitFor()
})

for (const dark of [false, true])
  test(`a file that is held over the place to drop it is seen to be, and dropped it is taken${dark ? ', dark' : ''}`, async () => {
    const page = await newPage({ width: PHONE, dark })
    await page.goto('/bring')
    const place = page.locator('.drop')
    const dataTransfer = await page.evaluateHandle(() => {
      const held = new DataTransfer()
      held.items.add(new File(['{}'], 'homes.json', { type: 'application/json' }))
      return held
    })
    const frame = () => place.evaluate((shown) => getComputedStyle(shown).outline)
    const before = await frame()
    expect(before).not.toContain('solid')
    // Nothing hears of it before the scripts have come.
    await expect
      .poll(() => place.dispatchEvent('dragover', { dataTransfer }).then(frame))
      .toMatch(dark ? /rgb\(232, 239, 243\) solid 4px/ : /rgb\(21, 33, 43\) solid 4px/)
    expect(await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth')).toBe(0)
    await screenshot(page, `drop-${dark}`)
    await place.dispatchEvent('drop', { dataTransfer })
    await expect.poll(frame).toBe(before)
    expect(await page.locator('#file').evaluate((field: HTMLInputElement) => field.files?.[0]?.name)).toBe('homes.json')
  })

for (const width of [PHONE, DESKTOP])
  for (const dark of [false, true])
    test(`every sample home is clean, ${width}${dark ? ' dark' : ''}`, async () => {
      const page = await newPage({ width, dark })
      await page.goto('/sample')
      expect(await axeFindings(page)).toEqual([])
      const homes = await page
        .locator('main li a')
        .evaluateAll((links) => links.map((a) => a.getAttribute('href') ?? ''))
      expect(homes.length).toBe(3)
      for (const home of homes) {
        await page.goto(home)
        expect(await axeFindings(page), home).toEqual([])
        const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
        expect(await page.evaluate(overflow), home).toBe(0)
        await screenshot(page, `sample-${home.split('/').at(-1)}-${width}${dark ? '-dark' : ''}`)
      }
    })

test('a sample home that does not exist is a plain 404', async () => {
  expectBrowserProblem(/404/)
  const page = await newPage()
  expect((await page.goto('/sample/nowhere'))?.status()).toBe(404)
})

test('the file that is written for a sample can be brought again', async () => {
  const page = await newPage()
  await page.goto('/bring')
  const { sampleFile } = await import('@/content/sample')
  const text = writeHouseholdFile(sampleFile('2026-11-25').households)
  await page.getByLabel('Or paste').fill(text)
  await page.getByRole('button', { name: 'Show what is due' }).click()
  await page.getByText('Nothing of this is stored').waitFor()
  expect(await page.getByRole('heading', { level: 1 }).count()).toBe(3)
})

for (const javaScript of [true, false])
  test(`whoever is signed in hears of every fault, mends and keeps; JavaScript ${javaScript ? 'on' : 'off'}`, async () => {
    const name = `bringer-${javaScript}`
    await anAccount(name)
    const page = await newPage({ javaScript, baseURL: app.address })
    await signInOn(page, app.address, name)
    await page.goto('/bring')
    const broken = JSON.stringify({ ...larkspur(), households: [{ ...larkspur().households[0], people: -1 }] })
    await page.getByLabel('Or paste').fill(broken)
    // With scripts a file can be kept at once, without them after it was shown.
    const first = javaScript ? 'Keep it in my account' : 'Show what is due'
    await page.getByRole('button', { name: first }).click()
    await page.getByRole('alert').getByText('households[0].people').waitFor()
    expect(await page.getByLabel('Or paste').inputValue()).toBe(broken)
    await page.getByLabel('Or paste').fill(JSON.stringify({ ...larkspur(), households: [larkspur().households[0]] }))
    await page.getByRole('button', { name: first }).click()
    if (!javaScript) await page.getByRole('button', { name: 'Keep it in my account' }).click()
    await page.waitForURL(/\/home\//)
    await page.getByRole('heading', { level: 1, name: NAME }).waitFor()
  })
