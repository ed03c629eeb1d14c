import { expect, test } from 'vitest'
import type { Act, Viewer } from '@/lib/core/viewer'
import { closeHousehold } from '@/lib/data/closing'
import { saveFoundFilter } from '@/lib/data/found-filter'
import { exportHouseholds, findHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { endOfDay } from '@/lib/data/instant'
import { listLog } from '@/lib/data/log'
import { listMembers } from '@/lib/data/members'
import { addMessage, listMessages } from '@/lib/data/messages'
import { addRecord, undoRecord } from '@/lib/data/records'
import { findOpenLink, listRenterLinks, revokeRenterLink, saveRenterLink } from '@/lib/data/renter-links'
import { saveContacts, saveHousehold, saveNotes } from '@/lib/data/save-household'
import { parseHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

async function aRentedHome(name: string) {
  const owner = await someone(name)
  const imported = await importHouseholds(as(owner), [aHousehold(), aHousehold({ id: 'other', name: 'Other' })])
  const [home, other] = imported.ok ? (imported.ids as [string, string]) : ['', '']
  const place = { householdId: home, name: 'Unit 2', lastDay: '2099-01-01', expiresAt: '2099-01-02T00:00:00.000Z' }
  const saved = await saveRenterLink(as(owner), { ...place, tokenHash: `hash of ${name}` })
  if (!saved.ok) throw new Error(saved.because)
  const renter: Viewer = { kind: 'link', linkId: saved.link.id, householdId: home, name: 'Unit 2' }
  const act: Act = { ...as(renter), door: 'link' }
  return { owner, home, other, renter, act, linkId: saved.link.id }
}

test('a renter’s link sees its home without contacts, notes, people or log, and no other home', async () => {
  const { owner, home, other, renter } = await aRentedHome('ann')
  await saveContacts(as(owner), home, [
    { id: 'c', kind: 'landlord', name: 'Ann', phone: '555 0100', email: null, note: null },
  ])
  await saveNotes(as(owner), home, { accessNote: 'The key is under the mat' })
  const seen = await findHousehold(renter, home)
  expect(seen).toMatchObject({ role: 'renter', contacts: [], accessNote: null })
  expect(await listMembers(renter, home)).toEqual([])
  expect(await listLog(renter, home)).toEqual([])
  expect((await listHomes(renter)).map(({ id }) => id)).toEqual([home])
  expect(await findHousehold(renter, other)).toBe(null)
  expect(await findHousehold(owner, home)).toMatchObject({ role: 'owner', accessNote: 'The key is under the mat' })
})

test('by a link filters are recorded and messages written, in its own name; nothing is described, shared or closed', async () => {
  const { owner, home, act, renter } = await aRentedHome('ben')
  const recorded = await addRecord(act, home, { on: '2026-11-24', kind: 'filter-changed', filter: 'hall' })
  expect(recorded).toMatchObject({ ok: true, entry: { by: { accountId: null, name: 'Unit 2' }, door: 'link' } })
  expect(await addMessage(act, home, 'It is 58 degrees in here')).toMatchObject({ ok: true })
  expect(await listMessages(owner, home)).toMatchObject([{ text: 'It is 58 degrees in here', byName: 'Unit 2' }])
  expect(await listLog(owner, home, { door: 'link' })).toHaveLength(1)
  expect(await saveHousehold(act, home, aHousehold(), 99)).toEqual({ ok: false, because: 'not-allowed' })
  expect(await saveContacts(act, home, [])).toEqual({ ok: false, because: 'not-allowed' })
  expect(await closeHousehold(act, home, '2026-11-25')).toEqual({ ok: false, because: 'not-allowed' })
  expect(await listRenterLinks(renter, home)).toEqual([])
})

test('a link takes back what it recorded, and nothing that others did', async () => {
  const { owner, home, act } = await aRentedHome('cat')
  const own = await addRecord(act, home, { on: '2026-11-23', kind: 'filter-changed', filter: 'hall' })
  const others = await addRecord(as(owner), home, { on: '2026-11-24', kind: 'filter-changed', filter: 'hall' })
  if (!own.ok || !others.ok) throw new Error('not recorded')
  expect(await undoRecord(act, home, others.entry.id)).toMatchObject({ ok: false, because: 'fault' })
  expect(await undoRecord(act, home, own.entry.id)).toMatchObject({ ok: true })
})

test('a link that was taken back opens and writes nothing from that moment, also in pages already open', async () => {
  const { owner, home, renter, act, linkId } = await aRentedHome('dan')
  expect(await findOpenLink('hash of dan', AT)).toMatchObject({ id: linkId })
  expect(await revokeRenterLink(as(owner), home, linkId)).toEqual({ ok: true })
  expect(await findOpenLink('hash of dan', AT)).toBe(null)
  expect(await findHousehold(renter, home)).toBe(null)
  expect(await addMessage(act, home, 'x')).toEqual({ ok: false, because: 'not-found' })
  expect(await revokeRenterLink(as(owner), home, linkId)).toEqual({ ok: false, because: 'not-found' })
})

test('a link ends with its last day as the home’s own clock shows it', async () => {
  expect(endOfDay('2026-11-25', 'America/Chicago')).toBe('2026-11-26T06:00:00.000Z')
  // The clocks go back on 1 November 2026: that day has 25 hours.
  expect(endOfDay('2026-11-01', 'America/New_York')).toBe('2026-11-02T05:00:00.000Z')
  expect(endOfDay('2026-10-31', 'America/New_York')).toBe('2026-11-01T04:00:00.000Z')
  const { owner, home } = await aRentedHome('eve')
  const end = endOfDay('2026-11-25', 'America/Chicago')
  const place = { householdId: home, name: 'x', lastDay: '2026-11-25', expiresAt: end, tokenHash: 'short' }
  await saveRenterLink(as(owner), place)
  expect(await findOpenLink('short', '2026-11-26T05:59:59.000Z')).not.toBe(null)
  expect(await findOpenLink('short', '2026-11-26T06:00:00.000Z')).toBe(null)
})

test('a closed home lets nobody in by a link', async () => {
  const { owner, home } = await aRentedHome('fay')
  await closeHousehold(as(owner), home, '2026-11-25')
  expect(await findOpenLink('hash of fay', AT)).toBe(null)
})

test('a message a link writes is not shown to another link', async () => {
  const { owner, home, act } = await aRentedHome('gil')
  const place = { householdId: home, name: 'Unit 3', lastDay: '2099-01-01', expiresAt: '2099-01-02T00:00:00.000Z' }
  const second = await saveRenterLink(as(owner), { ...place, tokenHash: 'second of gil' })
  await addMessage(act, home, 'mine')
  const linkId = second.ok ? second.link.id : ''
  expect(await listMessages({ kind: 'link', linkId, householdId: home, name: 'Unit 3' }, home)).toEqual([])
})

test('a link that somebody fills the home with is stopped after thirty messages a day', async () => {
  const { home, act } = await aRentedHome('hal')
  for (let sent = 0; sent < 30; sent++) expect((await addMessage(act, home, `${sent}`)).ok).toBe(true)
  expect(await addMessage(act, home, 'one more')).toEqual({ ok: false, because: 'too-many' })
  expect((await addMessage({ ...act, at: '2026-11-28T00:00:00.000Z' }, home, 'days later')).ok).toBe(true)
})

test('what was found is saved to the filter, the owner is told, and the file can still be brought back', async () => {
  const { owner, home, act } = await aRentedHome('ida')
  const nominal = { widthIn: 20, heightIn: 20, depthIn: 1 }
  const at = { filter: 'hall' }
  expect(await saveFoundFilter(act, home, { place: 'ceiling-grille', nominal, medium: null, at })).toMatchObject({
    ok: true,
    filter: 'hall',
  })
  const [household] = await exportHouseholds(owner, [home])
  expect(household?.filters[0]).toMatchObject({
    id: 'hall',
    place: 'ceiling-grille',
    nominal,
    medium: 'pleated',
    merv: 8,
  })
  const [told] = await listMessages(owner, home)
  expect(told?.text).toContain('was wall grille, 16 × 25 × 1, is now ceiling grille, 20 × 20 × 1')
  expect(told?.byName).toBe('Unit 2')
  const again = parseHouseholdFile(JSON.stringify({ plenum: 1, households: [household] }), () => '2026-11-25')
  expect(again.ok).toBe(true)
})

test('another filter gets a name of its own; without a size, or where none can be, it is refused in words', async () => {
  const { owner, home, act } = await aRentedHome('jo')
  const nominal = { widthIn: 16, heightIn: 25, depthIn: 4 }
  const found = { place: 'media-cabinet', nominal, medium: null, at: { system: 'main' } } as const
  expect(await saveFoundFilter(act, home, found)).toMatchObject({ ok: true, filter: 'filter-2' })
  expect(await saveFoundFilter(act, home, { ...found, nominal: null })).toMatchObject({ ok: false, because: 'fault' })
  const head = { ...found, place: 'ductless-head', medium: 'screen' } as const
  expect(await saveFoundFilter(act, home, head)).toMatchObject({ ok: false, because: 'fault' })
  const [household] = await exportHouseholds(owner, [home])
  expect(household?.filters.map(({ id, medium }) => [id, medium])).toEqual([
    ['hall', 'pleated'],
    ['filter-2', 'media'],
  ])
})
