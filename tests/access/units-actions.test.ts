import { beforeAll, expect, test, vi } from 'vitest'
import { GET as homesCsv } from '@/app/homes/export.csv/route'
import { bringUnits } from '@/app/homes/import/actions'
import { learnApart, learnTogether } from '@/app/homes/learning/actions'
import { endEverywhere, inviteIntoHomes, revokeHomesInvitation } from '@/app/homes/people/actions'
import { recordTicked, undoTicked } from '@/app/homes/record/actions'
import { POST as recordKept } from '@/app/homes/record/kept/route'
import { keepStock } from '@/app/supplies/actions'
import { GET as suppliesCsv } from '@/app/supplies/csv/route'
import { acceptInvitation, createInvitation } from '@/lib/access/invite'
import { currentViewer, type SessionCookie, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { now } from '@/lib/clock'
import { NOT_SENT } from '@/lib/core/answer'
import type { Act, Viewer } from '@/lib/core/viewer'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { instant } from '@/lib/data/instant'
import { listHomesInvitations } from '@/lib/data/invitations'
import { listMembers } from '@/lib/data/members'
import { findPooling } from '@/lib/data/pooled-dust'
import { listStock } from '@/lib/data/stock'
import { stockFields } from '@/lib/forms/stock-form'
import { tickValue } from '@/lib/forms/ticked-form'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { freshDatabase } from '../support/fresh-database'

// The framework's request and its cache are what a test without a server lacks; nothing of ours is replaced.
const request = vi.hoisted(() => ({ headers: new Headers() }))
vi.mock('next/headers', () => ({ headers: async () => request.headers, cookies: async () => new Map() }))
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`redirect ${to}`)
  },
  notFound: () => {
    throw new Error('not found')
  },
}))
vi.mock('next/cache', () => ({ refresh: () => {} }))
vi.mock('next/server', () => ({ connection: async () => {} }))

freshDatabase()

const PASSWORD = 'four words are enough'
const WHO = ['owner', 'adult', 'manager', 'technician', 'other'] as const
const cookies: Record<string, SessionCookie[]> = { nobody: [] }
const KIND = { size: '16x25x1', medium: 'pleated', merv: 8 } as const
let home = ''

async function actOf(who: string): Promise<Act> {
  const viewer = await currentViewer(sentWith(cookies[who]))
  if (!viewer) throw new Error(`${who} is not signed in`)
  return { viewer, at: instant(now()), door: 'page' }
}

beforeAll(async () => {
  for (const who of WHO) {
    const email = `${who}@example.org`
    await createAccountWith({ email, password: PASSWORD, name: who }, [])
    const signed = await signIn(sentWith(), { email, password: PASSWORD })
    cookies[who] = signed.ok ? signed.cookies : []
  }
  const imported = await importHouseholds(await actOf('owner'), [aHousehold({ records: [] })])
  home = imported.ok ? (imported.ids[0] ?? '') : ''
  for (const role of ['adult', 'manager', 'technician'] as const) {
    const invited = await createInvitation(await actOf('owner'), { kind: 'member', householdId: home, role })
    if (invited.ok) await acceptInvitation(await actOf(role), invited.token)
  }
})

const OWNER = async (): Promise<Viewer> => (await actOf('owner')).viewer
const records = async () => (await getHousehold(await OWNER(), home)).household.records.length

function ticked(on = '2026-11-20'): FormData {
  const form = new FormData()
  form.append('did', tickValue({ householdId: home, task: 'change-filter', subject: 'hall' }))
  form.set('on', on)
  form.set('once', `page of ${on}`)
  return form
}

test('who may record in a home may record it together with others; a technician, a stranger and nobody may not', async () => {
  const done: Record<string, boolean> = {}
  for (const who of ['nobody', ...WHO]) {
    request.headers = sentWith(cookies[who])
    const answer = await recordTicked(NOT_SENT, ticked())
    done[who] = answer.done !== null
    const allowed = ['owner', 'adult', 'manager'].includes(who)
    expect(answer.faults.length > 0, who).toBe(!allowed)
    if (!answer.done?.undo) continue
    // The same by somebody who may not.
    for (const other of ['nobody', 'technician', 'other']) {
      request.headers = sentWith(cookies[other])
      const form = new FormData()
      form.set('entries', answer.done.undo)
      expect((await undoTicked(NOT_SENT, form)).done, other).toBeNull()
    }
    expect(await records()).toBe(1)
    request.headers = sentWith(cookies[who])
    const form = new FormData()
    form.set('entries', answer.done.undo)
    expect((await undoTicked(NOT_SENT, form)).done).not.toBeNull()
  }
  expect(done).toEqual({ nobody: false, owner: true, adult: true, manager: true, technician: false, other: false })
})

