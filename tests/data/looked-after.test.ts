import { beforeEach, expect, test } from 'vitest'
import type { Viewer } from '@/lib/core/viewer'
import { closeHousehold } from '@/lib/data/closing'
import { listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { listHomesInvitations, saveInvitation, takeInvitation } from '@/lib/data/invitations'
import { listLookingAfter, removeEverywhere } from '@/lib/data/looked-after'
import { recordTogether } from '@/lib/data/record-together'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

const WEEK = '2027-01-01T00:00:00.000Z'
let ann: Extract<Viewer, { kind: 'account' }>
let bea: Extract<Viewer, { kind: 'account' }>
let homes: string[]
let number = 0

beforeEach(async () => {
  ann = await someone(`ann-${++number}`)
  bea = await someone(`bea-${number}`)
  const imported = await importHouseholds(
    as(ann),
    ['Mill House', 'Mill House', 'Ash Lane'].map((building, i) => aHousehold({ id: `unit-${i}`, building })),
  )
  homes = imported.ok ? imported.ids : []
})

async function invite(role: 'manager' | 'technician', building?: string): Promise<string> {
  const tokenHash = `token ${number} ${role} ${building}`
  const asked = { kind: 'member', role, tokenHash, expiresAt: WEEK } as const
  const saved = await saveInvitation(as(ann), building === undefined ? asked : { ...asked, building })
  expect(saved.ok).toBe(true)
  return tokenHash
}

const seen = async (viewer: Viewer) =>
  (await listHomes(viewer)).map(({ id, role }) => `${homes.indexOf(id)} ${role}`).sort()

test('a technician invited into a building sees its homes and no other, and records in none', async () => {
  await takeInvitation(as(bea), await invite('technician', 'Mill House'))
  expect(await seen(bea)).toEqual(['0 technician', '1 technician'])
  const record = { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' } as const
  const tried = await recordTogether(as(bea), [{ householdId: homes[0] ?? '', record, key: null }])
  expect(tried.ok).toBe(false)
  expect(await listLookingAfter(ann)).toMatchObject([{ role: 'technician', homes: 2, building: 'Mill House' }])
})

test('a manager invited into all homes gets those that are open when the link is followed, and once only', async () => {
  const token = await invite('manager')
  await closeHousehold(as(ann), homes[1] ?? '', '2026-11-25')
  await takeInvitation(as(bea), token)
  expect(await seen(bea)).toEqual(['0 manager', '2 manager'])
  expect(await takeInvitation(as(await someone(`cy-${number}`)), token)).toEqual({ ok: false, because: 'gone' })
})

test('an invitation never makes anybody less than they are, and removing ends all parts at once', async () => {
  await takeInvitation(as(bea), await invite('manager', 'Ash Lane'))
  await takeInvitation(as(bea), await invite('technician'))
  expect(await seen(bea)).toEqual(['0 technician', '1 technician', '2 manager'])
  expect(await removeEverywhere(as(ann), bea.accountId)).toEqual({ ok: true, homes: 3 })
  expect(await seen(bea)).toEqual([])
  expect(await listLookingAfter(ann)).toEqual([])
})

test('nobody invites into homes of others, removes from them, or sees who is invited', async () => {
  const asked = { kind: 'member', role: 'manager', tokenHash: `stolen ${number}`, expiresAt: WEEK } as const
  expect(await saveInvitation(as(bea), asked)).toEqual({ ok: false, because: 'not-found' })
  expect(await saveInvitation(as(ann), { ...asked, building: 'Nowhere' })).toEqual({ ok: false, because: 'not-found' })
  await invite('manager')
  expect(await listHomesInvitations(bea, AT)).toEqual([])
  expect(await listHomesInvitations(ann, AT)).toHaveLength(1)
  expect(await removeEverywhere(as(bea), ann.accountId)).toEqual({ ok: false, because: 'not-found' })
})
