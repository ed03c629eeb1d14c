import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { ROOT } from '@/lib/cli/root.mjs'

export interface SpawnedApp {
  address: string
  process: ChildProcess
  /** Everything it has printed so far, both streams. */
  output(): string
  /** Ends it by SIGTERM and waits. Gives the exit status. */
  end(): Promise<number | null>
}

/** Starts the built app as `npm start` does, on a free port of this machine, and waits until it is ready. */
export async function spawnApp({
  env,
  uid,
  root = ROOT,
}: {
  env: NodeJS.ProcessEnv
  uid?: number | undefined
  /** Another checkout than this one. */
  root?: string | undefined
}): Promise<SpawnedApp> {
  const child = spawn(process.execPath, [join(root, 'lib/cli/run.mjs'), 'start'], {
    cwd: root,
    env: { ...env, NODE_ENV: 'production' },
    stdio: ['ignore', 'pipe', 'pipe'],
    uid,
  })
  // A run that ends by any way takes its servers along.
  const kill = () => child.kill('SIGKILL')
  process.once('exit', kill)
  const ended = once(child, 'exit').then(([status]) => {
    process.off('exit', kill)
    return status as number | null
  })
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
    process: child,
    output: () => text,
    async end() {
      child.kill('SIGTERM')
      return ended
    },
  }
}