test('what a phone kept is taken from whoever may record, once; from others it is refused with the reason', async () => {
  const before = await records()
  const form = ticked('2026-11-18')
  const body = new URLSearchParams([...form].map(([name, value]): [string, string] => [name, String(value)]))
  const answers: Record<string, number> = {}
  for (const who of ['nobody', 'technician', 'other', 'manager', 'manager', 'owner']) {
    const asked = new Request('http://localhost:3000/homes/record/kept', {
      ...{ method: 'POST', body },
      headers: sentWith(cookies[who]),
    })
    asked.headers.set('content-type', 'application/x-www-form-urlencoded')
    const answer = await recordKept(asked, { params: Promise.resolve({}) })
    answers[who] = answer.status
    if (answer.status === 422) expect((await answer.json()).error, who).toContain('Nothing was recorded')
  }
  expect(answers).toEqual({ nobody: 401, technician: 422, other: 422, manager: 200, owner: 200 })
  expect(await records()).toBe(before + 1)
})

test('everybody’s shelf is their own, and nobody has none', async () => {
  const fields = stockFields(KIND)
  for (const [i, who] of ['nobody', ...WHO].entries()) {
    request.headers = sentWith(cookies[who])
    const form = new FormData()
    form.set(fields.hand, String(i + 10))
    form.set(fields.box, '2')
    expect((await keepStock(NOT_SENT, form)).done === null, who).toBe(who === 'nobody')
  }
  for (const [i, who] of WHO.entries())
    expect((await listStock((await actOf(who)).viewer)).map(({ onHand }) => onHand)).toEqual([i + 11])
})

test('the order is of the homes that one sees: a stranger’s is empty, and nobody is asked to sign in', async () => {
  const lines: Record<string, number> = {}
  for (const who of ['nobody', ...WHO]) {
    const asked = new Request('http://localhost:3000/supplies/csv', { headers: sentWith(cookies[who]) })
    const answer = await suppliesCsv(asked, { params: Promise.resolve({}) })
    lines[who] = answer.status === 200 ? (await answer.text()).trim().split('\r\n').length - 1 : -answer.status
  }
  expect(lines).toMatchObject({ nobody: -401, other: 0 })
})

