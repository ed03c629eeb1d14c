import { closeDatabase } from '@/lib/data/connection'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { aHousehold } from '../a-household'
import { as, someone } from '../someone'
import { faultsOfFile } from '../stored'
import { type Kills, killed, type Survived } from './kill'

/** Kills a process in the middle of recording changed filters in one home. */
export async function killRecords({ times, pause }: Kills): Promise<Survived> {
  const ben = await someone('ben')
  const imported = await importHouseholds(as(ben), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const confirmed = new Set<string>()
  const lost = new Set<string>()
  const torn: string[] = []
  await closeDatabase()
  for (let kill = 0; kill < times; kill++) {
    for (const on of await killed('record', [ben.accountId, home, String(kill)], pause(kill))) confirmed.add(on)
    torn.push(...faultsOfFile().map((fault) => JSON.stringify(fault)))
    const { household, revision } = await getHousehold(ben, home)
    await closeDatabase()
    const days = new Set(household.records.map((record) => record.on))
    for (const on of confirmed) if (!days.has(on)) lost.add(on)
    // Each record raises the home once: more would be half of one.
    const { length } = household.records
    if (revision !== length) torn.push(`revision ${revision} of ${length} records`)
    if (days.size !== length) torn.push(`${length - days.size} records doubled`)
  }
  return { confirmed: confirmed.size, lost: [...lost], torn }
}
