import { addDays } from '@/lib/core/day'
import { addRecord } from '@/lib/data/records'
import { AT } from '../moment'
import { say } from './say'

const [accountId = '', home = '', run = '0'] = process.argv.slice(2)
const act = { viewer: { kind: 'account', accountId, name: 'ann', administrator: true }, at: AT, door: 'page' } as const
for (let i = 0; ; i++) {
  const on = addDays('1950-01-01', Number(run) * 500 + i)
  if (i === 3) say('begin')
  const recorded = await addRecord(act, home, {
    on,
    kind: 'filter-changed',
    filter: 'hall',
    fitted: { medium: i % 2 ? 'pleated' : 'media' },
  })
  if (recorded.ok) say(`done ${on}`)
}
