import { join } from 'node:path'
import { expect, test } from 'vitest'
import { ask, closeDatabase } from '@/lib/data/connection'
import { exportHouseholds, getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { moveDatabase } from '@/lib/data/move'
import { databaseUrl } from '@/lib/data/place'
import { putOff } from '@/lib/data/put-offs'
import { addRecord } from '@/lib/data/records'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

const place = freshDatabase()
const TASKS = ['look-at-filter', 'change-filter', 'wash-filter'] as const

test('what has one place in its list, or waits until one day, stands in one order in both kinds of database', async () => {
  const ann = await someone('ann')
  const homes = Array.from({ length: 12 }, (_, i) => aHousehold({ id: `h-${i}`, records: [] }))
  const imported = await importHouseholds(as(ann), homes)
  const ids = imported.ok ? imported.ids : []
  for (const home of ids) {
    for (const day of ['02', '04', '03', '01'])
      await addRecord(as(ann), home, { on: `2026-11-${day}`, kind: 'filter-looked', filter: 'hall' })
    for (const task of TASKS)
      await putOff(as(ann), home, { task, subject: 'hall', until: '2026-12-24', today: '2026-11-25' })
  }
  // No door leaves entries so; a move has to bear rows that an older program or somebody's own hand left.
  await ask((db) => db.entry.updateMany({ data: { position: 1 } }))
  const from = databaseUrl()
  const to = `file:${join(place.folder, 'moved', 'plenum.db')}`
  const all = async () => [
    await exportHouseholds({ kind: 'system' }),
    await Promise.all(ids.map(async (id) => (await getHousehold(ann, id)).putOffs.map(({ task }) => task))),
  ]
  const before = await all()
  await closeDatabase()
  expect((await moveDatabase({ from, to })).homes).toBe(12)
  process.env.DATABASE_URL = to
  try {
    expect(await all()).toStrictEqual(before)
  } finally {
    await closeDatabase()
    process.env.DATABASE_URL = from
  }
})
