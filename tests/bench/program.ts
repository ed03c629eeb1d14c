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
import { milliseconds, type Row } from './table'

const ON = '2026-11-25'
const HOMES = 10_000
const RUNS = 9

/** A program that asks for the plan of 10,000 homes: the first time, again, and with the tag of what it has. */
export async function programRows(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-bench-'))
  process.env.DATABASE_URL = `file:${join(folder, 'plenum.db')}`
  process.env.PLENUM_NOW = `${ON}T18:00:00Z`
  migrate()
  const at = `${ON}T12:00:00.000Z`
  await createAccount({ id: 'a', email: 'a@example.org', name: 'A', passwordHash: '-', at }, async () => true)
  const viewer = { kind: 'account', accountId: 'a', name: 'A', administrator: true } as const
  await importHouseholds({ viewer, at, door: 'file' }, manyHouseholds(HOMES, ON))
  const profiles = sharedProfiles(tables)
  const { figures, version } = tables
  let planned = 0
  const parts = keepPlans<PlannedHome>(
    ({ household }, day) => {
      planned++
      return plannedHome(household, tables, day, profiles())
    },
    { version },
  )
  let answer = new Response()
  let bytes = 0
  async function ask(tag = ''): Promise<void> {
    const request = new Request('http://localhost/', { headers: { 'if-none-match': tag } })
    answer = await answerPlan(request, viewer, { parts, figures, version })
    bytes = (await answer.clone().arrayBuffer()).byteLength
  }
  const first = await milliseconds(() => ask())
  const again = await milliseconds(() => ask())
  const size = `${(bytes / 1e6).toFixed(0)} MB`
  const tag = answer.headers.get('etag') ?? ''
  const before = planned
  const same: number[] = []
  for (let i = 0; i < RUNS; i++) same.push(await milliseconds(() => ask(tag)))
  const statusSame = answer.status
  await closeDatabase()
  rmSync(folder, { recursive: true })
  delete process.env.PLENUM_NOW
  return [
    { what: `plan of ${HOMES} homes for a program, every plan made`, figure: `${first.toFixed(0)} ms, ${size}` },
    { what: 'the same from kept plans', figure: `${again.toFixed(0)} ms` },
    {
      what: `unchanged: answered ${statusSame}, plans made`,
      figure: `${planned - before}, in ${Math.min(...same).toFixed(0)} ms`,
      goal: '304 and 0 plans',
      meets: statusSame === 304 && planned === before,
    },
  ]
}
