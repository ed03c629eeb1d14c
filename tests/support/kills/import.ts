import { isDeepStrictEqual } from 'node:util'
import { closeDatabase } from '@/lib/data/connection'
import { exportHouseholds } from '@/lib/data/households'
import { aHousehold } from '../a-household'
import { someone } from '../someone'
import { faultsOfFile } from '../stored'
import { type Kills, killed, type Survived } from './kill'

const HOMES_A_FILE = 50

/** Kills a process in the middle of bringing household files. */
export async function killImports({ times, pause }: Kills): Promise<Survived> {
  const ann = await someone('ann')
  const confirmed = new Set<string>()
  const lost = new Set<string>()
  const torn: string[] = []
  await closeDatabase()
  for (let kill = 0; kill < times; kill++) {
    for (const file of await killed('import', [ann.accountId, String(kill)], pause(kill))) confirmed.add(file)
    torn.push(...faultsOfFile().map((fault) => JSON.stringify(fault)))
    const kept = new Map<string, number>()
    for (const household of await exportHouseholds(ann)) {
      const file = household.id.replace(/-\d+$/, '')
      kept.set(file, (kept.get(file) ?? 0) + 1)
      if (!isDeepStrictEqual(household, aHousehold({ id: household.id }))) torn.push(household.id)
    }
    await closeDatabase()
    for (const [file, homes] of kept) if (homes !== HOMES_A_FILE) torn.push(`${file}: ${homes} homes`)
    for (const file of confirmed) if (!kept.has(file)) lost.add(file)
  }
  return { confirmed: confirmed.size, lost: [...lost], torn }
}
