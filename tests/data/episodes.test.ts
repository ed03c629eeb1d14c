import { beforeAll, expect, test } from 'vitest'
import { findBrief, findSharedBrief, listBriefs, saveBrief, shareBrief } from '@/lib/data/briefs'
import { closeHousehold, NAME_REMOVED, purgeHousehold } from '@/lib/data/closing'
import { closeDatabase } from '@/lib/data/connection'
import { listEpisode, recordEpisode } from '@/lib/data/episodes'
import { importHouseholds } from '@/lib/data/import'
import { episodeOn } from '@/lib/guide/episode'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'
import { killed } from '../support/kills/kill'

freshDatabase()

type Someone = Awaited<ReturnType<typeof someone>>
let ann: Someone
let bob: Someone
let home = ''

beforeAll(async () => {
  ann = await someone('ann')
  bob = await someone('bob')
  const imported = await importHouseholds(as(ann), [aHousehold()])
  if (!imported.ok) throw new Error('no home')
  home = imported.ids[0] ?? ''
})

const START = {
  kind: 'start-spent',
  on: '2026-11-25',
  minute: 29_000_000,
  key: 'no-heat.28999990.20.start.done.0',
} as const
const TRIP = { kind: 'trip', on: '2026-11-25', minute: 29_000_000, key: 'no-heat.28999990.20.start.done.1' } as const

test('a start that is sent twice is one, and what came together keeps its order', async () => {
  expect(await recordEpisode(as(ann), home, [START, TRIP])).toEqual({ ok: true, written: 2 })
  expect(await recordEpisode(as(ann), home, [START, TRIP])).toEqual({ ok: true, written: 0 })
  const events = await listEpisode(ann, home)
  expect(events.map(({ kind, byName }) => [kind, byName])).toEqual([
    ['start-spent', 'ann'],
    ['trip', 'ann'],
  ])
  expect(episodeOn(events, '2026-11-26')).toMatchObject({ resetUsed: 'yes', tripped: 'yes' })
})

test('a visit after a start gives it back, also in one minute and from two phones; the log says who wrote it', async () => {
  const imported = await importHouseholds(as(ann), [aHousehold({ id: 'visited' })])
  const visited = (imported.ok && imported.ids[0]) || ''
  await recordEpisode(as(ann), visited, [START, TRIP])
  const visit = { kind: 'technician-visit', on: '2026-11-25', minute: 29_000_000, key: 'by-hand.1' } as const
  await recordEpisode({ ...as(ann), at: '2026-11-25T09:00:01.000Z' }, visited, [{ ...visit, note: 'Northside' }])
  const events = await listEpisode(ann, visited)
  expect(events.at(-1)).toMatchObject({
    ...{ kind: 'technician-visit', byName: 'ann', note: 'Northside' },
    ...{ writtenAt: '2026-11-25T09:00:01.000Z', door: 'page' },
  })
  expect(episodeOn(events, '2026-11-26')).toMatchObject({ resetUsed: 'no', tripped: 'no' })
})

test('a home brought in a file counts its start as used, until a visit or for twelve months; one described here does not', async () => {
  const brought = await importHouseholds({ ...as(ann), door: 'file' }, [aHousehold({ id: 'brought' })])
  const described = await importHouseholds(as(ann), [aHousehold({ id: 'described' })])
  if (!brought.ok || !described.ok) throw new Error('no home')
  const events = await listEpisode(ann, brought.ids[0] ?? '')
  expect(events.map(({ kind }) => kind)).toEqual(['imported'])
  expect(episodeOn(events, '2026-11-26').resetUsed).toBe('yes')
  expect(episodeOn(events, '2027-11-26').resetUsed).toBe('unknown')
  expect(await listEpisode(ann, described.ids[0] ?? '')).toEqual([])
})

