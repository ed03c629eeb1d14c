import type { TestProject } from 'vitest/node'
import { startApp } from './app'
import { keepDatabase } from './postgres'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the app answers that all browser tests share; a test that writes starts its own by `startApp`. */
    appAddress: string
  }
}

export default async function serveApp(project: TestProject): Promise<() => Promise<unknown>> {
  const { postgresPort } = project.getProvidedContext()
  const app = await startApp({ databaseUrl: postgresPort ? await keepDatabase(postgresPort, 'shared') : null })
  project.provide('appAddress', app.address)
  return app.stop
}
