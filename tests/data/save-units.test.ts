import { expect, test } from 'vitest'
import type { Assumed } from '@/lib/core/household'
import { mergeUnit } from '@/lib/core/unit-merge'
import type { Act } from '@/lib/core/viewer'
import { closeDatabase } from '@/lib/data/connection'
import { getHousehold, listHouseholds } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { listLog } from '@/lib/data/log'
import { addRecord } from '@/lib/data/records'
import { type ChangedUnit, saveUnits } from '@/lib/data/save-units'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { killed } from '../support/kills/kill'
import { fortyUnits } from '../support/many-units'
import { faultsOfFile } from '../support/stored'

freshDatabase()

async function unitOf(act: Act, id: string, change: Partial<ChangedUnit> = {}): Promise<ChangedUnit> {
  const { revision, household, accessNote } = await getHousehold(act.viewer, id)
  return { id, revision, household, accessNote, records: [], ...change }
}

async function homeOf(name: string): Promise<{ act: Act; home: string }> {
  const act = as(await someone(name))
  const imported = await importHouseholds(act, [aHousehold()])
  return { act, home: imported.ok ? (imported.ids[0] ?? '') : '' }
}

test('a changed unit stands as it was given, its log has the new record and keeps the old, and new units are there', async () => {
  const { act, home } = await homeOf('bea')
  const before = await getHousehold(act.viewer, home)
  const household = {
    ...before.household,
    pets: 3,
    filters: before.household.filters.map((one) => ({ ...one, merv: 11 })),
  }
  const record = { on: '2026-11-24', kind: 'filter-changed', filter: 'hall' } as const
  const fresh = fortyUnits().map((one) => ({ household: one, accessNote: `=key of ${one.name}` }))
  const changed = [await unitOf(act, home, { household, records: [record], accessNote: 'Ring twice' })]
  expect(await saveUnits(act, { fresh, changed })).toEqual({ ok: true })
  const after = await getHousehold(act.viewer, home)
  expect(after.household).toEqual({ ...household, records: [...household.records, record] })
  expect([after.accessNote, after.revision]).toEqual(['Ring twice', before.revision + 1])
  const all = await listHouseholds(act.viewer)
  expect(all.slice(1).map(({ household, accessNote }) => ({ household, accessNote }))).toEqual(fresh)
  expect((await listLog(act.viewer, home)).filter(({ undone }) => undone).length).toBe(0)
})

test('what a sheet says of a guess is kept, and no longer a guess', async () => {
  const act = as(await someone('fay'))
  const guesses = ['heat-source', 'cool-source'].map((code) => ({ code, subject: 'main' })) as Assumed[]
  const imported = await importHouseholds(act, [aHousehold({ assumed: guesses })])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const before = await getHousehold(act.viewer, home)
  const row = { building: 'Larkspur Court', unit: 'Larkspur Court 2', heat: 'gas-furnace', filters: [] } as const
  const { household, changes } = mergeUnit(before.household, { ...row, filters: [] })
  expect(changes).toEqual(['heating gas-furnace'])
  await saveUnits(act, { fresh: [], changed: [await unitOf(act, home, { household })] })
  expect((await getHousehold(act.viewer, home)).household.assumed).toEqual([{ code: 'cool-source', subject: 'main' }])
})

test('of units that somebody wrote to meanwhile nothing is kept, and of new ones beside them neither', async () => {
  const { act, home } = await homeOf('cal')
  const changed = [await unitOf(act, home, { accessNote: 'mine' })]
  await addRecord(act, home, { on: '2026-11-20', kind: 'filter-looked', filter: 'hall', light: 'half' })
  const fresh = [{ household: aHousehold({ id: 'other' }), accessNote: null }]
  expect(await saveUnits(act, { fresh, changed })).toEqual({ ok: false, because: 'changed' })
  expect(await listHouseholds(act.viewer)).toHaveLength(1)
  expect((await getHousehold(act.viewer, home)).accessNote).toBeNull()
})

test('nobody changes units of others, also together with their own', async () => {
  const { act, home } = await homeOf('dee')
  const other = await homeOf('eli')
  const changed = [
    await unitOf(other.act, other.home, { accessNote: 'x' }),
    await unitOf(act, home, { accessNote: 'taken' }),
  ]
  expect(await saveUnits(other.act, { fresh: [], changed })).toEqual({ ok: false, because: 'changed' })
  expect((await getHousehold(other.act.viewer, other.home)).accessNote).toBeNull()
  expect((await getHousehold(act.viewer, home)).accessNote).toBeNull()
})

test('killed ten times in the middle of sheets, each sheet is there whole or not at all', async () => {
  const { act } = await homeOf('ann')
  const viewer = act.viewer
  const accountId = viewer.kind === 'account' ? viewer.accountId : ''
  const confirmed = new Set<string>()
  await closeDatabase()
  for (let kill = 0; kill < 10; kill++) {
    for (const sheet of await killed('units', [accountId, String(kill)], 5 + kill * 17)) confirmed.add(sheet)
    expect(faultsOfFile()).toEqual([])
    const stored = await listHouseholds(viewer)
    await closeDatabase()
    // Every home was changed by the same last sheet, and each sheet added its twenty.
    expect(new Set(stored.map(({ accessNote }) => accessNote)).size).toBe(1)
    const sheets = new Map<string, number>()
    for (const { household } of stored.slice(1)) {
      const sheet = household.id.replace(/-\d+$/, '')
      sheets.set(sheet, (sheets.get(sheet) ?? 0) + 1)
    }
    expect([...sheets.values()].filter((count) => count !== 20)).toEqual([])
    expect([...confirmed].filter((sheet) => !sheets.has(sheet))).toEqual([])
    const recorded = stored[0]?.household.records.length ?? 0
    expect(recorded - aHousehold().records.length).toBe(sheets.size)
  }
  expect(confirmed.size).toBeGreaterThan(9)
}, 240_000)