test('nobody else reads or writes what a home remembers', async () => {
  expect(await listEpisode(bob, home)).toEqual([])
  expect(await recordEpisode(as(bob), home, [{ ...START, key: 'x.0' }])).toEqual({ ok: false, because: 'not-found' })
  expect(await recordEpisode(as({ kind: 'sample' }), home, [START])).toEqual({ ok: false, because: 'not-found' })
})

const page = { title: 'Brief', sections: [{ heading: 'Urgency', lines: ['Urgent: today'] }] }
const BRIEF = { on: '2026-11-25', page, severity: 2, outcome: 'still-cold', roomF: 61.5, key: 'walk' } as const

test('a brief made twice of one walk is one page, as it was made', async () => {
  const first = await saveBrief(as(ann), home, BRIEF)
  const second = await saveBrief(as(ann), home, { ...BRIEF, roomF: 70 })
  expect(second).toEqual(first)
  expect(await listBriefs(ann, home)).toMatchObject([
    { page, severity: 2, roomF: 61.5, byName: 'ann', sharedUntil: null },
  ])
  expect(await listBriefs(bob, home)).toEqual([])
})

test('a link shows its page until its moment, a new one ends the one before, and nobody else can make one', async () => {
  const saved = await saveBrief(as(ann), home, BRIEF)
  if (!saved.ok) throw new Error('not saved')
  const expiresAt = '2026-12-09T12:00:00.000Z'
  expect(await shareBrief(as(bob), home, saved.id, { tokenHash: 'b', expiresAt })).toEqual({
    ok: false,
    because: 'not-found',
  })
  expect(await shareBrief(as(ann), home, 'no-such', { tokenHash: 'c', expiresAt })).toEqual({
    ok: false,
    because: 'not-found',
  })
  await shareBrief(as(ann), home, saved.id, { tokenHash: 'one', expiresAt })
  expect(await findSharedBrief('one', '2026-12-09T11:59:59.999Z')).toMatchObject({ page })
  expect(await findSharedBrief('one', expiresAt)).toBeNull()
  await shareBrief(as(ann), home, saved.id, { tokenHash: 'two', expiresAt })
  expect(await findSharedBrief('one', AT)).toBeNull()
  await shareBrief(as(ann), home, saved.id, null)
  expect(await findSharedBrief('two', AT)).toBeNull()
  expect(await findBrief(bob, home, saved.id)).toBeNull()
})

test('killed ten times while starts are booked, every one that was confirmed is there, and none is half there', async () => {
  const confirmed: string[] = []
  for (let kill = 0; kill < 10; kill++) {
    await closeDatabase()
    confirmed.push(...(await killed('episode', [ann.accountId, home, String(kill)], 5 + kill * 17)))
    const keys = (await listEpisode(ann, home)).map(({ key }) => key)
    const kept = new Set(keys)
    expect(kept.size).toBe(keys.length)
    expect(confirmed.filter((key) => !kept.has(`${key}.0`) || !kept.has(`${key}.1`))).toEqual([])
    expect(keys.filter((key) => key.endsWith('.0')).length).toBe(keys.filter((key) => key.endsWith('.1')).length)
  }
  expect(confirmed.length).toBeGreaterThan(10)
}, 120_000)

test('a hazard met in a closed home is still written down; a purge takes the briefs, the names and what was written beside', async () => {
  await closeHousehold(as(ann), home, '2026-11-26')
  const hazard = {
    kind: 'hazard-leave',
    on: '2026-11-26',
    minute: 29_001_000,
    key: 'k.0',
    note: 'the Lowes were ill',
  } as const
  expect(await recordEpisode(as(ann), home, [hazard])).toMatchObject({ ok: true })
  await purgeHousehold(as(ann), home, 'people')
  expect(await listBriefs(ann, home)).toEqual([])
  const events = await listEpisode(ann, home)
  expect(events.at(-1)).toMatchObject({ kind: 'hazard-leave', note: null, byName: NAME_REMOVED })
})
