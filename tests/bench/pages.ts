import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { ROOT } from '@/lib/cli/root.mjs'
import { migrate } from '@/lib/data/migrate'
import { ask } from '../support/web-form'
import { type Prepared, prepared } from './a-landlord'
import { serve } from './server'
import { sqlOfPages } from './statements'
import { atMost, medians, type Row } from './table'

/** The layout and a few sentences: what every page costs before it says anything of its own. */
const BARE = '/account/deleted'
const GOAL = 1.15
const RUNS = 15

interface Bundle {
  route: string
  firstLoadChunkPaths: string[]
}

/** First-load JavaScript of every page, compressed, against the bare page's. */
function scripts(): Row[] {
  const path = join(ROOT, '.next/diagnostics/route-bundle-stats.json')
  const bundles: Bundle[] = JSON.parse(readFileSync(path, 'utf8'))
  const sizes = new Map<string, number>()
  function gzipped(chunk: string): number {
    const size = sizes.get(chunk) ?? gzipSync(readFileSync(join(ROOT, chunk))).length
    sizes.set(chunk, size)
    return size
  }
  const pages = bundles.map(({ route, firstLoadChunkPaths }) => ({
    route,
    bytes: firstLoadChunkPaths.reduce((sum, chunk) => sum + gzipped(chunk), 0),
  }))
  const bare = pages.find(({ route }) => route === BARE)?.bytes
  if (!bare) throw new Error(`${BARE} is no page`)
  const within = pages.filter(({ bytes }) => bytes / bare <= GOAL)
  return [
    { what: 'first-load JavaScript of a bare page, compressed', figure: `${(bare / 1000).toFixed(0)} KB` },
    { what: `pages within ${GOAL} times that`, figure: `${within.length} of ${pages.length}` },
    ...pages
      .filter((page) => !within.includes(page))
      .sort((a, b) => b.bytes - a.bytes)
      .map(({ route, bytes }) => atMost(`JavaScript of ${route} / the bare page`, bytes / bare, GOAL)),
  ]
}

/** What the server takes for each main page, against the bare page in the same rounds. */
async function times({ cookie, homes }: Prepared, file: string): Promise<Row[]> {
  const server = await serve()
  const home = `/home/${homes[0]}`
  const paths = [
    ...[BARE, '/homes', '/rounds', '/supplies', '/homes/learning', home, `${home}/year`, `${home}/log`],
    ...[`${home}/details`, `${home}/why/f0`, `${home}/what-happened/main`, `${home}/measured`, `${home}/check`],
    ...['/check', '/check/no-heat', '/find', '/sample', '/account'],
  ]
  const ways = Object.fromEntries(
    paths.map((path) => [
      path,
      async () => {
        const { status } = await ask(`${server.address}${path}`, { headers: { cookie } })
        if (status !== 200) throw new Error(`${path} answers ${status}`)
      },
    ]),
  )
  const found = await medians(RUNS, ways)
  await server.stop()
  const sql = await sqlOfPages(file, paths, cookie)
  const bare = found[BARE] ?? Number.NaN
  const say = (path: string) => path.replace(homes[0] ?? '', '[home]')
  return [
    { what: `a bare page, ${BARE}`, figure: `${bare.toFixed(1)} ms` },
    ...paths.slice(1).map((path) => {
      const taken = found[path] ?? Number.NaN
      const { statements = 0, ms = 0 } = sql.get(path) ?? {}
      const asked = statements === 0 ? 'no SQL' : `${statements} statements, ${ms.toFixed(1)} ms by the driver alone`
      return {
        what: `${say(path)} / the bare page`,
        figure: `${(taken / bare).toFixed(2)} times, ${taken.toFixed(1)} ms; ${asked}`,
      }
    }),
  ]
}

/** Every main page against a bare one: script and server time, for a landlord with 60 homes. */
export async function pageRows(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-pages-'))
  process.env.DATA_DIR = folder
  process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
  await migrate()
  try {
    return [...scripts(), ...(await times(await prepared(), join(folder, 'plenum.db')))]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
