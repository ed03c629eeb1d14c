import { expect, test } from 'vitest'
import type { Act, Viewer } from '@/lib/core/viewer'
import { deleteAccount } from '@/lib/data/accounts'
import { saveBrief } from '@/lib/data/briefs'
import { closeHousehold, NAME_REMOVED, purgeHousehold, reopenHousehold } from '@/lib/data/closing'
import { recordEpisode } from '@/lib/data/episodes'
import { findHousehold, getHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { findInvitation, saveInvitation, takeInvitation } from '@/lib/data/invitations'
import { listLog } from '@/lib/data/log'
import { listHeirs, listMembers, removeMember } from '@/lib/data/members'
import { putOff } from '@/lib/data/put-offs'
import { changeReadings } from '@/lib/data/readings'
import { addRecord, undoRecord } from '@/lib/data/records'
import { saveContacts, saveNotes } from '@/lib/data/save-household'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'
import { tablesWith } from '../support/stored'

freshDatabase()

const SOON = '2026-12-01T00:00:00.000Z'
let number = 0

async function aHome(owner: Viewer): Promise<string> {
  const imported = await importHouseholds(as(owner), [aHousehold()])
  if (!imported.ok) throw new Error(imported.faults[0]?.say)
  return imported.ids[0] ?? ''
}

async function invite(
  owner: Viewer,
  kind: 'member' | 'hand-over',
  householdId: string,
  role: 'adult' | 'technician' = 'adult',
) {
  const tokenHash = `hash-${number++}`
  const saved = await saveInvitation(as(owner), { kind, householdId, role, tokenHash, expiresAt: SOON })
  if (!saved.ok) throw new Error(saved.because)
  return tokenHash
}

test('a second adult joins by a link, once, and both see who did what', async () => {
  const [ann, ben, cy] = [await someone('ann'), await someone('ben'), await someone('cy')]
  const home = await aHome(ann)
  const link = await invite(ann, 'member', home)
  expect(await findInvitation(link, AT)).toMatchObject({
    kind: 'member',
    householdName: 'Larkspur Court 2',
    from: 'ann',
  })
  expect((await takeInvitation(as(ben), link)).ok).toBe(true)
  expect(await takeInvitation(as(cy), link)).toEqual({ ok: false, because: 'gone' })
  await addRecord(as(ben), home, { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' })
  expect((await listLog(ann, home))[0]?.by.name).toBe('ben')
  expect((await listMembers(ann, home)).map(({ role }) => role)).toEqual(['owner', 'adult'])
  await removeMember(as(ann), home, 'account-ben')
  expect(await findHousehold(ben, home)).toBeNull()
})

test('an expired or revoked link offers nothing', async () => {
  const dee = await someone('dee')
  const home = await aHome(dee)
  const link = await invite(dee, 'member', home)
  expect(await findInvitation(link, SOON)).toBeNull()
  expect(await takeInvitation(as(await someone('late'), SOON), link)).toEqual({ ok: false, because: 'gone' })
})

test('of two who follow one link at once, one is in', async () => {
  const eve = await someone('eve')
  const home = await aHome(eve)
  const link = await invite(eve, 'member', home)
  const both = [await someone('one'), await someone('two')]
  const taken = await Promise.all(both.map((viewer) => takeInvitation(as(viewer), link)))
  expect(taken.filter(({ ok }) => ok)).toHaveLength(1)
})

test('a technician sees a home and changes nothing in it', async () => {
  const [fay, tech] = [await someone('fay'), await someone('tech')]
  const home = await aHome(fay)
  await takeInvitation(as(tech), await invite(fay, 'member', home, 'technician'))
  expect((await getHousehold(tech, home)).role).toBe('technician')
  const record = { on: '2026-11-20', kind: 'filter-looked', filter: 'hall' } as const
  expect(await addRecord(as(tech), home, record)).toEqual({ ok: false, because: 'not-allowed' })
  expect(await closeHousehold(as(tech), home, '2026-11-25')).toEqual({ ok: false, because: 'not-allowed' })
})

test('a household handed over is the other account’s alone, and says no names', async () => {
  const [gil, hal] = [await someone('gil'), await someone('hal')]
  const home = await aHome(gil)
  await aHome(hal)
  const { revision } = await getHousehold(gil, home)
  await takeInvitation(as(hal), await invite(gil, 'hand-over', home))
  expect(await findHousehold(gil, home)).toBeNull()
  const taken = await getHousehold(hal, home)
  expect(taken).toMatchObject({ role: 'owner', household: { id: 'larkspur-2-2' } })
  expect(taken.revision).toBeGreaterThan(revision)
  expect((await listLog(hal, home)).map(({ by }) => by.name)).toEqual([NAME_REMOVED])
})

test('a closed household is read and not written; people are purged before the rest', async () => {
  const ida = await someone('ida')
  const home = await aHome(ida)
  await saveNotes(as(ida), home, { accessNote: 'Key under the pot', placeNotes: { hall: 'Behind the door' } })
  await saveContacts(as(ida), home, [
    { id: 'c1', kind: 'technician', name: 'T. Fuller', phone: '555 0100', email: null, note: null },
  ])
  expect(await getHousehold(ida, home)).toMatchObject({
    placeNotes: { hall: 'Behind the door' },
    contacts: [{ name: 'T. Fuller' }],
  })
  expect(await purgeHousehold(as(ida), home, 'people')).toEqual({ ok: false, because: 'open' })
  await closeHousehold(as(ida), home, '2026-11-25')
  const record = { on: '2026-11-20', kind: 'filter-looked', filter: 'hall' } as const
  expect(await addRecord(as(ida), home, record)).toEqual({ ok: false, because: 'closed' })
  await purgeHousehold(as(ida), home, 'people')
  const left = await getHousehold(ida, home)
  expect(left).toMatchObject({
    state: 'closed',
    accessNote: null,
    placeNotes: {},
    contacts: [],
    household: { people: 2, pets: 0 },
  })
  expect(left.household.records).toHaveLength(1)
  expect((await listLog(ida, home))[0]?.by).toEqual({ accountId: null, name: NAME_REMOVED })
  await purgeHousehold(as(ida), home, 'everything')
  expect(await listHomes(ida)).toEqual([])
})

test('a closed household can be opened again', async () => {
  const jo = await someone('jo')
  const home = await aHome(jo)
  await closeHousehold(as(jo), home, '2026-11-25')
  await reopenHousehold(as(jo), home)
  expect(await getHousehold(jo, home)).toMatchObject({ state: 'open', closedOn: null })
})

test('a deleted account takes its homes along, passes a shared one on, and leaves no name', async () => {
  const [kay, lou] = [await someone('kay'), await someone('lou')]
  const shared = await aHome(kay)
  const imported = await importHouseholds(as(kay), [aHousehold({ id: 'alone' })])
  const alone = imported.ok ? (imported.ids[0] ?? '') : ''
  await takeInvitation(as(lou), await invite(kay, 'member', shared))
  const later = { ...as(await someone('max')), at: '2026-11-26T12:00:00.000Z' }
  await takeInvitation(later, await invite(kay, 'member', shared))
  expect(await listHeirs(kay), 'of two adults the first who came').toEqual(new Map([[shared, 'lou']]))
  expect(await listHeirs(lou)).toEqual(new Map())
  expect(await deleteAccount(as(lou), 'account-kay')).toEqual({ ok: false, because: 'not-allowed' })
  expect(await deleteAccount(as(kay), 'account-kay')).toEqual({ ok: true })
  expect(await getHousehold(lou, shared)).toMatchObject({ role: 'owner' })
  expect((await listLog(lou, shared)).map(({ by }) => by)).toEqual([{ accountId: null, name: NAME_REMOVED }])
  expect(await findHousehold({ kind: 'system' }, alone)).toBeNull()
})

const DEEDS: Record<string, (act: Act, home: string, entry: string) => Promise<{ ok: boolean }>> = {
  'brought measured hours': (act, home) => {
    const hours = { system: 'main', from: '2026-11-01', to: '2026-11-02', source: 'thermostat', heatHours: 3 } as const
    return changeReadings(act, home, { kind: 'thermostat', add: [hours], remove: [] })
  },
  'wrote down a trouble': (act, home) =>
    recordEpisode(act, home, [{ kind: 'start-spent', on: '2026-11-20', minute: 1, key: 'k' }]),
  'made a page for the technician': (act, home) => {
    const page = { title: 'No heat', sections: [] } as never
    return saveBrief(act, home, { on: '2026-11-20', page, severity: null, outcome: null, roomF: null, key: 'k' })
  },
  'took back what another recorded': undoRecord,
  'let an item wait': (act, home) =>
    putOff(act, home, { task: 'change-filter', subject: 'hall', until: '2026-12-24', today: '2026-11-25' }),
}

for (const [what, deed] of Object.entries(DEEDS))
  test.each(['of another', 'that they passed on'])(
    `who only ${what} in a home %s is named nowhere after their account`,
    async (whose) => {
      const [pat, quin] = [await someone(`p${number++}at`), await someone(`q${number++}uin`)]
      const [owner, member] = whose === 'of another' ? [pat, quin] : [quin, pat]
      const imported = await importHouseholds(as(owner), [aHousehold({ records: [] })])
      const home = imported.ok ? (imported.ids[0] ?? '') : ''
      await takeInvitation(as(member), await invite(owner, 'member', home))
      const recorded = await addRecord(as(pat), home, { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' })
      const before = await tablesWith(quin.name)
      expect((await deed(as(quin), home, recorded.ok ? recorded.entry.id : '')).ok).toBe(true)
      expect((await tablesWith(quin.name)).length).toBeGreaterThan(before.length)
      expect(await deleteAccount(as(quin), quin.accountId)).toEqual({ ok: true })
      expect(await tablesWith(quin.name)).toEqual([])
      expect(await getHousehold(pat, home)).toMatchObject({ role: 'owner' })
    },
  )
