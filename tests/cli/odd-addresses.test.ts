import { afterAll, beforeAll, expect, test } from 'vitest'
import { cookieText } from '../support/a-browser'
import { type RunningApp, startApp } from '../support/app'
import { listMade } from '../support/file-walk'
import { wordsIn } from '../support/garbage'
import { addressIn, PAGES } from '../support/page-walk'
import { aPlantedHome, type PlantedHome } from '../support/planted-home'
import { besideApp } from '../support/signed-in'
import { ask } from '../support/web-form'

// Addresses that nobody gets by following a link: the built app, asked by somebody who may see everything of his own.

let app: RunningApp
let planted: PlantedHome
let cookie = ''
beforeAll(async () => {
  app = await startApp({ databaseUrl: null })
  const back = besideApp(app)
  planted = await aPlantedHome()
  cookie = cookieText(planted.cookies.owner)
  await back()
})
afterAll(() => app.stop())

const ODD = ['%00', '%25E0', '..%2f..%2fetc%2fpasswd', '__proto__', 'x'.repeat(3000)]
const VALUES = ['%00', '__proto__', '%22%3E%3Cscript%3Ealert(1)%3C/script%3E']

async function faultOf(path: string): Promise<string[]> {
  const { status, text } = await ask(`${app.address}${path}`, { headers: { cookie } })
  const shown = `${path.slice(0, 100)}: ${status}`
  return status >= 500 || text.includes('<script>alert(1)') ? [shown] : []
}

/** A few at a time, as browsers do. */
async function faultsOf(paths: string[]): Promise<string[]> {
  const faults: string[] = []
  for (let i = 0; i < paths.length; i += 8)
    faults.push(...(await Promise.all(paths.slice(i, i + 8).map(faultOf))).flat())
  return faults
}

test('whatever stands in a part of an address, no page breaks', async () => {
  const paths = Object.keys(PAGES).flatMap((page) =>
    [...page.matchAll(/\[[^\]]+\]/g)].flatMap(([part]) =>
      ODD.map((odd) => addressIn(page.replace(part, odd), planted)),
    ),
  )
  expect(paths.length).toBeGreaterThan(150)
  expect(await faultsOf(paths)).toEqual([])
  expect(app.output()).not.toMatch(/⨯|TypeError|RangeError|URIError/)
})

test('whatever stands behind the question mark, no page breaks and none runs it', async () => {
  const names = [
    ...new Set(['lib/forms/homes-query.ts', 'lib/forms/rounds-query.ts', 'lib/forms/log-filter.ts'].flatMap(wordsIn)),
  ]
  const known = [
    'a',
    'at',
    's',
    'n',
    'k',
    't',
    'w',
    'h',
    'd',
    'u',
    'on',
    'doer',
    'home',
    'system',
    'room',
    'in',
    'did',
    'entry',
    'fault',
    'next',
    'token',
    'years',
    'step',
  ]
  const fields = [...known, ...names.filter((name) => /^[\w-]+$/.test(name)).slice(0, 40)]
  const paths = Object.keys(PAGES).flatMap((page) =>
    VALUES.map(
      (value) =>
        `${addressIn(page, planted)}?${fields
          .map((name) => `${name}=${value}`)
          .join('&')
          .slice(0, 7000)}`,
    ),
  )
  expect(await faultsOf(paths)).toEqual([])
  expect(app.output()).not.toMatch(/⨯|TypeError|RangeError|URIError/)
})

test('nor does a route', async () => {
  const routes = (await listMade('route.ts')).filter(({ as }) => as === 'GET')
  const paths = routes.flatMap(({ path }) => [
    ...VALUES.map((value) => `${addressIn(path, planted)}?from=${value}&to=${value}&year=${value}&lead=${value}`),
    ...[...path.matchAll(/\[[^\]]+\]/g)].flatMap(([part]) =>
      ODD.map((odd) => addressIn(path.replace(part, odd), planted)),
    ),
  ])
  expect(await faultsOf(paths)).toEqual([])
})
