import type { Page } from 'playwright-core'
import { getFlow } from '@/content/guide/flows'
import { encodeWalk, parseWalk, type Walk } from '@/lib/guide/address'
import { eventKinds } from '@/lib/guide/booking'
import { fillEmergency } from '@/lib/guide/export'
import { type GuideHome, type GuidePlace, replayIn } from '@/lib/guide/place'
import { type Replay, withAnswer } from '@/lib/guide/replay'
import { type Answer, type Flow, type GuideNode, getNode } from '@/lib/guide/types'

/** What the address of a page says, by the guide's own replay: which node it shows in a home, or to somebody nobody knows. */
export function stateOf(address: string, now: number, home: GuideHome | null = null): Replay {
  const { pathname, search } = new URL(address)
  const flow = getFlow(pathname.split('/').at(-1) ?? '')
  const parsed = parseWalk(search)
  if (parsed.kind === 'broken') throw new Error(`${address}: ${parsed.because}`)
  return replayIn({ ...NOBODY, home, now }, flow, parsed.walk)
}

const NOBODY = { home: null, systemId: null, events: [], today: '2026-11-25' } satisfies Omit<GuidePlace, 'now'>

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

export function gentlest(node: GuideNode, found: Replay, chosen: Record<string, string>): Answer {
  const wanted = chosen[node.id] ?? (node.kind === 'gate' ? 'no' : LEADS_ON[node.id])
  const answer = found.answers.find(({ id }) => id === wanted) ?? found.answers.find(({ as }) => as === 'button')
  if (!answer) throw new Error(`${node.id} has nothing to tap`)
  return answer
}

export interface Walked {
  /** The nodes seen on the screen, in order; the last is the outcome. */
  nodes: string[]
  taps: number
}

interface WalkOptions {
  base?: string
  flow: Flow
  chosen?: Record<string, string>
  /** Whole minutes now, as the server or the phone counts them. */
  now: () => number
  /** Lets a wait go by, and comes back to the same screen. */
  wait: (minutes: number) => Promise<void>
  /**
   * Screens that were tapped through before, word for word. Where a flow begins with such ones, the walk is taken up
   * behind them by its address, which the guide replays from the start. What is tapped is added.
   */
  passed?: Set<string>
}

/** A screen as a person meets it: the same words and the same ways on. */
function screenOf(node: GuideNode): string {
  return JSON.stringify([node.id, node.text, node.answers?.map(({ id, text }) => [id, text])])
}

/** Walks a flow by tapping, from the first screen to its end, and checks at each step that the screen says its node. */
export async function walkByTaps(page: Page, options: WalkOptions): Promise<Walked> {
  const { base = '/check', flow, chosen = {}, now, wait, passed = new Set() } = options
  const nodes: string[] = []
  let taps = 0
  const known = passedWalk(flow, chosen, now(), passed)
  if (known) await page.goto(`${base}/${flow.id}${encodeWalk(known)}`, { waitUntil: 'commit' })
  else {
    await page.goto(base)
    await page.getByRole('link', { name: 'No gas smell here' }).click()
    await page.getByRole('link', { name: flow.title, exact: true }).click()
    taps = 2
    // The first screen asked it, in the same words.
    passed.add(screenOf(getNode(flow, flow.start)))
  }
  for (; ; taps++) {
    if (taps > 80) throw new Error(`no end after ${nodes.join(' ')}`)
    // Without network the page is drawn by the phone, a moment after it is there.
    await page.locator('.flow-name, .urgency').first().waitFor()
    const found = stateOf(page.url(), now())
    const { node } = found
    if (found.kind === 'broken') throw new Error(`${page.url()}: ${found.because}`)
    nodes.push(node.id)
    passed.add(screenOf(node))
    const shown = (await page.locator('main').textContent()) ?? ''
    const words = node.text.split('\n').map((line) => line.replace(/^(Only if|Do|Time|Stop if|If not): /, ''))
    for (const line of words)
      for (const sentence of fillEmergency(line).split(/(?<=[.?!:])\s+/))
        if (!/^(DANGER|WARNING)\.$/.test(sentence) && !shown.includes(sentence))
          throw new Error(`${node.id} does not say “${sentence}”`)
    if (node.kind === 'outcome') return { nodes, taps }
    if (node.kind === 'wait') await wait(node.minutes ?? 0)
    const before = page.url()
    const tap = page
      .locator('.taps')
      .locator('a, button')
      .filter({ hasText: gentlest(node, found, chosen).text })
      .first()
    await tap.click()
    await page.waitForURL((url) => url.href !== before, { waitUntil: 'commit' })
  }
}

/** The walk through the screens that a flow begins with and that were tapped before; null: it begins with a new one. */
function passedWalk(flow: Flow, chosen: Record<string, string>, now: number, passed: ReadonlySet<string>): Walk | null {
  let walk: Walk = { flow: flow.id, startedAt: now, steps: [] }
  for (;;) {
    const found = replayIn({ ...NOBODY, now }, flow, walk)
    const answer = passed.has(screenOf(found.node)) ? gentlest(found.node, found, chosen) : null
    // What is written down, and a wait, come about by tapping only.
    if (answer === null || found.node.kind === 'wait' || eventKinds(found.node, answer).length > 0)
      return walk.steps.length === 0 ? null : walk
    walk = withAnswer(walk, found.node, answer.id, now)
  }
}
