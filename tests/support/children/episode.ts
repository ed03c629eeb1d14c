import { recordEpisode } from '@/lib/data/episodes'
import { AT } from '../moment'
import { say } from './say'

const [accountId = '', home = '', run = '0'] = process.argv.slice(2)
const act = { viewer: { kind: 'account', accountId, name: 'ann', administrator: true }, at: AT, door: 'page' } as const
for (let i = 0; ; i++) {
  if (i === 3) say('begin')
  const key = `no-heat.29000000.${run}.${i}`
  const booked = await recordEpisode(act, home, [
    { kind: 'start-spent', on: '2026-11-25', minute: 29_000_000 + i, key: `${key}.0` },
    { kind: 'trip', on: '2026-11-25', minute: 29_000_000 + i, key: `${key}.1` },
  ])
  if (booked.ok) say(`done ${key}`)
}
