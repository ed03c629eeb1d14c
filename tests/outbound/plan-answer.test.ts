import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { type PlannedHome, plannedHome } from '@/lib/core/joined-plan'
import { plan } from '@/lib/core/plan'
import { planJson } from '@/lib/core/plan-json'
import { Profiles } from '@/lib/core/profile'
import type { Viewer } from '@/lib/core/viewer'
import { closeHousehold } from '@/lib/data/closing'
import { exportHouseholds } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { saveInvitation, takeInvitation } from '@/lib/data/invitations'
import { keepPlans } from '@/lib/data/kept-plans'
import { putOff } from '@/lib/data/put-offs'
import { addRecord } from '@/lib/data/records'
import { planSchema } from '@/lib/forms/plan-schema'
import { answerPlan } from '@/lib/outbound/plan-answer'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { fortyUnits } from '../support/many-units'

freshDatabase()
process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'

let made = 0
const profiles = new Profiles(tables.figures)
const source = {
  parts: keepPlans<PlannedHome>(
    ({ household }, on) => {
      made++
      return plannedHome(household, tables, on, profiles)
    },
    { version: 1 },
  ),
  figures: tables.figures,
  version: 1,
}

function ask(viewer: Viewer, headers: Record<string, string> = {}, method = 'GET'): Promise<Response> {
  return answerPlan(new Request('http://localhost:3000/api/v1/plan', { headers, method }), viewer, source)
}

function commandLine(households: Parameters<typeof plan>[0]): string {
  return [...planJson(plan(households, tables, '2026-11-25'))].join('')
}

test('it is the JSON of the command line for the exported homes, byte for byte', async () => {
  const owner = await someone('ann')
  const homes = [...fortyUnits().map((home) => ({ ...home, timeZone: 'America/New_York' })), aHousehold()]
  await importHouseholds(as(owner), homes)
  const answer = await ask(owner)
  expect(answer.headers.get('content-type')).toBe('application/json; charset=utf-8')
  expect(answer.headers.get('cache-control')).toContain('private')
  const text = await answer.text()
  expect(text).toBe(commandLine(await exportHouseholds(owner)))
  expect(planSchema.parse(JSON.parse(text)).households).toHaveLength(41)
  const before = made
  expect(await (await ask(owner)).text()).toBe(text)
  expect(made, 'what is kept is not planned again').toBe(before)
})

test('an unchanged account is answered 304 and nothing is planned, also by a process that never planned', async () => {
  const owner = await someone('ben')
  await importHouseholds(as(owner), [aHousehold(), aHousehold({ id: 'b', name: 'B' })])
  const tag = (await ask(owner)).headers.get('etag') ?? ''
  expect(tag).toMatch(/^"[\w-]{32}"$/)
  const before = made
  const none = () => {
    throw new Error('planned')
  }
  const cold = { ...source, parts: keepPlans<PlannedHome>(none, { version: 1 }) }
  for (const asked of [tag, `W/${tag}`, `"x", ${tag}`, '*']) {
    const request = new Request('http://localhost:3000/', { headers: { 'if-none-match': asked } })
    const again = await answerPlan(request, owner, cold)
    expect([again.status, again.headers.get('etag'), await again.text()]).toEqual([304, tag, ''])
  }
  expect(made).toBe(before)
  expect((await ask(owner, { 'if-none-match': '"another"' })).status).toBe(200)
  const head = await ask(owner, {}, 'HEAD')
  expect([head.status, head.headers.get('etag'), await head.text()]).toEqual([200, tag, ''])
})

test('a record, a put-off, another home, a new day and another model each make another answer', async () => {
  const owner = await someone('cleo')
  const imported = await importHouseholds(as(owner), [aHousehold({ since: '2026-09-01' })])
  const id = imported.ok ? (imported.ids[0] ?? '') : ''
  let tag = ''
  async function changed(): Promise<boolean> {
    const answer = await ask(owner, { 'if-none-match': tag })
    tag = answer.headers.get('etag') ?? ''
    return answer.status === 200
  }
  expect(await changed()).toBe(true)
  expect(await changed()).toBe(false)
  await addRecord(as(owner), id, { on: '2026-11-25', kind: 'filter-changed', filter: 'hall' })
  expect(await changed()).toBe(true)
  await putOff(as(owner), id, { task: 'change-filter', subject: 'hall', until: '2027-01-05', today: '2026-11-25' })
  expect(await changed()).toBe(true)
  await importHouseholds(as(owner), [aHousehold({ id: 'second' })])
  expect(await changed()).toBe(true)
  expect(await changed()).toBe(false)
  process.env.PLENUM_NOW = '2026-11-26T18:00:00Z'
  expect(await changed()).toBe(true)
  process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'
  expect(await changed()).toBe(true)
  const other = await answerPlan(new Request('http://localhost:3000/', { headers: { 'if-none-match': tag } }), owner, {
    ...source,
    version: 2,
  })
  expect(other.status).toBe(200)
})

test('homes of two owners under one id are told apart as in an export; closed homes and those of others stay out', async () => {
  const [owner, other] = [await someone('dan'), await someone('eve')]
  await importHouseholds(as(owner), [aHousehold({ name: 'Mine' })])
  const theirs = await importHouseholds(as(other), [aHousehold({ name: 'Shared' }), aHousehold({ id: 'hidden' })])
  const household = theirs.ok ? (theirs.ids[0] ?? '') : ''
  const invited = { kind: 'member', householdId: household, role: 'adult', tokenHash: 'x' } as const
  await saveInvitation(as(other), { ...invited, expiresAt: '2027-01-01T00:00:00.000Z' })
  await takeInvitation(as(owner), 'x')
  const read = async () => planSchema.parse(await (await ask(owner)).json())
  const first = await read()
  const exported = await exportHouseholds(owner)
  expect(first.households.map(({ id }) => id)).toEqual(exported.map(({ id }) => id))
  expect(new Set(first.households.map(({ id }) => id)).size).toBe(2)
  expect(new Set(first.rounds.flatMap(({ items }) => items.map((item) => item.household))).size).toBe(2)
  await closeHousehold(as(other), household, '2026-11-25')
  expect((await read()).households).toHaveLength(1)
})

test('an account without a home has a plan of nothing, today', async () => {
  const empty = await (await ask(await someone('fay'))).json()
  expect(empty).toEqual({ on: '2026-11-25', households: [], supplies: [], rounds: [] })
  expect(planSchema.safeParse(empty).success).toBe(true)
})
