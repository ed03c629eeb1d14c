import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { ROOT } from '@/lib/cli/root.mjs'
import { ask } from '../support/web-form'
import { serve } from './server'
import type { Row } from './table'

/** `npm start` in a fresh clone of what is committed, as a stranger does it; then again, with nothing changed. */
export async function startRows(): Promise<Row[]> {
  const place = mkdtempSync(join(tmpdir(), 'plenum-clone-'))
  const clone = join(place, 'plenum')
  try {
    execFileSync('git', ['clone', '--quiet', ROOT, clone])
    const first = await start(clone, place)
    const second = await start(clone, place)
    return [
      {
        what: 'fresh clone: from `npm start` to ready, install and build included',
        figure: `${first.seconds.toFixed(0)} s`,
      },
      { what: 'the same again, nothing changed', figure: `${second.seconds.toFixed(1)} s` },
      { what: 'its first page', figure: `${second.page.toFixed(0)} ms` },
      { what: 'memory at rest', figure: `${second.memory.toFixed(0)} MB` },
    ]
  } finally {
    rmSync(place, { recursive: true, force: true })
  }
}

async function start(root: string, place: string): Promise<{ seconds: number; page: number; memory: number }> {
  const server = await serve({ DATA_DIR: join(place, 'data'), DATABASE_URL: '' }, root)
  const began = performance.now()
  const { status } = await ask(server.address)
  const page = performance.now() - began
  if (status !== 200) throw new Error(`the first page answers ${status}`)
  await pause(3000)
  const memory = server.memory()
  await server.stop()
  return { seconds: server.startedIn / 1000, page, memory }
}
