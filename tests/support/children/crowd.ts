import { addDays } from '@/lib/core/day'
import { createAccount } from '@/lib/data/accounts'
import { countAttempt } from '@/lib/data/attempts'
import { saveDraft } from '@/lib/data/drafts'
import { listEpisode, recordEpisode } from '@/lib/data/episodes'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { takeInvitation } from '@/lib/data/invitations'
import { recordTogether } from '@/lib/data/record-together'
import { addRecord } from '@/lib/data/records'
import { saveHousehold } from '@/lib/data/save-household'
import { episodeOn } from '@/lib/guide/episode'
import { aHousehold } from '../a-household'
import { AT } from '../moment'
import { say } from './say'

// One of several processes that all want the same rows; what it says was confirmed to it.
const { me, rounds, accountId, homes, starts, invitations } = JSON.parse(process.argv[2] ?? '{}') as {
  me: number
  rounds: number
  accountId: string
  /** Homes in which everybody records. */
  homes: string[]
  /** Homes with one start each, for all of them together. */
  starts: string[]
  /** Hashes of links for one use. */
  invitations: string[]
}
const viewer = { kind: 'account', accountId, name: 'ann', administrator: true } as const
const act = { viewer, at: AT, door: 'page' } as const

say('begin')
const own = `first-${me}`
const first = { id: own, email: `${own}@example.org`, name: own, passwordHash: 'none', at: AT }
if (await createAccount(first, async () => true)) say(`account ${own}`)
for (let i = 0; i < rounds; i++) {
  const on = addDays('1990-01-01', me * 1000 + i)
  const record = { on, kind: 'filter-changed', filter: 'hall' } as const
  if ((await addRecord(act, homes[0] ?? '', record)).ok) say(`record ${on}`)

  // Two homes, by every other process in the other order.
  const both = me % 2 ? homes.slice(1, 3) : homes.slice(1, 3).toReversed()
  const recorded = await recordTogether(
    act,
    both.map((householdId) => ({ householdId, record, key: null })),
  )
  if (recorded.ok) say(`both ${on}`)

  const file = [0, 1, 2].map((n) => aHousehold({ id: `${me}-${i}-${n}` }))
  if ((await importHouseholds(act, file)).ok) say(`import ${me}-${i}`)

  await saveDraft(act, (draft) => ({ step: 'place', answers: { ...draft?.answers, [`${me}-${i}`]: { name: ['x'] } } }))
  say(`draft ${me}-${i}`)

  const { household, revision } = await getHousehold(viewer, homes[3] ?? '')
  const saved = await saveHousehold(act, homes[3] ?? '', { ...household, people: household.people + 1 }, revision)
  if (saved.ok) say(`people ${me}-${i}`)

  const home = starts[i]
  if (home) {
    const events = await listEpisode(viewer, home)
    if (episodeOn(events, '2026-11-25').resetUsed !== 'yes') {
      const start = { kind: 'start-spent', on: '2026-11-25', minute: 29_000_000, key: `walk-${me}.0` } as const
      if ((await recordEpisode(act, home, [start], { seen: events.length })).ok) say(`start ${home}`)
    }
  }
  const link = invitations[i]
  if (link) {
    const mine = { kind: 'account', accountId: own, name: own, administrator: false } as const
    if ((await takeInvitation({ ...act, viewer: mine }, link)).ok) say(`invited ${link}`)
  }
  say(`count ${await countAttempt('everybody', AT, 60)}`)
}
say('done')
process.exit(0)
