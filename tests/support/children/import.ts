import { importHouseholds } from '@/lib/data/import'
import { aHousehold } from '../a-household'
import { AT } from '../moment'
import { say } from './say'

const [accountId = '', run] = process.argv.slice(2)
const act = { viewer: { kind: 'account', accountId, name: 'ann', administrator: true }, at: AT, door: 'file' } as const
for (let batch = 0; ; batch++) {
  const file = Array.from({ length: 50 }, (_, i) => aHousehold({ id: `${run}-${batch}-${i}` }))
  if (batch === 1) say('begin')
  const imported = await importHouseholds(act, file)
  if (imported.ok) say(`done ${run}-${batch}`)
}
