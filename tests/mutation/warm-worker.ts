import { type PoolOptions, type PoolWorker, ThreadsPoolWorker, type WorkerRequest } from 'vitest/node'

type Listener = (message: unknown) => void

// As many runs as a worker is kept for: what a mutant may have left behind in it ends there.
const KEPT_FOR = 200

let kept: WarmWorker | undefined
let runs = 0

/**
 * A worker that stays between the mutants, so that a mutant costs the time of its tests and not that of reading a
 * hundred modules anew. What modules keep for later must not depend on a mutant: see the cold files in `run.mjs`.
 */
class WarmWorker extends ThreadsPoolWorker {
  private config: unknown
  private readonly listeners = new Set<Listener>()

  override on(event: string, callback: Listener): void {
    if (event === 'message') this.listeners.add(callback)
    super.on(event, callback)
  }

  override send(message: WorkerRequest): void {
    const started = this.config !== undefined
    if (message.type === 'start') this.config = message.context.config
    // The worker took its configuration when it started; the names of the tests to run are in this one.
    if (message.type === 'run') Object.assign(message.context, { config: this.config })
    if (message.type === 'start' && started) this.answer('started')
    else if (message.type === 'stop') this.answer('stopped')
    else super.send(message)
  }

  override async stop(): Promise<void> {
    for (const listener of this.listeners) super.off('message', listener)
    this.listeners.clear()
  }

  end(): Promise<void> {
    return super.stop()
  }

  private answer(type: 'started' | 'stopped'): void {
    for (const listener of [...this.listeners]) listener({ type, __vitest_worker_response__: true })
  }
}

/** The worker of the last mutant, or a new one. */
export function warmWorker(options: PoolOptions): PoolWorker {
  runs += 1
  if (kept !== undefined && runs % KEPT_FOR === 0) {
    void kept.end()
    kept = undefined
  }
  kept ??= new WarmWorker(options)
  return kept
}
