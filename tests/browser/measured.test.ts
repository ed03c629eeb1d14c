import { existsSync, mkdtempSync, readdirSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { getHousehold } from '@/lib/data/households'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { inApp } from '../support/app-data'
import { axeFindings, DESKTOP, newPage, type PageOptions, PHONE, screenshot } from '../support/browser'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

// One story in its order: a person with a thermostat's report, bills, and a smoky week.
const LONG = { timeout: 240_000 }
let app: RunningApp
let restore: () => Promise<void>
let home = ''
const files = mkdtempSync(join(tmpdir(), 'plenum-exports-'))
const file = (name: string) => join(files, name)

/** January to November 2026, a row each half hour: heating in the cold months, cooling in summer. */
function report(heatSeconds = 400): string {
  const rows = ['Report of the hall', '', 'When;Room °F;Heating (sec);Cooling (sec);Blower (sec)']
  for (let at = Date.UTC(2026, 0, 1, 6); at < Date.UTC(2026, 10, 20, 6); at += 1_800_000) {
    const day = new Date(at)
    const month = day.getUTCMonth()
    const heat = month < 4 || month > 8 ? heatSeconds : 0
    const cool = month > 4 && month < 8 ? 500 : 0
    const stamp = day.toISOString().slice(0, 16).replace('T', ' ')
    rows.push([stamp, '70,5', heat, cool, Math.round(1.07 * heat) + cool].join(';'))
  }
  return rows.join('\r\n')
}

beforeAll(async () => {
  app = await startApp({ env: { PLENUM_NOW: '2026-11-25T18:00:00Z' } })
  restore = besideApp(app)
  ;[home = ''] = await anAccount('ann', [aHousehold({ readings: [], dustEvents: [] })])
  writeFileSync(file('report.csv'), Buffer.from(`\uFEFF${report()}`, 'utf16le'))
  writeFileSync(file('again.csv'), report(500))
  writeFileSync(file('binary.csv'), Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 37) % 256)))
  writeFileSync(file('thirty.csv'), 'Day,Heating (hours)\n2026-01-01,30\n2026-01-02,-2\n2026-01-03,4\n')
  writeFileSync(file('huge.csv'), 'x')
  truncateSync(file('huge.csv'), 500_000_000)
}, 240_000)
afterAll(async () => {
  await restore?.()
  await app?.stop()
  rmSync(files, { recursive: true, force: true })
})

async function signedIn(options: PageOptions = {}): Promise<Page> {
  const page = await newPage({ ...options, baseURL: app.address })
  await signInOn(page, app.address, 'ann')
  return page
}

async function readings() {
  return inApp(app, async () => {
    const viewer = { kind: 'system' } as const
    return (await getHousehold(viewer, home)).household.readings
  })
}

async function bring(page: Page, name: string): Promise<void> {
  await page.goto(`/home/${home}/measured`)
  await page.getByLabel('The file').setInputFiles(file(name))
  await page.getByRole('button', { name: 'Show what is in it' }).click()
}

async function looksClean(page: Page, path: string, name: string): Promise<void> {
  for (const width of [PHONE, DESKTOP])
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize({ width, height: 844 })
      await page.emulateMedia({ colorScheme })
      await page.goto(path)
      await screenshot(page, `${name}-${width}-${colorScheme}`)
      expect(await axeFindings(page), `${path} at ${width}, ${colorScheme}`).toEqual([])
      const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
      expect(await page.evaluate(overflow), `${path} at ${width}: nothing to scroll sideways`).toBe(0)
      // Text at 200 % is a desk of half the width, or the narrowest phone.
      await page.setViewportSize({ width: Math.max(320, width / 2), height: 844 })
      expect(await page.evaluate(overflow), `${path} at 200 % of ${width}`).toBeLessThanOrEqual(0)
    }
}

for (const javaScript of [true, false])
  test(
    `a report is brought, looked at, read otherwise, kept and taken back; JavaScript ${javaScript ? 'on' : 'off'}`,
    LONG,
    async () => {
      const page = await signedIn({ javaScript })
      await bring(page, 'report.csv')
      await page.getByRole('heading', { name: 'What is in the report' }).waitFor()
      const january = page.getByRole('row', { name: /January 2026/ })
      // The file is in UTC: by the home's clock its first day is whole all the same, and read as UTC it ends elsewhere.
      await page.getByLabel('The clock of the file').selectOption('utc')
      await page.getByRole('button', { name: 'Look again' }).click()
      expect(new URL(page.url()).searchParams.get('zone')).toBe('utc')
      expect((await january.textContent())?.replaceAll(/\s+/g, ' ')).toContain('165.3')
      if (javaScript) await screenshot(page, 'measured-preview')
      await page.getByRole('button', { name: 'Keep these hours' }).click()
      await page.getByRole('heading', { name: 'Measured hours', exact: true }).waitFor()
      await page.getByText('Saved.').waitFor()
      expect((await readings()).length).toBe(11)
      expect(readdirSync(join(app.folder, '.plenum-brought', home)).length).toBe(0)
      await page
        .locator('.notice')
        .getByRole('button', { name: /Take it back/ })
        .click()
      await page.getByText('Taken back.').waitFor()
      expect(await readings()).toEqual([])
    },
  )

