import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { createInterface } from 'node:readline'
import { expect } from 'vitest'

/** A real process that runs a file of tests/support/children, and the lines it said. */
export interface Child {
  process: ChildProcess
  lines: string[]
  /** Resolves when it has said a line that begins so. */
  said(start: string): Promise<void>
  /** Resolves with the exit code when it is over, null where it was killed. */
  over: Promise<number | null>
}

/** Starts a child; its environment is this process's and what is given. */
export function startChild(name: string, args: string[] = [], env: Record<string, string> = {}): Child {
  const file = `tests/support/children/${name}.ts`
  const child = spawn(process.execPath, ['--import', 'tsx', file, ...args], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const lines: string[] = []
  const waiting: { start: string; resolve: () => void }[] = []
  createInterface({ input: child.stdout }).on('line', (line) => {
    lines.push(line)
    for (const { start, resolve } of waiting) if (line.startsWith(start)) resolve()
  })
  const over = once(child, 'close').then(([code]) => code as number | null)
  return {
    process: child,
    lines,
    over,
    said: (start) => {
      const heard = new Promise<void>((resolve) => waiting.push({ start, resolve }))
      return lines.some((line) => line.startsWith(start)) ? Promise.resolve() : heard
    },
  }
}

/** The names of what a child said was done: what was confirmed to it. */
export function confirmedTo({ lines }: Child): string[] {
  return lines.filter((line) => line.startsWith('done ')).map((line) => line.slice(5))
}

/** Waits until the child has begun and some milliseconds more, then kills it at once, as a power cut would. */
export async function killAfter(child: Child, milliseconds: number): Promise<void> {
  await child.said('begin')
  await new Promise((resolve) => setTimeout(resolve, milliseconds))
  child.process.kill('SIGKILL')
  await child.over
}

/** How many milliseconds a child takes from its beginning to its end, for kills that are to be within it on any machine. */
export async function wholeTime(child: Child): Promise<number> {
  await child.said('begin')
  const begun = performance.now()
  expect(await child.over).toBe(0)
  return performance.now() - begun
}
