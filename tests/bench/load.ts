import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import autocannon from 'autocannon'
import { closeDatabase } from '@/lib/data/connection'
import { listHouseholds } from '@/lib/data/households'
import { prepareDatabase } from '@/lib/data/prepare'
import { createDatabase, startPostgres } from '../support/postgres'
import { type Prepared, prepared } from './a-landlord'
import { BROUGHT, broughtHomes } from './one-brought'
import { nthRecord, recordHeaders } from './one-record'
import { type BenchServer, serve } from './server'
import type { Row } from './table'

const SECONDS = Number(process.env.LOAD_SECONDS || 120)
const CONNECTIONS = 8

interface Taken {
  /** Milliseconds of each answer, by what was asked. */
  times: Map<string, number[]>
  /** Answers that say something went wrong. */
  wrong: Map<string, number>
  recorded: number
  brought: number
  seconds: number
}

/** Reads, records, brings homes, feeds and walks the guide from several connections at once. */
async function load(server: BenchServer, { cookie, feed, homes }: Prepared): Promise<Taken> {
  const taken: Taken = { times: new Map(), wrong: new Map(), recorded: 0, brought: 0, seconds: 0 }
  const bring = await broughtHomes(server.address, cookie)
  let number = 0
  function asked(
    what: string,
    request: () => Partial<autocannon.Request>,
    { fine, done }: { fine: number; done?: () => void } = { fine: 200 },
  ): autocannon.Request {
    const times = taken.times.get(what) ?? []
    taken.times.set(what, times)
    return {
      setupRequest(given, context: { began?: number }) {
        context.began = performance.now()
        const { headers, ...own } = request()
        return { ...given, ...own, headers: { ...given.headers, cookie, ...headers } }
      },
      onResponse(status, _body, context: { began?: number }) {
        times.push(performance.now() - (context.began ?? Number.NaN))
        if (status === fine) done?.()
        else taken.wrong.set(`${what} ${status}`, (taken.wrong.get(`${what} ${status}`) ?? 0) + 1)
      },
    }
  }
  const anyHome = () => homes[number++ % homes.length] as string
  const record = asked(
    'a record',
    () => ({
      method: 'POST',
      path: '/homes/record/kept',
      body: nthRecord(homes, number++).body,
      headers: recordHeaders(cookie, server.address),
    }),
    { fine: 200, done: () => taken.recorded++ },
  )
  const options: autocannon.Options = {
    url: server.address,
    connections: CONNECTIONS,
    duration: SECONDS,
    timeout: 30,
    requests: [
      asked('all homes', () => ({ path: '/homes' })),
      asked('a home', () => ({ path: `/home/${anyHome()}` })),
      record,
      asked('a year', () => ({ path: `/home/${anyHome()}/year` })),
      asked('the calendar', () => ({ path: feed })),
      asked('the guide', () => ({ path: '/check/no-heat' })),
      record,
      asked('the finder', () => ({ path: '/find' })),
      asked('a home brought', () => bring(number++), { fine: 303, done: () => taken.brought++ }),
    ],
  }
  const result = await autocannon(options)
  taken.seconds = result.duration
  if (result.errors > 0) taken.wrong.set('no answer', result.errors)
  return taken
}

async function measure(kind: string, url: string): Promise<Row[]> {
  process.env.DATABASE_URL = url
  const problem = await prepareDatabase()
  if (problem !== null) throw new Error(problem)
  const ready = await prepared()
  const server = await serve()
  await pause(2000)
  const atRest = server.memory()
  const taken = await load(server, ready)
  const underLoad = server.memory()
  await server.stop()
  const kept = await listHouseholds(ready.viewer)
  await closeDatabase()
  const records = kept.reduce((sum, { household }) => sum + household.records.length, 0)
  const brought = kept.map(({ household }) => household.name).filter((name) => name.startsWith(BROUGHT))
  const once = new Set(brought).size
  const all = [...taken.times.values()].flat()
  const wrong = [...taken.wrong].map(([what, count]) => `${what}: ${count}`).join(', ')
  return [
    {
      what: `${kind}: mixed requests for ${taken.seconds.toFixed(0)} s, ${CONNECTIONS} connections`,
      figure: `${(all.length / taken.seconds).toFixed(0)} a second; ${spread(all, [0.5, 0.95, 0.99])}`,
    },
    ...[...taken.times].map(([what, times]) => ({ what: `${kind}: ${what}`, figure: spread(times, [0.5, 0.95]) })),
    { what: `${kind}: errors`, figure: wrong || 'none', goal: 'none', meets: wrong === '' },
    keptRow(`${kind}: records confirmed and kept`, taken.recorded, records),
    keptRow(`${kind}: homes confirmed and kept`, taken.brought, once),
    {
      what: `${kind}: homes kept twice`,
      figure: `${brought.length - once}`,
      goal: 'none',
      meets: brought.length === once,
    },
    { what: `${kind}: memory at rest, under load`, figure: `${atRest.toFixed(0)} MB, ${underLoad.toFixed(0)} MB` },
    { what: `${kind}: start on existing data, nothing to build`, figure: `${(server.startedIn / 1000).toFixed(1)} s` },
  ]
}

function spread(times: number[], shares: number[]): string {
  const sorted = times.toSorted((a, b) => a - b)
  return shares
    .map((share) => `p${100 * share} ${(sorted[Math.floor(share * sorted.length)] ?? Number.NaN).toFixed(0)} ms`)
    .join(', ')
}

// What was on its way when the time was over may be kept without its answer having been read.
function keptRow(what: string, confirmed: number, kept: number): Row {
  return {
    what,
    figure: `${confirmed} and ${kept}`,
    goal: `none lost, at most ${CONNECTIONS} more`,
    meets: confirmed > 0 && kept >= confirmed && kept - confirmed <= CONNECTIONS,
  }
}

/** The built app under a mixed load, on both kinds of database; counted afterwards. */
export async function loadRows(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-load-'))
  process.env.DATA_DIR = folder
  const rows = await measure('SQLite', `file:${join(folder, 'plenum.db')}`)
  const postgres = await startPostgres({ fsync: 'on' })
  try {
    return [...rows, ...(await measure('PostgreSQL', await createDatabase(postgres.port, 'load')))]
  } finally {
    postgres.remove()
    rmSync(folder, { recursive: true, force: true })
  }
}
