import { expect, test } from 'vitest'
import { closeDatabase } from '@/lib/data/connection'
import { exportHouseholds, getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { aHousehold } from '../support/a-household'
import { killAfter, startChild } from '../support/child'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { faultsOfFile } from '../support/stored'

freshDatabase()

function doneBy(lines: string[]): string[] {
  return lines.filter((line) => line.startsWith('done ')).map((line) => line.slice(5))
}

test('killed ten times in the middle of imports, every confirmed file is there whole and no other part of one', async () => {
  const ann = await someone('ann')
  const confirmed = new Set<string>()
  await closeDatabase()
  for (let kill = 0; kill < 10; kill++) {
    const child = startChild('import', [ann.accountId, String(kill)])
    await killAfter(child, 7 + kill * 23)
    for (const batch of doneBy(child.lines)) confirmed.add(batch)
    expect(faultsOfFile()).toEqual([])
    const kept = new Map<string, number>()
    for (const household of await exportHouseholds(ann)) {
      const batch = household.id.replace(/-\d+$/, '')
      kept.set(batch, (kept.get(batch) ?? 0) + 1)
      expect(household).toStrictEqual(aHousehold({ id: household.id }))
    }
    await closeDatabase()
    expect([...kept.values()].filter((count) => count !== 50)).toEqual([])
    expect([...confirmed].filter((batch) => !kept.has(batch))).toEqual([])
  }
  expect(confirmed.size).toBeGreaterThan(9)
}, 180_000)

test('killed ten times in the middle of recording, every confirmed record is there and the home fits it', async () => {
  const ben = await someone('ben')
  const imported = await importHouseholds(as(ben), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const confirmed = new Set<string>()
  await closeDatabase()
  for (let kill = 0; kill < 10; kill++) {
    const child = startChild('record', [ben.accountId, home, String(kill)])
    await killAfter(child, 5 + kill * 11)
    for (const on of doneBy(child.lines)) confirmed.add(on)
    expect(faultsOfFile()).toEqual([])
    const { household, revision } = await getHousehold(ben, home)
    await closeDatabase()
    const days = household.records.map((record) => record.on)
    expect([...confirmed].filter((on) => !days.includes(on))).toEqual([])
    expect(revision).toBe(household.records.length)
  }
  expect(confirmed.size).toBeGreaterThan(9)
}, 180_000)
