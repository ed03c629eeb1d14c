import { listHouseholds } from '@/lib/data/households'
import { saveUnits } from '@/lib/data/save-units'
import { aHousehold } from '../a-household'
import { AT } from '../moment'
import { say } from './say'

// Sheet after sheet: each changes all homes that stand, and adds as many as one sheet adds.
const [accountId = '', run = ''] = process.argv.slice(2)
const viewer = { kind: 'account', accountId, name: 'ann', administrator: true } as const
for (let sheet = 0; ; sheet++) {
  const name = `${run}-${sheet}`
  const stored = await listHouseholds(viewer)
  if (sheet === 1) say('begin')
  const saved = await saveUnits(
    { viewer, at: AT, door: 'file' },
    {
      changed: stored.map(({ id, revision, household }) => ({
        ...{ id, revision, household: { ...household, pets: (household.pets + 1) % 30 }, accessNote: name },
        records: [{ on: '2026-11-01', kind: 'filter-changed', filter: 'hall' }],
      })),
      fresh: Array.from({ length: 20 }, (_, i) => ({
        household: aHousehold({ id: `${name}-${i}`, name: `Flat ${name} ${i}`, pets: stored[0]?.household.pets ?? 0 }),
        accessNote: name,
      })),
    },
  )
  if (saved.ok) say(`done ${name}`)
}
