import { beforeAll, expect, inject, test } from 'vitest'
import { minuteInWords } from '@/app/check/brief/minute-words'
import { FLOWS, getFlow } from '@/content/guide/flows'
import { HAZARD_TEXTS } from '@/content/guide/hazards'
import type { Walk } from '@/lib/guide/address'
import { getNode } from '@/lib/guide/types'
import { askFaults } from '@/lib/guide/words'
import { axeFindings, DESKTOP, newPage, PHONE, screenshot } from '../support/browser'
import { addressOfWalk, walksToAll } from '../support/guide-reach'
import { calmWalk } from '../support/walks'

const minuteNow = () => Math.floor(Date.now() / 60_000)

async function html(path: string): Promise<string> {
  const response = await fetch(new URL(path, inject('appAddress')))
  expect(response.status, path).toBe(200)
  return response.text()
}

/** A page as a person reads it: no scripts, no markup, a line for each block. */
function readable(page: string): string {
  return page
    .replace(/<(script|style|template)\b[\s\S]*?<\/\1>/g, '')
    .replace(/<\/?(strong|em|span|b)\b[^>]*>/g, '')
    .replace(/<[^>]+>/g, '\n')
    .replaceAll('&#x27;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\n\s*\n+/g, '\n')
}

function markup(page: string): string {
  const body = page.slice(page.indexOf('<body'))
  return body.replace(/<(script|style|template)\b[\s\S]*?<\/\1>/g, '').replace(/<(script|link|meta)\b[^>]*>/g, '')
}

let everyScreen: { flow: string; node: string; path: string }[] = []
beforeAll(() => {
  everyScreen = FLOWS.flatMap((flow) =>
    [...walksToAll(flow, {}, minuteNow())].map(([node, walk]) => ({ flow: flow.id, node, path: addressOfWalk(walk) })),
  )
})

test('the first screen says gas, CO and fire before any tap, with no script, and only the call can be tapped there', async () => {
  const page = await newPage({ width: PHONE, javaScript: false })
  await page.goto('/check')
  const text = (await page.locator('main').textContent()) ?? ''
  for (const hazard of ['gas', 'co', 'fire'] as const)
    for (const sentence of HAZARD_TEXTS[hazard].text
      .replaceAll('{emergency}', '911')
      .split(/(?<=[.])\s+/)
      .slice(2))
      expect(text).toContain(sentence)
  expect(await page.locator('a, button').evaluateAll((each) => each.map((tap) => tap.textContent))).toEqual([
    'Call 911',
    'No gas smell here',
  ])
  const gas = (await page.locator('.hazard').first().boundingBox()) ?? { y: 1e9 }
  expect(gas.y).toBeLessThan(60)
})

test('every screen of every flow is drawn, and none asks for what may never be asked', {
  timeout: 300_000,
}, async () => {
  expect(everyScreen.length).toBeGreaterThan(400)
  expect([...askFaults('Open the front panel.', [])].map(([invariant]) => invariant)).toContain(2)
  const faults: string[] = []
  for (const { flow, node, path } of everyScreen) {
    const page = await html(path)
    const text = readable(markup(page))
    const said = getNode(getFlow(flow), node)
    if (
      !text.includes((said.text.split(/[.?:\n]/)[1] ?? said.text).trim().slice(0, 30).replaceAll('{emergency}', '911'))
    )
      faults.push(`${flow} ${node}: its words are not there`)
    // What a text asks must also be named and fit the hazards: the checker sees to that, over the content.
    for (const line of text.split('\n'))
      for (const [invariant, fault] of askFaults(line.trim(), []))
        if (invariant === 2) faults.push(`${flow} ${node}: “${line.trim()}”: ${fault}`)
  }
  console.info(`${everyScreen.length} screens read`)
  expect(faults).toEqual([])
})

test('an emergency leads nowhere: no link but the call, no form, no navigation, and nothing to sign in to', async () => {
  const seen = new Set<string>()
  const emergencies = everyScreen.filter(({ flow, node }) => getNode(getFlow(flow), node).severity === 3)
  for (const { node, path } of [...emergencies, { node: 'static', path: '/check/emergency' }]) {
    if (seen.has(node)) continue
    seen.add(node)
    const body = markup(await html(path))
    expect(body.match(/<(form|input|button|nav|select|textarea|iframe|header|footer)\b/g), node).toBeNull()
    const links = [...body.matchAll(/<a\b[^>]*href="([^"]*)"/g)].map(([, href]) => href)
    expect(
      links.every((href) => href === 'tel:911'),
      `${node}: ${links}`,
    ).toBe(true)
    expect(links.length, node).toBeLessThanOrEqual(1)
  }
  console.info(`${seen.size} emergencies: ${[...seen].join(', ')}`)
  expect(seen.size).toBeGreaterThan(8)
})

test('on an emergency all text is 18 px or more, and what can be tapped is 44 px or more', async () => {
  const page = await newPage({ width: PHONE })
  const flow = getFlow('no-heat')
  const walks = walksToAll(flow, {}, minuteNow())
  for (const path of [
    '/check/emergency',
    ...['emergency-gas', 'emergency-co', 'hazards-now', 'not-cleared'].flatMap((id) => {
      const walk = walks.get(id)
      return walk ? [addressOfWalk(walk)] : []
    }),
  ]) {
    await page.goto(path)
    const sizes = await page
      .locator('main :is(p, li, h1, h2, a, dd, dt)')
      .evaluateAll((each) =>
        each.filter((one) => one.textContent?.trim()).map((one) => Number.parseFloat(getComputedStyle(one).fontSize)),
      )
    expect(Math.min(...sizes), path).toBeGreaterThanOrEqual(18)
    for (const box of await page
      .locator('a, button')
      .evaluateAll((each) => each.map((one) => one.getBoundingClientRect().height)))
      expect(box, path).toBeGreaterThanOrEqual(44)
  }
})

test('the hazard text is one step away on every screen that goes on', async () => {
  for (const { node, flow, path } of everyScreen.filter((_, i) => i % 7 === 0)) {
    if (getNode(getFlow(flow), node).severity === 3) continue
    const body = markup(await html(path))
    expect(body.match(/Something changed/g)?.length, `${flow} ${node}`).toBe(1)
    expect(body, `${flow} ${node}`).toContain('value="something-changed"')
  }
})

const BROKEN: [string, RegExp][] = [
  ['/check/no-heat?flow=no-heat&at=29000000&s=gas.no.0&n=2', /cut short/],
  ['/check/no-heat?flow=no-heat&at=29000000&s=gas.maybe.0&n=1', /does not exist/],
  ['/check/no-heat?flow=no-heat&at=29000000&s=start.done.0&n=1', /skips a question/],
  ['/check/no-heat?flow=no-cooling&at=29000000&s=&n=0', /another part of the guide/],
  ['/check/no-heat?flow=no-heat&at=99999999&s=&n=0', /future/],
  ['/check/no-heat?flow=no-heat&at=<b>&s=&n=0', /when the walk began/],
  ['/check/no-heat?flow=no-heat&flow=no-heat&at=29000000&s=&n=0', /same thing twice/],
]

test.each(BROKEN)('%s says what is wrong and begins at the hazards', async (path, says) => {
  const text = readable(markup(await html(path)))
  expect(text).toMatch(says)
  expect(text).toContain('Do you smell gas?')
})

test('an address that is no part of the guide says so under the hazards', async () => {
  const response = await fetch(new URL('/check/no-such-trouble', inject('appAddress')))
  expect(response.status).toBe(200)
  const text = readable(markup(await response.text()))
  expect(text).toContain('no part of the guide')
  expect(text).toContain('Gas smell')
})

test('whoever opens the list of troubles without having said that there is no gas is led to the hazards', async () => {
  const page = await newPage({ width: PHONE })
  await page.goto('/check/trouble')
  expect(new URL(page.url()).pathname).toBe('/check')
})

test('after more than 15 minutes the hazards come again, and then the walk goes on where it was', async () => {
  const flow = getFlow('no-heat')
  const calm = calmWalk(flow, {}, { presence: 'yes' })
  const steps = calm.steps.slice(0, 9).map((step) => ({ ...step, minute: 0 }))
  const page = await newPage({ width: PHONE })
  await page.goto(addressOfWalk({ flow: 'no-heat', startedAt: minuteNow() - 16, steps }))
  const asked: string[] = []
  for (let i = 0; i < 8; i++) {
    if ((await page.getByText('a few questions come again').count()) === 0) break
    asked.push((await page.locator('h1').textContent()) ?? '')
    const tap = page
      .locator('.taps')
      .locator('a, button')
      .filter({ hasText: /^(No\b|Yes, I am)/ })
      .first()
    const before = page.url()
    await tap.click()
    await page.waitForURL((url) => url.href !== before)
    await page.locator('.flow-name').waitFor()
  }
  expect(asked.map((text) => text.slice(0, 16))).toEqual([
    'Do you smell gas',
    'Are you in the h',
    'Is a CO alarm go',
    'Is there smoke, ',
    'Was there a bang',
  ])
  const words = getNode(flow, calm.steps[9]?.node ?? '').text.slice(0, 25)
  expect(await page.locator('main').textContent()).toContain(words)
})

const KINDS: [string, () => string][] = [
  ['first', () => '/check'],
  ['emergency', () => '/check/emergency'],
  ['trouble', () => `/check/trouble?at=${minuteNow()}`],
  ['gate', () => '/check/no-heat'],
  ['question', () => toNode('heat-source')],
  ['check', () => toNode('filter')],
  ['start', () => toNode('start')],
  ['wait', () => toNode('wait')],
  ['outcome', () => toNode('still-cold')],
  ['stop', () => toNode('stop-boom')],
  ['gas', () => toNode('emergency-co')],
  ['watch', () => '/check/watch'],
  ['watched', () => '/check/watch?w=calls.0_hum.5_light.40_silence.46_starts-over.60'],
  ['watch-bang', () => '/check/watch?w=calls.0_bang.30'],
  ['watch-faulty', () => '/check/watch?hum=soon&light=1:75'],
  ['brief', () => `/check/brief?${toNode('still-cold').split('?')[1]}&room=58`],
  ['brief-faulty', () => `/check/brief?${toNode('still-cold').split('?')[1]}&room=chilly`],
  ['cleared', () => '/check/cleared'],
  ['booklet', () => '/check/booklet'],
  ['offline', () => '/check/offline'],
]

function toNode(id: string): string {
  noHeat ??= walksToAll(getFlow('no-heat'), {}, minuteNow())
  const walk = noHeat.get(id)
  if (!walk) throw new Error(`no walk to ${id}`)
  return addressOfWalk(walk)
}
let noHeat: Map<string, Walk> | undefined

// Colours do not depend on the width, nor what axe says of words on colours: each is seen once in either.
const LOOKS = [
  { width: PHONE, dark: false },
  { width: DESKTOP, dark: true },
] as const

const OVERFLOW = `[...document.querySelectorAll('body, main *:not(.visually-hidden)')]
  .filter((each) => each.getBoundingClientRect().right > innerWidth + 1 || each.scrollWidth > each.clientWidth + 1
    && getComputedStyle(each).display !== 'inline'
    // A letter a line is no text.
    || /^(P|LI|DT|DD|TD|TH|H1|H2|H3|LABEL|CAPTION)$/.test(each.tagName) && each.textContent.trim().length > 8
      && each.clientWidth > 0 && each.clientWidth < 4 * Number.parseFloat(getComputedStyle(each).fontSize))
  .map((each) => each.tagName + ' ' + (each.textContent ?? '').slice(0, 40))`

test.each(LOOKS)(
  'every kind of screen is clean for axe, and fits its width at twice the text too: $width wide, dark: $dark',
  {
    timeout: 300_000,
  },
  async (look) => {
    const page = await newPage(look)
    const found: string[] = []
    for (const [name, path] of KINDS) {
      await page.goto(path())
      await page.locator('main').waitFor()
      if (process.env.SHOTS) await screenshot(page, `guide-${name}${look.dark ? '-dark' : ''}`)
      for (const finding of await axeFindings(page)) found.push(`${name}: ${finding}`)
      for (const size of ['100%', '200%']) {
        await page.evaluate(`document.documentElement.style.fontSize = '${size}'`)
        for (const each of (await page.evaluate(OVERFLOW)) as string[]) found.push(`${name} at ${size}: ${each}`)
      }
    }
    expect(found).toEqual([])
  },
)

test('the brief of nobody’s home shows the phone’s own time, and without scripts says that it is UTC', async () => {
  const path = `/check/brief?${toNode('still-cold').split('?')[1]}`
  const minute = Number(/at=(\d+)/.exec(path)?.[1])
  const page = await newPage({ width: PHONE })
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setTimezoneOverride', { timezoneId: 'America/Chicago' })
  await page.goto(path)
  await page.getByText(`Self-check begun: ${minuteInWords(minute, 'America/Chicago')}`).waitFor()
  expect(await page.locator('.brief').textContent()).not.toContain('UTC')
  const still = await newPage({ width: PHONE, javaScript: false })
  await still.goto(path)
  expect(await still.locator('.brief').textContent()).toContain(`${minuteInWords(minute, 'UTC')}`)
  expect(minuteInWords(minute, 'UTC')).toMatch(/ UTC$/)
})

test('the keyboard goes through a screen in its order, and an answer by Enter leads on', async () => {
  const page = await newPage({ width: PHONE })
  await page.goto('/check')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  expect(await page.evaluate('document.activeElement.textContent')).toBe('No gas smell here')
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'What is the trouble?' }).waitFor()
})

test('the booklet has every step of every flow, and each way leads to a step that is there', async () => {
  const text = readable(markup(await html('/check/booklet')))
  for (const flow of FLOWS) {
    expect(text).toContain(flow.title)
    for (const node of flow.nodes) {
      const [first = ''] = node.text
        .replaceAll('{emergency}', '911')
        .split('\n')
        .map((line) => line.replace(/^Only if: /, ''))
      expect(text, `${flow.id} ${node.id}`).toContain(first)
    }
  }
})

test('printed, the booklet has its hazards and how to use it on the first page, and is no pile', async () => {
  const page = await newPage({ width: DESKTOP })
  await page.goto('/check/booklet')
  const pdf = await page.pdf({ format: 'Letter' })
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBeLessThan(50)
  // Letter less its margins of 16 and 15 mm, at 96 px an inch.
  await page.setViewportSize({ width: 703, height: 935 })
  await page.emulateMedia({ media: 'print' })
  const first = await page.locator('.booklet > p').last().boundingBox()
  expect((first?.y ?? 1e9) + (first?.height ?? 0)).toBeLessThan(935)
})
