import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT } from '@/lib/cli/root.mjs'

export interface BenchServer {
  address: string
  /** Milliseconds from the command to the line that it is ready. */
  startedIn: number
  /** What it holds in memory now, MB. */
  memory(): number
  output(): string
  stop(): Promise<void>
}

/** The built app in a process of its own, as `npm start` starts it, on the data of this process's environment. */
export async function serve(env: Record<string, string> = {}): Promise<BenchServer> {
  const began = performance.now()
  const child = spawn(process.execPath, [join(ROOT, 'lib/cli/run.mjs'), 'start'], {
    cwd: ROOT,
    env: { ...process.env, NODE_ENV: 'production', HOST: '127.0.0.1', PORT: '0', PUBLIC_URL: '', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const kill = () => child.kill('SIGKILL')
  process.once('exit', kill)
  const ended = once(child, 'exit')
  let text = ''
  const ready = new Promise<string>((resolve) => {
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (part) => {
        text += part
        const found = /^Plenum is ready\. Open (\S+)$/m.exec(text)?.[1]
        if (found) resolve(found)
      })
  })
  const address = await Promise.race([ready, ended.then(() => undefined)])
  if (!address) throw new Error(`the app did not start:\n${text}`)
  return {
    address,
    startedIn: performance.now() - began,
    memory: () => Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))?.[1]) / 1000,
    output: () => text,
    async stop() {
      child.kill('SIGTERM')
      await ended
      process.off('exit', kill)
    },
  }
}
