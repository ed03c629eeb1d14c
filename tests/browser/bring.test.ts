import { expect, test } from 'vitest'
import { writeHouseholdFile } from '@/lib/forms/household-file'
import { axeFindings, DESKTOP, expectBrowserProblem, newPage, PHONE, screenshot } from '../support/browser'
import { larkspur } from '../support/larkspur'

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
  await page.getByText('larger than 9 MB').waitFor()
  await page.getByLabel('Choose a file').setInputFiles(file(Buffer.from([0xff, 0xfe, 0x7b, 0x00]), 'wide.json'))
  await page.getByRole('button', { name: 'Show what is due' }).click()
  await page.getByText(/UTF-16/).waitFor()
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
