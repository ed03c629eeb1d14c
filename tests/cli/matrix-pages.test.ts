import { afterAll, beforeAll, expect, test } from 'vitest'
import { FINDER } from '@/content/finder/finder'
import { replayFinder } from '@/lib/guide/finder-replay'
import { cookieText } from '../support/a-browser'
import { type RunningApp, startApp } from '../support/app'
import { addressIn, expectedAt, PAGES } from '../support/page-walk'
import { aPlantedHome, PLANTED, type PlantedHome } from '../support/planted-home'
import { pageRoutes } from '../support/routes'
import { besideApp } from '../support/signed-in'
import { type Answered, ask } from '../support/web-form'
import { WHO, type Who } from '../support/who-may'

// Every page of the built app, asked over HTTP by everybody there is.

let app: RunningApp
let planted: PlantedHome
const rows: string[] = []
const nonces: string[] = []

beforeAll(async () => {
  app = await startApp()
  const back = besideApp(app)
  planted = await aPlantedHome()
  await back()
})
afterAll(() => app.stop())

function cookieOf(who: Who): string {
  return cookieText(planted.cookies[who])
}

function outcomeOf({ status, headers, text }: Answered): string {
  if (status === 404) return 'nothing here'
  if (status === 200) return text.includes('<h1>This link opens nothing</h1>') ? 'no link' : 'shown'
  const to = new URL(String(headers.location), app.address).pathname
  if (to === '/sign-in') return 'sign in'
  const home = `/home/${planted.home}`
  if (to === home) return 'to the home'
  return to.startsWith(home)
    ? to.includes('/record/')
      ? 'to its filter'
      : `to ${to.slice(home.length + 1)}`
    : `to ${to}`
}

test('every page has its wall written down, and no wall is about a page that is gone', () => {
  expect(Object.keys(PAGES).sort()).toEqual(pageRoutes())
})

test('everybody gets of every page what its wall says, and nobody reads a word that is not for him', async () => {
  const wrong: string[] = []
  const read = Object.fromEntries(Object.keys(PLANTED).map((what) => [what, new Set<Who>()]))
  for (const [path, { wall, search = '', shows = [] }] of Object.entries(PAGES)) {
    const query = search
      .replace('now', String(Math.floor(Date.now() / 60_000)))
      .replace('card', toACard())
      .replace('HOME', planted.home)
    const address = `${app.address}${addressIn(path, planted)}${query}`
    const answers = await Promise.all(WHO.map((who) => ask(address, { headers: { cookie: cookieOf(who) } })))
    const got = answers.map(outcomeOf)
    for (const [i, who] of WHO.entries()) {
      const answer = answers[i] as Answered
      if (got[i] !== expectedAt(wall, who)) wrong.push(`${path}, ${who}: ${got[i]}, not ${expectedAt(wall, who)}`)
      for (const [what, { word, for: readers }] of Object.entries(PLANTED)) {
        if (shows.includes(what) || !answer.text.includes(word)) continue
        read[what]?.add(who)
        if (!readers.includes(who)) wrong.push(`${path}, ${who}: reads the ${what}`)
      }
      wrong.push(...headerFaults(answer).map((fault) => `${path}, ${who}: ${fault}`))
    }
    rows.push(`| ${path} | ${got.join(' | ')} |`)
  }
  expect(wrong).toEqual([])
  // Whoever may read a word did so somewhere: what is never shown could not be found where it must not be.
  for (const [what, { for: readers }] of Object.entries(PLANTED))
    expect([what, WHO.filter((who) => read[what]?.has(who))]).toEqual([
      what,
      WHO.filter((who) => readers.includes(who)),
    ])
  expect(new Set(nonces).size).toBe(nonces.length)
  const head = `| page | ${WHO.join(' | ')} |\n|${' --- |'.repeat(WHO.length + 1)}`
  await expect(`${head}\n${rows.join('\n')}\n`).toMatchFileSnapshot('matrix-of-pages.txt')
})

// What every answer carries, whoever asks for whatever.
function headerFaults({ status, headers }: Answered): string[] {
  const policy = String(headers['content-security-policy'])
  const nonce = /'nonce-([^']{20,})'/.exec(policy)?.[1]
  if (nonce) nonces.push(nonce)
  const kept = String(headers['cache-control'])
  return [
    nonce ? '' : 'no nonce in the policy',
    /unsafe|\*/.test(policy) ? 'a policy that lets anything in' : '',
    policy.includes("frame-ancestors 'none'") ? '' : 'may be framed',
    headers['x-content-type-options'] === 'nosniff' ? '' : 'may be sniffed',
    headers['referrer-policy'] === 'same-origin' ? '' : 'tells where somebody came from',
    // A redirect without a word about keeping it is kept by nobody (RFC 9111, 4.2.2).
    (status >= 300 && status < 400 && kept === 'undefined') || /no-store|private/.test(kept) ? '' : `kept: ${kept}`,
  ].filter((fault) => fault !== '')
}

function toACard(): string {
  const open: string[][] = [[]]
  for (const answers of open) {
    const { screen } = replayFinder(FINDER, answers)
    if (screen.kind === 'card') return answers.join('.')
    if (screen.kind === 'question') open.push(...screen.answers.map(({ id }) => [...answers, id]))
  }
  throw new Error('the finder has no card')
}