test(
  'the same span brought again takes the place of what stood, and its way back brings that again',
  LONG,
  async () => {
    const page = await signedIn()
    const keep = async (name: string) => {
      await bring(page, name)
      await page.waitForURL(/measured\/[a-z0-9]{16}/)
      await page.goto(`${page.url()}?zone=utc`)
      await page.getByRole('button', { name: 'Keep these hours' }).click()
      await page.getByText('Saved.').waitFor()
    }
    await keep('report.csv')
    const first = await readings()
    await keep('again.csv')
    const second = await readings()
    expect(second.length).toBe(first.length)
    expect(second).not.toEqual(first)
    await page
      .locator('.notice')
      .getByRole('button', { name: /Take it back/ })
      .click()
    await page.getByText('Taken back.').waitFor()
    expect(await readings()).toEqual(first)
  },
)

test('what is no export is refused in a sentence, and nothing is kept', LONG, async () => {
  for (const javaScript of [true, false]) {
    const page = await signedIn({ javaScript })
    await bring(page, 'binary.csv')
    await page.getByText('is not a table of text').waitFor()
    await bring(page, 'thirty.csv')
    await page.getByText('A day has 24 hours').waitFor()
    await page.getByText('cannot be shorter than nothing').waitFor()
    expect(await page.getByRole('button', { name: 'Keep these hours' }).count()).toBe(0)
    const start = Date.now()
    await bring(page, 'huge.csv')
    await page.getByText('larger than 60 MB').waitFor()
    expect(Date.now() - start).toBeLessThan(20_000)
  }
  expect(existsSync(join(app.folder, '.plenum-brought', home))).toBe(true)
})

test('the stands of a meter and its faults; a replaced counter; saved and taken back', LONG, async () => {
  for (const javaScript of [false, true]) {
    const page = await signedIn({ javaScript })
    await page.goto(`/home/${home}/measured/meter`)
    await page.getByLabel('What does the meter count?').selectOption('coolHours')
    await page.locator('#day-0').fill('2025-06-01')
    await page.locator('#stand-0').fill('9000')
    await page.locator('#day-1').fill('2025-07-01')
    await page.locator('#stand-1').fill('20')
    await page.locator('#day-2').fill('2025-08-01')
    await page.locator('#stand-2').fill('5000')
    await page.getByRole('button', { name: 'Show what it comes to' }).click()
    await page.getByText('is less than 9000').first().waitFor()
    await page.getByText('are more than the 744').first().waitFor()
    await page.locator('#stand-1').fill('9100')
    await page.locator('#new-1').fill('0')
    await page.locator('#stand-2').fill('150')
    await page.getByRole('button', { name: 'Show what it comes to' }).click()
    await page.getByText('100 hours of cooling').waitFor()
    await page.getByText('150 hours of cooling').waitFor()
    if (javaScript) await screenshot(page, 'measured-meter-preview')
    await page.getByRole('button', { name: 'Save' }).click()
    await page.getByText('Saved.').waitFor()
    await page
      .locator('.notice')
      .getByRole('button', { name: /Take it back/ })
      .click()
    await page.getByText('Taken back.').waitFor()
  }
})

