import { beforeEach, expect, test } from 'vitest'
import type { LogRecord } from '@/lib/core/household'
import type { Viewer } from '@/lib/core/viewer'
import { closeHousehold } from '@/lib/data/closing'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { saveInvitation, takeInvitation } from '@/lib/data/invitations'
import { listLog } from '@/lib/data/log'
import { removeMember } from '@/lib/data/members'
import { recordTogether, undoTogether } from '@/lib/data/record-together'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

const CHANGED: LogRecord = { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' }
let ann: Viewer
let bea: Viewer
let homes: string[]
let number = 0

beforeEach(async () => {
  ann = await someone(`ann-${++number}`)
  const other = await someone(`bea-${number}`)
  bea = other
  const imported = await importHouseholds(
    as(ann),
    ['a', 'b', 'c'].map((id) => aHousehold({ id, records: [] })),
  )
  homes = imported.ok ? imported.ids : []
  for (const [i, householdId] of homes.entries()) {
    const tokenHash = `${number} ${i}`
    await saveInvitation(as(ann), {
      ...{ kind: 'member', role: 'manager', householdId, tokenHash },
      expiresAt: '2027-01-01T00:00:00.000Z',
    })
    await takeInvitation(as(bea), tokenHash)
  }
})

const all = (key: string | null = null) => homes.map((householdId) => ({ householdId, record: CHANGED, key }))
const outcomes = (done: Awaited<ReturnType<typeof recordTogether>>) =>
  done.ok ? done.outcomes.map((o) => o.outcome) : done.faults
const logs = async () => (await Promise.all(homes.map((home) => listLog(ann, home)))).map((log) => log.length)

test('several homes are recorded as one, and taken back as one', async () => {
  const done = await recordTogether(as(ann), all())
  expect(outcomes(done)).toEqual(['recorded', 'recorded', 'recorded'])
  const entries = done.ok ? done.outcomes.map(({ householdId, entry }) => ({ householdId, entryId: entry.id })) : []
  expect((await getHousehold(ann, homes[2] ?? '')).household.records).toEqual([CHANGED])
  expect((await undoTogether(as(bea), entries)).ok).toBe(true)
  expect((await getHousehold(ann, homes[2] ?? '')).household.records).toEqual([])
})

test('of two managers who record the same at once there is one record, and the later is told by whom', async () => {
  const [first, second] = await Promise.all([recordTogether(as(ann), all()), recordTogether(as(bea), all())])
  expect([outcomes(first), outcomes(second)].map((o) => o[0]).sort()).toEqual(['already', 'recorded'])
  expect(await logs()).toEqual([1, 1, 1])
  const late = [first, second].find((done) => done.ok && done.outcomes[0]?.outcome === 'already')
  const names = late?.ok ? late.outcomes.map(({ entry }) => entry.by.name) : []
  expect(new Set(names).size).toBe(1)
})

test('the same page sent twice is one record each, also where its day was changed in between', async () => {
  await recordTogether(as(ann), all('page-1'))
  const again = homes.map((householdId) => ({ householdId, record: { ...CHANGED, on: '2026-11-21' }, key: 'page-1' }))
  expect(outcomes(await recordTogether(as(ann), again))).toEqual(['already', 'already', 'already'])
  expect(await logs()).toEqual([1, 1, 1])
})

test('who lost a home meanwhile records nothing anywhere, and every reason is told at once', async () => {
  await removeMember(as(ann), homes[0] ?? '', (bea as { accountId: string }).accountId)
  await closeHousehold(as(ann), homes[1] ?? '', '2026-11-25')
  const before = await getHousehold(ann, homes[2] ?? '')
  const refused = await recordTogether(as(bea), all())
  expect(refused.ok ? [] : refused.faults.map(({ path }) => path)).toEqual([homes[0], homes[1]])
  expect(await logs()).toEqual([0, 0, 0])
  expect(await getHousehold(ann, homes[2] ?? '')).toEqual(before)
})

test('a filter that is gone keeps all of it from being recorded', async () => {
  const gone = { householdId: homes[1] ?? '', record: { ...CHANGED, filter: 'attic' }, key: null }
  expect((await recordTogether(as(ann), [...all(), gone])).ok).toBe(false)
  expect(await logs()).toEqual([0, 0, 0])
})

test('nothing chosen is said, not recorded', async () => {
  expect(await recordTogether(as(ann), [])).toMatchObject({ ok: false })
})
