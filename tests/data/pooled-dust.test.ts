import { beforeEach, describe, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays } from '@/lib/core/day'
import type { Household, Light, LogRecord } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import { pooledHomes } from '@/lib/core/pooled-homes'
import type { Viewer } from '@/lib/core/viewer'
import { getHousehold, listHomes, listHouseholds } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { endPooling, findPooling, listPoolsDue, poolDust, startPooling } from '@/lib/data/pooled-dust'
import { saveHousehold } from '@/lib/data/save-household'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

const ON = '2026-11-25'
let ann: Extract<Viewer, { kind: 'account' }>
let number = 0
const learn = (homes: readonly Household[]) => pooledHomes(homes, tables, ON)

/** Homes at whose filters was seen what is given; none where it is null. */
async function bring(viewer: Viewer, seen: (Light | null)[]): Promise<string[]> {
  const homes = seen.map((light, i) => {
    const changed: LogRecord = { on: addDays(ON, -60), kind: 'filter-changed', filter: 'hall' }
    const looked: LogRecord[] = light ? [{ on: addDays(ON, -20), kind: 'filter-looked', filter: 'hall', light }] : []
    return aHousehold({
      id: `unit-${i}`,
      name: `Unit ${i}`,
      dustEvents: [],
      readings: [],
      records: [changed, ...looked],
    })
  })
  const imported = await importHouseholds(as(viewer), homes)
  return imported.ok ? imported.ids : []
}

const startsOf = async (viewer: Viewer) =>
  (await listHouseholds(viewer)).map(({ household }) => household.systems[0]?.dustStart?.median ?? null)
const revisions = async (viewer: Viewer) => (await listHomes(viewer)).map(({ revision }) => revision)

beforeEach(async () => {
  ann = await someone(`ann-${++number}`)
})

describe('homes of one owner', () => {
  test('learn from each other once that is asked for, and the day of one nobody looked at moves', async () => {
    const [unseen = ''] = await bring(ann, [null, 'dark', 'dark', 'dark', 'dark'])
    const before = planHousehold((await getHousehold(ann, unseen)).household, tables, ON).items
    expect(await poolDust(ann.accountId, ON, learn), 'not asked for').toBe(0)
    await startPooling(ann.accountId)
    expect(await listPoolsDue(ON)).toContain(ann.accountId)
    expect(await poolDust(ann.accountId, ON, learn)).toBe(5)
    expect(await listPoolsDue(ON)).not.toContain(ann.accountId)
    expect(await findPooling(ann.accountId)).toEqual({ pools: true, on: ON })
    const told = (await getHousehold(ann, unseen)).household
    expect(told.systems[0]?.dustStart).toMatchObject({ systems: 4 })
    expect(told.systems[0]?.dustStart?.median).toBeGreaterThan(1.1)
    const after = planHousehold(told, tables, ON).items
    const due = (items: typeof after) => items.find(({ task }) => task === 'change-filter')?.due as string
    expect(due(after) < due(before)).toBe(true)
    expect(
      after
        .find(({ task }) => task === 'change-filter')
        ?.reasons.map(({ say }) => say)
        .join(' '),
    ).toContain('starts from looks at 4 other systems of the same owner')
  })

  test('are learnt from once a day, and what did not move is not written again', async () => {
    await bring(ann, [null, 'dark', 'half'])
    await startPooling(ann.accountId)
    await poolDust(ann.accountId, ON, learn)
    const once = await revisions(ann)
    expect(await poolDust(ann.accountId, ON, learn)).toBe(0)
    expect(await poolDust(ann.accountId, addDays(ON, 1), learn)).toBe(0)
    expect(await revisions(ann)).toEqual(once)
  })

  test('that learnt under a clock that was ahead learn again under the right one, once a day', async () => {
    await bring(ann, [null, 'dark', 'half'])
    await startPooling(ann.accountId)
    await poolDust(ann.accountId, '2031-01-01', (homes) => [...homes])
    expect(await startsOf(ann)).toEqual([null, null, null])
    expect(await listPoolsDue(ON)).toContain(ann.accountId)
    expect(await poolDust(ann.accountId, ON, learn)).toBe(3)
    expect(await findPooling(ann.accountId)).toEqual({ pools: true, on: ON })
    expect(await listPoolsDue(ON)).not.toContain(ann.accountId)
  })

  test('start from the world again when it is ended', async () => {
    await bring(ann, [null, 'dark', 'dark'])
    await startPooling(ann.accountId)
    await poolDust(ann.accountId, ON, learn)
    expect(await startsOf(ann)).not.toContain(null)
    expect(await endPooling(ann.accountId)).toBe(3)
    expect(await startsOf(ann)).toEqual([null, null, null])
    expect(await endPooling(ann.accountId)).toBe(0)
    expect(await poolDust(ann.accountId, addDays(ON, 1), learn)).toBe(0)
  })

  test('never learn from homes of somebody else', async () => {
    const bea = await someone(`bea-${number}`)
    await bring(bea, ['dark', 'dark', 'dark'])
    await bring(ann, [null, 'clear', null])
    await startPooling(ann.accountId)
    await poolDust(ann.accountId, ON, learn)
    expect(await startsOf(bea)).toEqual([null, null, null])
    for (const median of await startsOf(ann)) expect(median ?? 1).toBeLessThanOrEqual(1)
  })

  test('of several processes on one day one writes', async () => {
    await bring(ann, [null, 'dark', 'dark'])
    await startPooling(ann.accountId)
    const before = await revisions(ann)
    await Promise.all([1, 2, 3].map(() => poolDust(ann.accountId, ON, learn)))
    expect(await revisions(ann)).toEqual(before.map((revision) => revision + 1))
  })

  test('whose description is open in a form are not refused: the start is no part of what a person changes', async () => {
    const [id = ''] = await bring(ann, [null, 'dark'])
    const open = await getHousehold(ann, id)
    await startPooling(ann.accountId)
    await poolDust(ann.accountId, ON, learn)
    const now = await getHousehold(ann, id)
    const changed = { ...now.household, people: 5 }
    const saved = await saveHousehold(as(ann), id, changed, open.revision)
    expect(saved.ok).toBe(true)
    expect((await getHousehold(ann, id)).household.systems[0]?.dustStart).toEqual(now.household.systems[0]?.dustStart)
  })
})
