import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import { findAccountByEmail } from '@/lib/data/accounts'
import { keepPlans } from '@/lib/data/kept-plans'
import { confirmAddress } from '@/lib/data/mail-links'
import { runReminders } from '@/lib/outbound/runner'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, DESKTOP, expectBrowserProblem, newPage, PHONE, screenshot } from '../support/browser'
import { openPostOffice, type PostOffice } from '../support/post-office'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

// The tests of this file are one story, in its order: from the settings page to the day that moves.
const LONG = { timeout: 180_000 }
let office: PostOffice
let app: RunningApp
let back: () => Promise<void>
const homes: Record<string, string> = {}

beforeAll(async () => {
  office = await openPostOffice()
  const env = { SMTP_URL: office.url, MAIL_FROM: 'plenum@example.org' }
  app = await startApp({ env })
  back = besideApp(app)
  Object.assign(process.env, env, { PUBLIC_URL: app.address })
  const old = aHousehold({
    since: '2026-03-01',
    records: [{ on: '2026-03-20', kind: 'filter-changed', filter: 'hall' }],
  })
  for (const name of ['ann', 'ben']) homes[name] = (await anAccount(name, [old]))[0] ?? ''
}, 240_000)
afterAll(async () => {
  await back?.()
  await app?.stop()
  await office?.close()
})

async function open(name: string, options: { javaScript?: boolean } = {}): Promise<Page> {
  const page = await newPage({ ...options, baseURL: app.address })
  await signInOn(page, app.address, name)
  return page
}

async function feedDay(page: Page, path: string): Promise<string | undefined> {
  const text = await (await page.request.get(path)).text()
  const event = text.split('BEGIN:VEVENT').find((part) => part.includes('Change the filter'))
  return /DTSTART;VALUE=DATE:(\d{8})/.exec(event ?? '')?.[1]
}

for (const javaScript of [false, true])
  test(`from the settings to the day that moves, ${javaScript ? 'with' : 'without'} scripts`, LONG, async () => {
    office.mails.length = 0
    const name = javaScript ? 'ben' : 'ann'
    const page = await open(name, { javaScript })
    await page.goto('/account/reminders')
    await page.getByRole('button', { name: /^Make (a calendar|another) address/ }).click()
    const feed = new URL(await page.getByLabel('The link').inputValue()).pathname
    const before = await feedDay(page, feed)
    expect(before).toMatch(/^\d{8}$/)

    await page.getByLabel('Send them').check()
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await page.getByText('Saved.').waitFor()
    const account = await findAccountByEmail(`${name}@example.org`)
    await confirmAddress(account?.id ?? '')
    const plans = keepPlans((stored, on) => planHousehold(stored.household, tables, on), { version: 1 })
    process.env.PLENUM_NOW = new Date(Date.now() + 8 * 86_400_000).toISOString()
    await runReminders({ plans, freezeWatch: [] })
    delete process.env.PLENUM_NOW
    const mail = office.mails.find(({ text }) => text?.includes('Looked: light comes through'))
    const [, looked = ''] = /Looked: light comes through:\n\S+?(\/act\/\S+)/.exec(mail?.text ?? '') ?? []
    const [, done = ''] = /(\/act\/\S+)\nLooked: light comes through/.exec(mail?.text ?? '') ?? []
    const link = javaScript ? looked : done

    const anyone = await newPage({ javaScript, baseURL: app.address })
    await anyone.goto(link)
    expect(await feedDay(page, feed), 'following the link changes nothing').toBe(before)
    expect(await axeFindings(anyone)).toEqual([])
    await anyone.getByRole('button', { name: /^Yes/ }).click()
    await anyone.getByRole('heading', { name: 'Done' }).waitFor()
    expect(await feedDay(page, feed)).not.toBe(before)

    await page.goto(`/home/${homes[name]}/log`)
    expect(await page.locator('main').textContent()).toContain('by a button in a mail')
  })

test('every page of reminders and of the log is clean: phone and desktop, light and dark', LONG, async () => {
  const page = await open('ann')
  const home = homes.ann
  await page.goto(`/home/${home}/log`)
  const correct =
    (await page
      .getByRole('link', { name: /^Correct/ })
      .first()
      .getAttribute('href')) ?? ''
  const paths: Record<string, string> = {
    reminders: '/account/reminders',
    log: `/home/${home}/log?kind=filter-changed`,
    year: `/home/${home}/log/2026`,
    correct,
    away: `/home/${home}/away`,
    forgot: '/forgot',
    over: '/act/nothing',
    confirm: '/confirm/nothing',
  }
  for (const [name, path] of Object.entries(paths))
    for (const width of [PHONE, DESKTOP])
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.setViewportSize({ width, height: 844 })
        await page.emulateMedia({ colorScheme })
        await page.goto(path)
        expect(await axeFindings(page), `${path} at ${width}, ${colorScheme}`).toEqual([])
        const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
        expect(await page.evaluate(overflow), `${path} at ${width}: nothing to scroll sideways`).toBe(0)
        if ((width === PHONE) === (colorScheme === 'light')) await screenshot(page, `outbound-${name}-${width}`)
      }
})

