import { expect, inject, test } from 'vitest'
import { axeFindings, DESKTOP, expectBrowserProblem, newPage, PHONE, screenshot, until } from '../support/browser'

for (const width of [PHONE, DESKTOP])
  for (const dark of [false, true])
    for (const javaScript of [true, false]) {
      const name = `first-${width}${dark ? '-dark' : ''}${javaScript ? '' : '-no-script'}`
      test(`the first page opens clean: ${name}`, async () => {
        const page = await newPage({ width, dark, javaScript })
        expect((await page.goto('/'))?.status()).toBe(200)
        expect(await page.locator('h1').count()).toBe(1)
        expect(await axeFindings(page)).toEqual([])
        const overflow = 'document.documentElement.scrollWidth - document.documentElement.clientWidth'
        expect(await page.evaluate(overflow), 'nothing to scroll sideways').toBe(0)
        await screenshot(page, name)
      })
    }

test('the scripts of a page run under its own policy', async () => {
  const page = await newPage()
  await page.goto('/')
  await until(page, "document.querySelector('main') && '__next_f' in window && !!window.next?.router")
})

test('a script or a style that somebody slips into a page does not run', async () => {
  expectBrowserProblem(/Content Security Policy/)
  const page = await newPage()
  await page.goto('/')
  const ran = await page.evaluate(async () => {
    const script = document.createElement('div')
    script.innerHTML = '<img src="data:," onerror="window.slipped = true"><p style="color: red">x</p>'
    document.body.append(script)
    const inline = document.createElement('script')
    inline.textContent = 'window.slipped = true'
    document.body.append(inline)
    await new Promise((resolve) => setTimeout(resolve, 300))
    return { slipped: 'slipped' in window, red: getComputedStyle(script.lastElementChild as Element).color }
  })
  expect(ran.slipped).toBe(false)
  expect(ran.red).not.toBe('rgb(255, 0, 0)')
})

test('an address that leads nowhere says so in plain words', async () => {
  expectBrowserProblem(/404/)
  const page = await newPage()
  expect((await page.goto('/no/such/page'))?.status()).toBe(404)
  expect(await page.locator('h1').textContent()).toBe('There is nothing here')
  expect(await axeFindings(page)).toEqual([])
  await page.getByRole('link', { name: 'Go to the first page' }).click()
  await page.waitForURL(/\/$/)
})

test('every answer carries the security headers, a page its own nonce', async () => {
  const answers = await Promise.all([1, 2].map(() => fetch(inject('appAddress'))))
  const nonces = answers.map(
    (answer) => /'nonce-([^']+)'/.exec(answer.headers.get('content-security-policy') ?? '')?.[1],
  )
  expect(new Set(nonces).size).toBe(2)
  for (const [index, answer] of answers.entries()) {
    const policy = answer.headers.get('content-security-policy') ?? ''
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).not.toContain('unsafe')
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
    expect(answer.headers.get('referrer-policy')).toBe('same-origin')
    expect(answer.headers.get('permissions-policy')).toContain('geolocation=()')
    expect(answer.headers.has('x-powered-by')).toBe(false)
    expect(answer.headers.has('strict-transport-security'), 'no promise of TLS without TLS').toBe(false)
    const scripts = (await answer.text()).match(/<script[^>]*>/g) ?? []
    expect(scripts.length).toBeGreaterThan(3)
    for (const script of scripts) expect(script).toContain(`nonce="${nonces[index]}"`)
  }
})
