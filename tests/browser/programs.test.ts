import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { planSchema } from '@/lib/forms/plan-schema'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { axeFindings, DESKTOP, newPage, PHONE, screenshot } from '../support/browser'
import { anAccount, besideApp, signInOn } from '../support/signed-in'

const LONG = { timeout: 180_000 }
let app: RunningApp
let back: () => Promise<void>

beforeAll(async () => {
  app = await startApp()
  back = besideApp(app)
  for (const name of ['ann', 'ben']) await anAccount(name, [aHousehold({ since: '2026-03-01' })])
}, 240_000)
afterAll(async () => {
  await back?.()
  await app?.stop()
})

async function open(name: string, options: Parameters<typeof newPage>[0] = {}): Promise<Page> {
  const page = await newPage({ ...options, baseURL: app.address })
  await signInOn(page, app.address, name)
  return page
}

function ask(token: string | null, init: RequestInit = {}): Promise<Response> {
  const headers = { ...(token && { authorization: `Bearer ${token}` }), ...init.headers }
  return fetch(`${app.address}/api/v1/plan`, { ...init, headers })
}

for (const javaScript of [false, true])
  test(`a token is made, used and revoked, ${javaScript ? 'with' : 'without'} scripts`, LONG, async () => {
    const page = await open(javaScript ? 'ben' : 'ann', { javaScript })
    await page.goto('/account')
    await page.getByRole('link', { name: 'Tokens for a script or a wall display' }).click()
    await page.getByText('None: no program reads anything of yours.').waitFor()
    await page.getByRole('button', { name: 'Make a token' }).click()
    await page.getByText('Write which program it is for').first().waitFor()
    await page.getByLabel('What is it for?').fill('Kitchen display')
    await page.getByRole('button', { name: 'Make a token' }).click()
    const token = await page.getByLabel('The token').inputValue()
    expect(token).toMatch(/^plenum_[\w-]{43}$/)
    expect(await axeFindings(page)).toEqual([])
    await screenshot(page, `programs-made-${javaScript ? 'scripts' : 'plain'}`)
    await page.getByText('Not used yet.').waitFor()

    const answer = await ask(token)
    expect(answer.status).toBe(200)
    expect(planSchema.parse(await answer.json()).households).toHaveLength(1)
    const again = await ask(token, { headers: { 'if-none-match': answer.headers.get('etag') ?? '' } })
    expect(again.status).toBe(304)
    const head = await ask(token, { method: 'HEAD' })
    expect([head.status, head.headers.get('etag'), await head.text()]).toEqual([200, answer.headers.get('etag'), ''])

    await page.goto('/account/programs')
    expect(await page.content(), 'shown once').not.toContain(token)
    await page.getByText('Last used on').waitFor()
    await page.getByRole('button', { name: 'Revoke Kitchen display' }).click()
    await page.getByText('It reads nothing from now on.').waitFor()
    expect((await ask(token)).status).toBe(401)
    await page.getByText('Revoked (1)').click()
    await page.getByText('Kitchen display: revoked on').waitFor()
    expect(await page.getByRole('button', { name: /Revoke/ }).count()).toBe(0)
  })

test('the page reads well on a phone and a desk, light and dark', LONG, async () => {
  for (const [width, dark] of [
    [PHONE, false],
    [PHONE, true],
    [DESKTOP, true],
    [DESKTOP, false],
  ] as const) {
    const page = await open('ann', { width, dark })
    await page.goto('/account/programs')
    if (width === PHONE && !dark)
      for (const name of ['Kitchen display', 'Hall script']) {
        await page.getByLabel('What is it for?').fill(name)
        await page.getByRole('button', { name: 'Make a token' }).click()
        await page.getByText(`Give this token to ${name} now`).waitFor()
      }
    expect(await axeFindings(page)).toEqual([])
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
    expect(wide).toBeLessThanOrEqual(0)
    await screenshot(page, `programs-${width}-${dark ? 'dark' : 'light'}`)
  }
})

test('by its address it answers programs only, and no page of another site', LONG, async () => {
  const page = await open('ann')
  expect((await page.request.get('/api/v1/plan')).status(), 'a session is no token').toBe(401)
  const none = await ask(null, { headers: { origin: 'https://elsewhere.example' } })
  expect([none.status, none.headers.get('www-authenticate')]).toEqual([401, 'Bearer realm="Plenum"'])
  const preflight = await ask(null, {
    method: 'OPTIONS',
    headers: { origin: 'https://elsewhere.example', 'access-control-request-method': 'GET' },
  })
  for (const answer of [none, preflight]) {
    for (const name of answer.headers.keys()) expect(name).not.toContain('access-control')
  }
  expect((await ask(`plenum_${'a'.repeat(43)}`)).status).toBe(401)
  const head = await ask(null, { method: 'HEAD' })
  expect([head.status, await head.text()]).toEqual([401, ''])
  for (const method of ['POST', 'PUT', 'DELETE'])
    expect([401, 403, 405]).toContain((await ask(null, { method })).status)

  const described = await fetch(`${app.address}/api/v1/openapi.json`)
  expect([described.status, described.headers.get('content-type')]).toEqual([200, 'application/json'])
  expect((await described.json()).openapi).toBe('3.1.0')
})
