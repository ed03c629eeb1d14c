import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { tables } from '@/content/tables'
import { type PlannedHome, plannedHome } from '@/lib/core/joined-plan'
import { sharedProfiles } from '@/lib/core/shared-planner'
import { createAccount } from '@/lib/data/accounts'
import { closeDatabase } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { keepPlans } from '@/lib/data/kept-plans'
import { migrate } from '@/lib/data/migrate'
import { answerPlan } from '@/lib/outbound/plan-answer'
import { manyHouseholds } from './many-households'

const HOMES = 10_000

/** A program that asks for the plan of 10,000 homes: the first time, again, and with the tag of what it has. */
export async function benchProgram(on: string): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
  migrate()
  const at = `${on}T12:00:00.000Z`
  await createAccount({ id: 'a', email: 'a@example.org', name: 'A', passwordHash: '-', at }, async () => true)
  const viewer = { kind: 'account', accountId: 'a', name: 'A', administrator: true } as const
  await importHouseholds({ viewer, at, door: 'file' }, manyHouseholds(HOMES, on))
  const profiles = sharedProfiles(tables)
  const { figures, version } = tables
  const parts = keepPlans<PlannedHome>(({ household }, day) => plannedHome(household, tables, day, profiles()), {
    version,
  })
  async function ask(tag?: string): Promise<{ ms: number; bytes: number; answer: Response }> {
    const headers: Record<string, string> = tag ? { 'if-none-match': tag } : {}
    const start = performance.now()
    const answer = await answerPlan(new Request('http://localhost/', { headers }), viewer, { parts, figures, version })
    const { byteLength } = await answer.clone().arrayBuffer()
    return { ms: performance.now() - start, bytes: byteLength, answer }
  }
  const first = await ask()
  const again = await ask()
  const tag = first.answer.headers.get('etag') ?? ''
  const same = []
  for (let i = 0; i < 9; i++) same.push((await ask(tag)).ms)
  await closeDatabase()
  rmSync(folder, { recursive: true })
  const megabytes = (first.bytes / 1e6).toFixed(0)
  return [
    `plan of ${HOMES} homes for a program, nothing kept yet: ${first.ms.toFixed(0)} ms, ${megabytes} MB`,
    `the same, plans kept: ${again.ms.toFixed(0)} ms; unchanged, 304: ${Math.min(...same).toFixed(0)} ms`,
  ]
}
