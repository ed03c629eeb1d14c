import { beforeAll, expect, test, vi } from 'vitest'
import { currentLink } from '@/lib/access/links'
import { currentSession } from '@/lib/access/sign-in'
import { NOT_SENT } from '@/lib/core/answer'
import { findRoleIn } from '@/lib/data/members'
import { sentWith } from '../support/a-browser'
import { listMade, type Made } from '../support/file-walk'
import { freshDatabase } from '../support/fresh-database'
import { addressIn } from '../support/page-walk'
import { aPlantedHome, PLANTED, type PlantedHome, signedInAs } from '../support/planted-home'
import { everyRow } from '../support/stored'
import { barredAs, PASSES, WHO, type Who } from '../support/who-may'

// Every action and every method of every route, called as everybody there is. The framework's request is what a test
// without a server lacks; nothing of ours is replaced.
const request = vi.hoisted(() => ({ headers: new Headers() }))
vi.mock('next/headers', () => ({
  headers: async () => request.headers,
  cookies: async () => ({ get: () => undefined, getAll: () => [], set: () => {}, delete: () => {} }),
}))
vi.mock('next/cache', () => ({ refresh: () => {} }))
vi.mock('next/server', () => ({ connection: async () => {} }))

freshDatabase()

const BARRED: [RegExp, string][] = [
  [/You are signed out|Sign in first|Send a token of your account/, 'signed out'],
  [/There is nothing here|HTTP_ERROR_FALLBACK;404/, 'nothing here'],
  [/Your part in this home does not include this/, 'not allowed'],
]
// What is let in by its need and refused by its own work: an owner hands a home over, and never leaves it.
const REFUSED: Record<string, Partial<Record<Who, string>>> = { leaveHome: { owner: 'not allowed' } }
// The secret in its address shows the home's name, told apart by its building, to whoever holds it.
const SHOWS: Record<string, string[]> = { '/calendar/[secret]': ['name', 'building'] }
const FOR_EVERYBODY = ['/api/v1/openapi.json']
let actions: Made[] = []
let routes: Made[] = []
let planted: PlantedHome
let worlds = 0

beforeAll(async () => {
  actions = await listMade('actions.ts')
  routes = await listMade('route.ts')
  planted = await aPlantedHome()
})

async function sendAction({ call }: Made): Promise<string> {
  const form = new FormData()
  form.set('household', planted.home)
  const answer = await call(NOT_SENT, form).catch((error: { digest?: string }) => error.digest ?? String(error))
  return JSON.stringify(answer)
}

async function askRoute({ as, path, call }: Made, headers: Headers): Promise<string> {
  const address = `http://localhost:3000${addressIn(path, planted)}`
  const params = { household: planted.home, photo: planted.ids.photo, secret: planted.tokens.feed, token: 'none' }
  const answer = (await call(new Request(address, { method: as, headers }), {
    params: Promise.resolve(params),
  })) as Response
  // What one account was given, no cache on the way gives to another.
  if (!FOR_EVERYBODY.includes(path))
    expect([path, answer.headers.get('cache-control')]).toEqual([path, expect.stringMatching(/no-store|private/)])
  return answer.text()
}

function outcomeOf(answer: string): string {
  return BARRED.find(([words]) => words.test(answer))?.[1] ?? 'let in'
}

// Some of what is let in ends a session, a link or somebody's part in the home: that is mended before the next.
async function mend(who: Who): Promise<void> {
  if (who === 'nobody') return
  const mark = worlds === 0 ? '' : `${worlds}-`
  if (who !== 'renter' && !(await currentSession(sentWith(planted.cookies[who]))))
    planted.cookies[who] = await signedInAs(who, mark)
  const headers = sentWith(planted.cookies[who])
  const session = await currentSession(headers)
  const role =
    who === 'renter' ? (await currentLink(headers)) && who : session && (await findRoleIn(session.viewer, planted.home))
  if (role !== (PASSES.visit.includes(who) ? who : null)) planted = await aPlantedHome(`${++worlds}-`)
}

async function walk(made: Made[], send: (each: Made) => Promise<string>): Promise<{ rows: string[]; wrong: string[] }> {
  const wrong: string[] = []
  const table = new Map(made.map((each) => [each, {} as Record<Who, string>]))
  const enter = async (each: Made, who: Who) => {
    request.headers = sentWith(planted.cookies[who])
    const answer = await send(each)
    const got = outcomeOf(answer)
    const row = table.get(each)
    if (row) row[who] = got
    const expected = PASSES[each.needs].includes(who)
      ? (REFUSED[each.as]?.[who] ?? 'let in')
      : barredAs(each.needs, who)
    if (got !== expected) wrong.push(`${each.path} ${each.as}, ${who}: ${got}, not ${expected}`)
    for (const [what, { word, for: readers }] of Object.entries(PLANTED))
      if (!readers.includes(who) && !SHOWS[each.path]?.includes(what) && answer.includes(word))
        wrong.push(`${each.path} ${each.as}, ${who}: reads the ${what}`)
  }
  const before = await everyRow()
  for (const each of made) for (const who of WHO) if (!PASSES[each.needs].includes(who)) await enter(each, who)
  expect(await everyRow()).toEqual(before)
  for (const each of made)
    for (const who of WHO) {
      if (!PASSES[each.needs].includes(who)) continue
      await mend(who)
      await enter(each, who)
    }
  const rows = made.map((each) => {
    const row = table.get(each)
    return `| ${each.path} ${each.as} | ${each.needs} | ${WHO.map((who) => row?.[who]).join(' | ')} |`
  })
  return { rows, wrong }
}

const head = (what: string) => `| ${what} | needs | ${WHO.join(' | ')} |\n|${' --- |'.repeat(WHO.length + 2)}`

test('every action lets in who may by its declared need, and whoever may not changes not one row', async () => {
  const { rows, wrong } = await walk(actions, sendAction)
  expect(wrong).toEqual([])
  expect(rows.length).toBeGreaterThan(70)
  await expect(`${head('action')}\n${rows.join('\n')}\n`).toMatchFileSnapshot('matrix-of-actions.txt')
})

test('every method of every route does the same, and tells nobody a word that is not for him', async () => {
  const { rows, wrong } = await walk(routes, (each) => askRoute(each, request.headers))
  expect(wrong).toEqual([])
  expect(rows.length).toBeGreaterThanOrEqual(17)
  await expect(`${head('route')}\n${rows.join('\n')}\n`).toMatchFileSnapshot('matrix-of-routes.txt')
})

test('no route that changes something does it for a page of another site, whoever is signed in', async () => {
  const before = await everyRow()
  for (const each of routes.filter(({ as }) => as !== 'GET')) {
    for (const origin of ['https://evil.example', 'null', 'http://localhost:3000.evil.example', undefined]) {
      const headers = sentWith(planted.cookies.owner, origin ? { origin } : {})
      if (!origin) headers.delete('origin')
      expect([each.path, origin, await askRoute(each, headers)]).toEqual([
        each.path,
        origin,
        expect.stringContaining('another site'),
      ])
    }
  }
  for (const each of actions) {
    request.headers = sentWith(planted.cookies.owner, { origin: 'https://evil.example' })
    expect([each.as, await sendAction(each)]).toEqual([each.as, expect.stringContaining('another site')])
  }
  expect(await everyRow()).toEqual(before)
})
