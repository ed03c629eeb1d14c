import type { ChildProcess } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { inject } from 'vitest'
import { keepDatabase } from './postgres'
import { spawnApp } from './spawn-app'

export interface RunningApp {
  /** Where it answers, `http://localhost:41234`. */
  address: string
  /** Its own folder: `DATA_DIR`, with the database in it unless that is on a server. */
  folder: string
  databaseUrl: string
  process: ChildProcess
  /** Everything it has printed so far, both streams. */
  output(): string
  /** Ends it by SIGTERM, waits, and removes the folder unless it was handed in. Gives the exit status. */
  stop(): Promise<number | null>
}

// On the project's own kind of database; a second start on one folder finds what the first left.
async function databaseFor(folder: string, given: string | null | undefined): Promise<string> {
  if (given) return given
  const port = given === null ? undefined : inject('postgresPort')
  return port ? keepDatabase(port, basename(folder)) : `file:${join(folder, 'plenum.db')}`
}

/**
 * Starts the built app as `npm start` does, on a free port of this machine, with a data folder and a database of its
 * own; builds first if the build is stale.
 * @param options.env added to the environment; `PLENUM_NOW` holds its clock still
 * @param options.folder an existing data folder to start on, for a second start
 * @param options.databaseUrl another database than one of its own; null: a file in the folder, and the project is not asked
 * @param options.uid the account it runs as, where the tests' own is not bound by what a file permits
 */
export async function startApp(
  options: { env?: Record<string, string>; folder?: string; uid?: number; databaseUrl?: string | null } = {},
): Promise<RunningApp> {
  const folder = options.folder ?? (await mkdtemp(join(tmpdir(), 'plenum-app-')))
  const databaseUrl = await databaseFor(folder, options.databaseUrl)
  const { npm_lifecycle_event: _, ...inherited } = process.env
  const app = await spawnApp({
    env: {
      ...inherited,
      HOST: '127.0.0.1',
      PORT: '0',
      PUBLIC_URL: '',
      DATA_DIR: folder,
      DATABASE_URL: databaseUrl,
      ...options.env,
    },
    uid: options.uid,
  })
  return {
    address: app.address,
    folder,
    databaseUrl,
    process: app.process,
    output: app.output,
    async stop() {
      const status = await app.end()
      if (!options.folder) await rm(folder, { recursive: true, force: true })
      return status
    },
  }
}