test('what is put off and who is away stand in the log, and are taken back there', LONG, async () => {
  const page = await open('ben', { javaScript: false })
  const home = homes.ben
  await page.goto(`/home/${home}/away`)
  await page.getByLabel('Back at home on').fill(new Date(Date.now() + 9 * 86_400_000).toISOString().slice(0, 10))
  await page.getByRole('button', { name: 'We are away until then' }).click()
  await page.goto(`/home/${home}`)
  await page.goto(
    (await page
      .getByRole('link', { name: /^Put (it )?off/ })
      .first()
      .getAttribute('href')) ?? '',
  )
  await page.getByRole('button', { name: 'Put it off' }).click()
  await page.goto(`/home/${home}/log?kind=put-off`)
  expect(await page.locator('.log-line').count()).toBe(1)
  expect(await axeFindings(page)).toEqual([])
  await page.getByRole('button', { name: /^Take back/ }).click()
  expect(await page.locator('main').textContent()).toContain('Ended early')
  await page.goto(`/home/${home}/log?kind=away`)
  expect(await page.locator('.log-line').textContent()).toMatch(/Nobody at home.*Said by ben/s)
  await screenshot(page, 'outbound-log-away')
  expect(await (await page.request.get(`/home/${home}/log/csv?kind=away`)).text()).toContain('Nobody at home')
  await page.goto(`/home/${home}/log/${new Date().getFullYear()}`)
  expect(await page.locator('main').textContent()).toContain('When nobody was at home')
  await page.goto(`/home/${home}/log?kind=away`)
  await page.getByRole('button', { name: /^Take back/ }).click()
  await page.goto(`/home/${home}/away`)
  expect(await page.locator('h1').textContent()).toBe('When nobody is at home')
})

test('another e-mail is taken by a link in a mail, without scripts too', LONG, async () => {
  office.mails.length = 0
  const page = await open('ben', { javaScript: false })
  await page.goto('/account')
  await page.getByLabel('New e-mail').fill('benjamin@example.org')
  await page.locator('#address-password').fill('a plain long passphrase')
  await page.getByRole('button', { name: 'Send the link' }).click()
  await page.getByText('a mail with a link is on its way').waitFor()
  const plans = keepPlans((stored, on) => planHousehold(stored.household, tables, on), { version: 1 })
  for (let i = 0; i < 40 && office.mails.length === 0; i++) {
    await runReminders({ plans, freezeWatch: [] })
    await new Promise((resolve) => setTimeout(resolve, 250))
  }
  const [, link = ''] = /(\/address\/\S+)/.exec(office.mails[0]?.text ?? '') ?? []
  await page.goto(link)
  expect(await axeFindings(page)).toEqual([])
  await page.getByRole('button', { name: 'Yes, use this address' }).click()
  await page.getByText('From now on you sign in with this address').waitFor()
  await page.goto('/account')
  expect(await page.locator('main').textContent()).toContain('You sign in as benjamin@example.org')
})

test('the log is undone, corrected, and taken along', LONG, async () => {
  const page = await open('ann', { javaScript: false })
  const home = homes.ann
  await page.goto(`/home/${home}/log?kind=filter-changed`)
  await page
    .getByRole('link', { name: /^Correct/ })
    .first()
    .click()
  await page.getByLabel('The day').fill('2026-03-19')
  await page.getByRole('button', { name: 'Correct it' }).click()
  expect(await page.locator('main').textContent()).toContain('Before the correction')
  await page
    .getByRole('button', { name: /^Take back/ })
    .first()
    .click()
  expect(await page.locator('main').textContent()).toContain('Taken back')
  const csv = await (await page.request.get(`/home/${home}/log/csv`)).text()
  expect(csv).toContain('taken back')
  expect(csv).toContain('Reminded: ')
})

test('without a mail server the settings say what is missing; a link that leads nowhere says so', LONG, async () => {
  expectBrowserProblem(/404/)
  const page = await newPage()
  await page.goto('/forgot')
  expect(await page.locator('main').textContent()).toContain('sends no mail')
  await page.goto('/act/x.y')
  expect(await page.locator('h1').textContent()).toBe('This link is over')
  expect((await page.request.get(`/calendar/${'a'.repeat(43)}.ics`)).status()).toBe(404)
})