test('only whoever owns homes invites into them, and takes that back, and removes', async () => {
  const send = (fields: Record<string, string>) => {
    const form = new FormData()
    for (const [name, value] of Object.entries(fields)) form.set(name, value)
    return form
  }
  for (const who of ['nobody', 'adult', 'manager', 'technician', 'other']) {
    request.headers = sentWith(cookies[who])
    expect((await inviteIntoHomes(NOT_SENT, send({ role: 'manager' }))).done, who).toBeNull()
  }
  request.headers = sentWith(cookies.owner)
  expect((await inviteIntoHomes(NOT_SENT, send({ role: 'owner' }))).faults.map(({ path }) => path)).toEqual(['role'])
  expect((await inviteIntoHomes(NOT_SENT, send({ role: 'manager' }))).done?.link).toMatch(/\/invitation\//)
  const [open] = await listHomesInvitations(await OWNER(), instant(now()))
  const members = (await listMembers(await OWNER(), home)).map(({ accountId }) => accountId)
  for (const who of ['nobody', 'adult', 'manager', 'technician', 'other']) {
    request.headers = sentWith(cookies[who])
    expect((await revokeHomesInvitation(NOT_SENT, send({ invitation: open?.id ?? '' }))).done, who).toBeNull()
    for (const account of members) expect((await endEverywhere(NOT_SENT, send({ account }))).done, who).toBeNull()
  }
  expect(await listMembers(await OWNER(), home)).toHaveLength(4)
  request.headers = sentWith(cookies.owner)
  expect((await revokeHomesInvitation(NOT_SENT, send({ invitation: open?.id ?? '' }))).done).not.toBeNull()
})

/** Sends a sheet as somebody; gives where it led, or what was wrong with it. */
async function bring(who: string, text: string, fields: Record<string, string> = {}): Promise<string> {
  request.headers = sentWith(cookies[who])
  const form = new FormData()
  form.set('file', new File([text], 'units.csv'))
  form.set('do', 'keep')
  for (const [name, value] of Object.entries(fields)) form.set(name, value)
  try {
    const { faults, done } = await bringUnits(NOT_SENT, form)
    return [...faults, ...(done?.faults ?? [])].map(({ say }) => say).join(' ') || (done?.say ?? 'shown')
  } catch (error) {
    return (error as Error).message
  }
}

test('only whoever may change a home changes it by a sheet, and only a building’s owner adds units to it', async () => {
  const owner = await OWNER()
  const before = await getHousehold(owner, home)
  const { building, name } = before
  const row = (unit: string, pets: number) => `Building,Unit,Pets\n"${building}","${unit}",${pets}`
  const led: Record<string, string> = {}
  for (const [i, who] of ['nobody', ...WHO].entries()) led[who] = await bring(who, row(name, 10 + i))
  expect(led).toEqual({
    nobody: expect.stringContaining('signed out'),
    owner: 'redirect /homes/import?fresh=0&changed=1&same=0',
    adult: 'redirect /homes/import?fresh=0&changed=1&same=0',
    manager: 'redirect /homes/import?fresh=0&changed=1&same=0',
    technician: expect.stringContaining('does not include changing it'),
    // Knows of no such home: for them it is a unit of a building that is new, whose place is to be told.
    other: 'Say first where the new units stand.',
  })
  expect((await getHousehold(owner, home)).household.pets).toBe(13)
  for (const who of ['adult', 'manager', 'technician'])
    expect(await bring(who, row('Another', 1)), who).toContain('belongs to somebody else')
  expect(await bring('owner', row('Another', 1))).toBe('redirect /homes/import?fresh=1&changed=0&same=0')
  expect(await bring('other', row(name, 1), { place: 'station chicago' })).toContain('redirect')
  expect((await getHousehold(owner, home)).household.pets).toBe(13)
})

test('the sheet of all units goes to who may bring it back, and brought back it changes nothing', async () => {
  const sheets: Record<string, string> = {}
  for (const who of ['nobody', ...WHO]) {
    const asked = new Request('http://localhost:3000/homes/export.csv', { headers: sentWith(cookies[who]) })
    const answer = await homesCsv(asked, { params: Promise.resolve({}) })
    sheets[who] = answer.status === 200 ? await answer.text() : String(answer.status)
  }
  const rows = (who: string) => (sheets[who] ?? '').trim().split('\r\n').length - 1
  expect([sheets.nobody, rows('owner'), rows('manager'), rows('technician')]).toEqual(['401', 2, 1, 0])
  expect(await bring('owner', sheets.owner ?? '')).toBe('redirect /homes/import?fresh=0&changed=0&same=2')
})

test('rows that name one unit twice, and what is wrong in other rows, are said at once with their rows', async () => {
  const sheet = 'Building,Unit,Pets,Tons\nElm Row,1,2,\nElm Row,2,many,\nELM ROW , 1,2,99'
  expect(await bring('owner', sheet)).toMatch(/^“Pets” must be .* “Tons of cooling” must be/)
  expect(await bring('owner', sheet.replace('99', '').replace('many', ''))).toBe(
    '“1” in “ELM ROW” stands in row 2 already. Keep one of the two rows (2 and 4).',
  )
})

test('homes learn from each other for their owner alone: whoever presses the button presses it for their own', async () => {
  const pools = async (who: string) => {
    const { viewer } = await actOf(who)
    return viewer.kind === 'account' && (await findPooling(viewer.accountId)).pools
  }
  for (const who of ['nobody', 'adult', 'manager', 'technician', 'other']) {
    request.headers = sentWith(cookies[who])
    const led = await learnTogether(NOT_SENT, new FormData()).catch((error: Error) => error.message)
    if (who === 'nobody') expect(led).toMatchObject({ done: null })
    else expect(led).toBe('redirect /homes/learning?now=together')
  }
  expect(await pools('owner')).toBe(false)
  request.headers = sentWith(cookies.owner)
  await learnTogether(NOT_SENT, new FormData()).catch(() => {})
  expect(await pools('owner')).toBe(true)
  for (const who of ['nobody', 'adult', 'manager', 'technician', 'other']) {
    request.headers = sentWith(cookies[who])
    await learnApart(NOT_SENT, new FormData()).catch(() => {})
  }
  expect(await pools('owner')).toBe(true)
  request.headers = sentWith(cookies.owner)
  await learnApart(NOT_SENT, new FormData()).catch(() => {})
  expect(await pools('owner')).toBe(false)
})
