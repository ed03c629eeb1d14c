import type { TestProject } from 'vitest/node'
import { startPostgres } from './postgres'

declare module 'vitest' {
  export interface ProvidedContext {
    /** The port of the private PostgreSQL server; only in the projects that run on one. */
    postgresPort: number | undefined
  }
}

/** One server for all tests of a project, each of which has databases of its own on it. */
export default async function servePostgres(project: TestProject): Promise<() => void> {
  const server = await startPostgres()
  project.provide('postgresPort', server.port)
  return () => server.remove()
}