test('hours that the thermostat shows: rows of some days, beside what stands between them', LONG, async () => {
  for (const javaScript of [false, true]) {
    const page = await signedIn({ javaScript })
    await page.goto(`/home/${home}/measured`)
    const standing = page.locator('section[aria-labelledby="standing"] li')
    const before = await standing.allInnerTexts()
    await page.getByRole('link', { name: 'Hours that the thermostat shows' }).click()
    await page.locator('#from-0').fill('2024-04-01')
    await page.locator('#to-0').fill('2024-04-30')
    await page.locator('#heatHours-0').fill('44')
    await page.getByRole('button', { name: 'Show what it comes to' }).click()
    await page.getByText('44 hours of heating').waitFor()
    await page.getByRole('button', { name: 'Save' }).click()
    await page.getByText('Saved.').waitFor()
    await page.goto(`/home/${home}/measured/hours`)
    await page.locator('#from-0').fill('2024-03-01')
    await page.locator('#to-0').fill('2024-03-31')
    await page.locator('#from-1').fill('2024-05-31')
    await page.locator('#to-1').fill('2024-05-01')
    await page.locator('#heatHours-1').fill('20')
    await page.getByRole('button', { name: 'Show what it comes to' }).click()
    await page.getByText('Write the hours of heating, cooling or fan').first().waitFor()
    await page.getByText('It cannot end before it begins').first().waitFor()
    if (javaScript) await screenshot(page, 'measured-hours-faults')
    expect(await axeFindings(page)).toEqual([])
    await page.locator('#heatHours-0').fill('95')
    await page.locator('#from-1').fill('2024-05-01')
    await page.locator('#to-1').fill('2024-05-31')
    await page.getByRole('button', { name: 'Show what it comes to' }).click()
    await page.getByText('95 hours of heating').waitFor()
    await page.getByText('20 hours of heating').waitFor()
    // April lies between the two, and is not theirs.
    expect(await page.getByText('It takes the place of').count()).toBe(0)
    await page.getByRole('button', { name: 'Save' }).click()
    await page.getByText('Saved.').waitFor()
    expect(await standing.count()).toBe(before.length + 3)
    const broughtHere = page.locator('section[aria-labelledby="brought"] li').filter({ hasText: '2024' })
    for (let left = 2; left > 0; left--) {
      await page.goto(`/home/${home}/measured`)
      const wayBack = broughtHere.getByRole('button', { name: /Take it back/ })
      expect(await wayBack.count()).toBe(left)
      await wayBack.first().click()
      await page.getByText('Taken back.').waitFor()
    }
    await page.goto(`/home/${home}/measured`)
    expect(await standing.allInnerTexts()).toEqual(before)
  }
})

test(
  'bills find what is not for heating in their summer, say a contradiction with both spans, and are kept',
  LONG,
  async () => {
    const page = await signedIn({ javaScript: false })
    await page.goto(`/home/${home}/measured/bills`)
    const fill = async (rows: [string, string, string][]) => {
      for (const [i, [from, to, amount]] of rows.entries()) {
        await page.locator(`#from-${i}`).fill(from)
        await page.locator(`#to-${i}`).fill(to)
        await page.locator(`#amount-${i}`).fill(amount)
      }
    }
    const show = () => page.getByRole('button', { name: 'Show what it comes to' }).click()
    await fill([
      ['2025-01-05', '2025-02-04', '20'],
      ['2025-07-05', '2025-08-03', '120'],
    ])
    await show()
    await page.getByText('larger, by the day, than those of winter').waitFor()
    await fill([
      ['2025-01-05', '2025-02-04', '120'],
      ['2025-07-05', '2025-08-03', '15'],
    ])
    await show()
    await page.getByText('0.50 therms a day').first().waitFor()
    await page.getByText('15.5 of them not for heating').waitFor()
    await screenshot(page, 'measured-bills-preview')
    await page.getByRole('button', { name: 'Change it again' }).click()
    expect(await page.locator('#base-0').inputValue()).toBe('15.5')
    await fill([['2026-01-05', '2026-02-04', '120']])
    await show()
    await page
      .getByText(/Already measured between 1 January and 31 January 2026 by another reading|Already measured between/)
      .first()
      .waitFor()
  },
)

test(
  'a heat wave and a smoky week typed in after the fact move the filter sooner, and say by how much',
  LONG,
  async () => {
    for (const javaScript of [false, true]) {
      const page = await signedIn({ javaScript })
      await page.goto(`/home/${home}/measured/happened`)
      await page.getByRole('radio', { name: /A heat wave/ }).check()
      await page.locator('#from').fill('2026-10-05')
      await page.locator('#to').fill('2026-10-25')
      await page.locator('#high').fill('50')
      await page.locator('#low').fill('30')
      await page.getByRole('button', { name: 'Save' }).click()
      await page.getByText('no hotter than usual').first().waitFor()
      await page.getByRole('radio', { name: /Wildfire smoke/ }).check()
      await page.getByRole('button', { name: 'Save' }).click()
      const notice = page.locator('.notice')
      await notice
        .getByText(/sooner/)
        .first()
        .waitFor()
      if (javaScript) await screenshot(page, 'measured-happened-moved')
      await notice.getByRole('button', { name: /Take it back/ }).click()
      await page.getByText('Taken out.').waitFor()
    }
  },
)

test('the pages are clean on phone and desk, light and dark, at twice the size', LONG, async () => {
  const page = await signedIn()
  await looksClean(page, `/home/${home}/measured`, 'measured')
  await looksClean(page, `/home/${home}/measured/meter`, 'measured-meter')
  await looksClean(page, `/home/${home}/measured/hours`, 'measured-hours')
  await looksClean(page, `/home/${home}/measured/bills`, 'measured-bills')
  await looksClean(page, `/home/${home}/measured/happened`, 'measured-happened')
  await bring(page, 'again.csv')
  await page.waitForURL(/measured\/[a-z0-9]{16}/)
  await looksClean(page, new URL(page.url()).pathname, 'measured-report')
})
