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
import { nthRecord, recordHeaders } from './one-record'
import { type BenchServer, serve } from './server'
import type { Row } from './table'

const SECONDS = Number(process.env.LOAD_SECONDS || 120)
const CONNECTIONS = 8

interface Taken {
  /** Milliseconds of each answer. */
  times: number[]
  /** Answers that say something went wrong, by what was asked. */
  wrong: Map<string, number>
  recorded: number
  seconds: number
}

/** Reads, records, feeds and walks the guide from several connections at once. */
async function load(server: BenchServer, { cookie, feed, homes }: Prepared): Promise<Taken> {
  const taken: Taken = { times: [], wrong: new Map(), recorded: 0, seconds: 0 }
  let number = 0
  const get = (path: () => string): autocannon.Request => ({
    method: 'GET',
    setupRequest: (request) => ({ ...request, path: path(), headers: { ...request.headers, cookie } }),
    onResponse: (status) => count(status, 'GET', [200, 304]),
  })
  const anyHome = () => homes[number++ % homes.length] as string
  const record: autocannon.Request = {
    method: 'POST',
    path: '/homes/record/kept',
    setupRequest: (request) => {
      const { body } = nthRecord(homes, number++)
      return { ...request, body, headers: { ...request.headers, ...recordHeaders(cookie, server.address) } }
    },
    onResponse: (status) => {
      if (status === 200) taken.recorded++
      count(status, 'POST /homes/record/kept', [200])
    },
  }
  function count(status: number, what: string, fine: number[]): void {
    if (!fine.includes(status)) taken.wrong.set(`${what} ${status}`, (taken.wrong.get(`${what} ${status}`) ?? 0) + 1)
  }
  const options: autocannon.Options = {
    url: server.address,
    connections: CONNECTIONS,
    duration: SECONDS,
    timeout: 30,
    requests: [
      get(() => '/homes'),
      get(() => `/home/${anyHome()}`),
      record,
      get(() => `/home/${anyHome()}/year`),
      get(() => feed),
      get(() => '/check/no-heat'),
      record,
      get(() => '/find'),
    ],
  }
  const result = await new Promise<autocannon.Result>((resolve, reject) => {
    // Called back, it gives the run itself, which tells of every answer; awaited, only the sums.
    const run = autocannon(options, (error, sums) => (error ? reject(error) : resolve(sums)))
    run.on('response', (_client, _status, _bytes, time) => taken.times.push(time))
  })
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
  const sorted = taken.times.toSorted((a, b) => a - b)
  const at = (share: number) => `${(sorted[Math.floor(share * sorted.length)] ?? 0).toFixed(0)} ms`
  const wrong = [...taken.wrong].map(([what, count]) => `${what}: ${count}`).join(', ')
  return [
    {
      what: `${kind}: mixed requests for ${taken.seconds.toFixed(0)} s, ${CONNECTIONS} connections`,
      figure: `${(taken.times.length / taken.seconds).toFixed(0)} a second; p50 ${at(0.5)}, p95 ${at(0.95)}, p99 ${at(0.99)}`,
    },
    { what: `${kind}: errors`, figure: wrong || 'none', goal: 'none', meets: wrong === '' },
    {
      what: `${kind}: records confirmed and kept`,
      figure: `${taken.recorded} and ${records}`,
      // Those that were on their way when the time was over may be kept without the answer having been read.
      goal: `none lost, at most ${CONNECTIONS} more`,
      meets: taken.recorded > 0 && records - taken.recorded >= 0 && records - taken.recorded <= CONNECTIONS,
    },
    { what: `${kind}: memory at rest, under load`, figure: `${atRest.toFixed(0)} MB, ${underLoad.toFixed(0)} MB` },
    { what: `${kind}: start on existing data, nothing to build`, figure: `${(server.startedIn / 1000).toFixed(1)} s` },
  ]
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
