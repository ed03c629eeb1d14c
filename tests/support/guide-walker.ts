import type { Page } from 'playwright-core'
import { getFlow } from '@/content/guide/flows'
import { parseWalk } from '@/lib/guide/address'
import { type GuidePlace, replayIn } from '@/lib/guide/place'
import type { Replay } from '@/lib/guide/replay'
import type { GuideNode } from '@/lib/guide/types'

/** What the address of a page says, by the guide's own replay: which node it shows to somebody nobody knows. */
export function stateOf(address: string, now: number): Replay {
  const { pathname, search } = new URL(address)
  const flow = getFlow(pathname.split('/').at(-1) ?? '')
  const parsed = parseWalk(search)
  if (parsed.kind === 'broken') throw new Error(`${address}: ${parsed.because}`)
  const place: GuidePlace = { home: null, systemId: null, events: [], today: '2026-11-25', now }
  return replayIn(place, flow, parsed.walk)
}

/** The gentlest answer: hazards denied, and what leads on to the checks. */
const LEADS_ON: Record<string, string> = {
  presence: 'yes',
  before: 'no',
  tag: 'no',
  used: 'no',
  cover: 'shut',
  'co-alarm': 'works',
  'heat-source': 'gas',
  delivery: 'ducted',
  setting: 'right',
  sound: 'chirp',
}

export function gentlest(node: GuideNode, found: Replay, chosen: Record<string, string>): string {
  const wanted = chosen[node.id] ?? (node.kind === 'gate' ? 'no' : LEADS_ON[node.id])
  const answer = found.answers.find(({ id }) => id === wanted) ?? found.answers.find(({ as }) => as === 'button')
  if (!answer) throw new Error(`${node.id} has nothing to tap`)
  return answer.text
}

export interface Walked {
  /** The nodes seen, in order; the last is the outcome. */
  nodes: string[]
  /** How often something was tapped, the two taps before the flow included. */
  taps: number
}

interface WalkOptions {
  base?: string
  title: string
  chosen?: Record<string, string>
  /** Whole minutes now, as the server or the phone counts them. */
  now: () => number
  /** Lets a wait go by, and comes back to the same screen. */
  wait: (minutes: number) => Promise<void>
  /** Looks at each screen. */
  look?: (node: GuideNode) => Promise<void>
}

/** Walks a flow by tapping, from the first screen to its end, and checks at each step that the screen says its node. */
export async function walkByTaps(page: Page, options: WalkOptions): Promise<Walked> {
  const { base = '/check', title, chosen = {}, now, wait, look } = options
  await page.goto(base)
  await page.getByRole('link', { name: 'No gas smell here' }).click()
  await page.getByRole('link', { name: title, exact: true }).click()
  await page.locator('.flow-name').waitFor()
  const nodes: string[] = []
  for (let taps = 2; ; taps++) {
    if (taps > 80) throw new Error(`no end after ${nodes.join(' ')}`)
    const found = stateOf(page.url(), now())
    const { node } = found
    if (found.kind === 'broken') throw new Error(`${page.url()}: ${found.because}`)
    nodes.push(node.id)
    await look?.(node)
    if (node.kind === 'outcome') return { nodes, taps }
    const shown = (await page.locator('main').textContent()) ?? ''
    const words = node.text.split('\n').map((line) => line.replace(/^(Only if|Do|Time|Stop if|If not): /, ''))
    for (const line of words)
      for (const sentence of line.split(/(?<=[.?!:])\s+/))
        if (!/^(DANGER|WARNING)\.$/.test(sentence) && !shown.includes(sentence))
          throw new Error(`${node.id} does not say “${sentence}”`)
    if (node.kind === 'wait') await wait(node.minutes ?? 0)
    const before = page.url()
    const tap = page
      .locator('.taps')
      .locator('a, button')
      .filter({ hasText: gentlest(node, found, chosen) })
      .first()
    await tap.click()
    await page.waitForURL((url) => url.href !== before)
    // Without network the page is drawn by the phone, a moment after it is there.
    await page.locator('.flow-name, .urgency').first().waitFor()
  }
}
