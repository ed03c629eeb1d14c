import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { FIRST_DAY, LAST_DAY } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import { importHouseholds } from '@/lib/data/import'
import { keepPlans } from '@/lib/data/kept-plans'
import { addRecord } from '@/lib/data/records'
import { parseHouseholdFile, writeHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

test('only what changed is planned again, and a new day plans all', async () => {
  const ann = await someone('ann')
  const imported = await importHouseholds(
    as(ann),
    ['a', 'b', 'c'].map((id) => aHousehold({ id, name: id })),
  )
  const ids = imported.ok ? imported.ids : []
  const planned: string[] = []
  const plans = keepPlans(
    ({ household, revision }, on) => `${planned.push(household.id) && household.id} ${revision} ${on}`,
    { version: 1 },
  )
  const list = async (on: string) => (await plans.list(ann, () => on)).map(({ plan }) => plan)

  expect(await list('2026-11-25')).toEqual(['a 1 2026-11-25', 'b 1 2026-11-25', 'c 1 2026-11-25'])
  await list('2026-11-25')
  expect(planned.splice(0)).toHaveLength(3)
  await addRecord(as(ann), ids[1] ?? '', { on: '2026-11-20', kind: 'filter-looked', filter: 'hall' })
  expect(await list('2026-11-25')).toEqual(['a 1 2026-11-25', 'b 2 2026-11-25', 'c 1 2026-11-25'])
  expect(planned.splice(0)).toEqual(['b'])
  await list('2026-11-26')
  expect(planned).toHaveLength(3)
})

test('no more than the limit is kept, and the answer is whole all the same', async () => {
  const ben = await someone('ben')
  await importHouseholds(
    as(ben),
    ['a', 'b', 'c'].map((id) => aHousehold({ id, name: id })),
  )
  let planned = 0
  const plans = keepPlans(({ household }) => `${household.id}${planned++ < 0}`, { version: 1, limit: 2 })
  expect(await plans.list(ben, () => '2026-11-25')).toHaveLength(3)
  expect(await plans.list(ben, () => '2026-11-25')).toHaveLength(3)
  expect(planned).toBeGreaterThan(3)
})

test('a stranger gets no plan that was kept for someone else', async () => {
  const plans = keepPlans(({ household }) => household.id, { version: 1 })
  await plans.list({ kind: 'system' }, () => '2026-11-25')
  expect(await plans.list(await someone('stranger'), () => '2026-11-25')).toEqual([])
})

test('a home with days at the edge of what files may name keeps no list from being made', async () => {
  const cas = await someone('cas')
  const devices: Household['devices'] = [{ id: 'smoke', kind: 'smoke-alarm', made: LAST_DAY }]
  const service = { on: FIRST_DAY, kind: 'service-done', task: 'heating-service', subject: 'main' } as const
  const homes = [
    aHousehold({ id: 'a' }),
    aHousehold({ id: 'b', devices }),
    aHousehold({ id: 'c', records: [service] }),
    aHousehold({ id: 'd', since: LAST_DAY, records: [] }),
  ]
  const read = parseHouseholdFile(writeHouseholdFile(homes), '2026-11-25')
  expect(read.ok && (await importHouseholds(as(cas), read.households)).ok).toBe(true)
  const plans = keepPlans((stored, on) => planHousehold(stored.household, tables, on), { version: 1 })
  expect(await plans.list(cas, () => '2026-11-25')).toHaveLength(4)
})
