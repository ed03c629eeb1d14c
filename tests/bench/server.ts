import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { spawnApp } from '../support/spawn-app'

export interface BenchServer {
  address: string
  /** Milliseconds from the command to the line that it is ready. */
  startedIn: number
  /** What it holds in memory now, MB. */
  memory(): number
  stop(): Promise<void>
  /** Ends it at once, as a power cut would, and waits until it is gone. */
  kill(): Promise<void>
}

/** The built app in a process of its own, as `npm start` starts it, on the data of this process's environment. */
export async function serve(env: Record<string, string> = {}, root?: string): Promise<BenchServer> {
  const began = performance.now()
  const app = await spawnApp({ env: { ...process.env, HOST: '127.0.0.1', PORT: '0', PUBLIC_URL: '', ...env }, root })
  const status = `/proc/${app.process.pid}/status`
  return {
    address: app.address,
    startedIn: performance.now() - began,
    memory: () => Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(status, 'utf8'))?.[1]) / 1000,
    async stop() {
      await app.end()
    },
    async kill() {
      const over = once(app.process, 'exit')
      app.process.kill('SIGKILL')
      await over
    },
  }
}
