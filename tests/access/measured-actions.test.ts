import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test, vi } from 'vitest'
import { keepExport, takeBackMeasured, takeMeasuredOut } from '@/app/home/[household]/measured/actions'
import { keepBills } from '@/app/home/[household]/measured/bills/actions'
import { POST as bring } from '@/app/home/[household]/measured/bring/route'
import { keepHappened, takeHappenedOut } from '@/app/home/[household]/measured/happened/actions'
import { keepHours } from '@/app/home/[household]/measured/hours/actions'
import { keepMeter } from '@/app/home/[household]/measured/meter/actions'
import { acceptInvitation, createInvitation } from '@/lib/access/invite'
import { currentViewer, type SessionCookie, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { now } from '@/lib/clock'
import { NOT_SENT } from '@/lib/core/answer'
import type { Act } from '@/lib/core/viewer'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { instant } from '@/lib/data/instant'
import { changeReadings, listMeasurings, listReadings } from '@/lib/data/readings'
import { spool } from '@/lib/data/spool'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { aMeasuredYear } from '../support/a-measured-year'
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
vi.mock('next/server', () => ({ connection: async () => {} }))

const place = freshDatabase()
const PASSWORD = 'four words are enough'
const WHO = ['owner', 'adult', 'manager', 'technician', 'other'] as const
const MAY = ['owner', 'adult', 'manager']
const cookies: Record<string, SessionCookie[]> = { nobody: [] }
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
  const imported = await importHouseholds(await actOf('owner'), [aHousehold({ readings: [] })])
  home = imported.ok ? (imported.ids[0] ?? '') : ''
  for (const role of ['adult', 'manager', 'technician'] as const) {
    const invited = await createInvitation(await actOf('owner'), { kind: 'member', householdId: home, role })
    if (invited.ok) await acceptInvitation(await actOf(role), invited.token)
  }
})

const state = async () => {
  const { household } = await getHousehold((await actOf('owner')).viewer, home)
  return JSON.stringify([household.readings, household.dustEvents, household.weather])
}

function form(fields: Record<string, string>): FormData {
  const made = new FormData()
  for (const [name, value] of Object.entries({ household: home, ...fields })) made.set(name, value)
  return made
}

/** What each may be asked to do, with fields that do something for whoever may. */
const DEEDS: [string, (form: FormData) => Promise<unknown>, () => Promise<Record<string, string>>][] = [
  [
    'keep an export',
    (sent) => keepExport(NOT_SENT, sent),
    async () => {
      const rows = Array.from(
        { length: 20 },
        (_, i) => `2026-02-${String(i + 1).padStart(2, '0')},${(now().getTime() % 9) + 1}`,
      )
      async function* chunks() {
        yield new TextEncoder().encode(`Day,Heating hours\n${rows.join('\n')}`)
      }
      const spooled = await spool(home, chunks(), instant(now()))
      return { upload: spooled.ok ? spooled.id : '' }
    },
  ],
  [
    'keep a meter',
    (sent) => keepMeter(NOT_SENT, sent),
    async () => ({
      ...{ button: 'save', counter: 'coolHours', 'day-0': '2025-07-01', 'stand-0': '1', 'day-1': '2025-07-09' },
      ...{ 'stand-1': String(2 + (now().getTime() % 100)) },
    }),
  ],
  [
    'keep hours',
    (sent) => keepHours(NOT_SENT, sent),
    async () => ({
      ...{ button: 'save', 'from-0': '2024-07-01', 'to-0': '2024-07-31' },
      'coolHours-0': String(2 + (now().getTime() % 100)),
    }),
  ],
  [
    'keep bills',
    (sent) => keepBills(NOT_SENT, sent),
    async () => ({
      ...{ button: 'save', unit: 'therm', 'from-0': '2024-01-05', 'to-0': '2024-02-04' },
      ...{ 'amount-0': String(50 + (now().getTime() % 50)) },
    }),
  ],
  [
    'keep what happened',
    (sent) => keepHappened(NOT_SENT, sent),
    async () => ({ what: 'smoke', from: '2026-10-20', to: '2026-10-25' }),
  ],
  [
    'take out what happened',
    (sent) => takeHappenedOut(NOT_SENT, sent),
    async () => {
      await keepHappenedAsOwner()
      return { list: 'dust', is: 'dust 2026-10-20 2026-10-25' }
    },
  ],
  [
    'take out a reading',
    (sent) => takeMeasuredOut(NOT_SENT, sent),
    async () => ({ reading: (await listReadings((await actOf('owner')).viewer, home)).at(-1)?.id ?? '' }),
  ],
  [
    'take back',
    (sent) => takeBackMeasured(NOT_SENT, sent),
    async () => {
      const owner = await actOf('owner')
      // One that somebody could not take back is still there for the next.
      const left = (await listMeasurings(owner.viewer, home)).find(({ from, undone }) => from < '2022' && !undone)
      if (left) return { measuring: left.id }
      const add = aMeasuredYear(3).map((one) => ({ ...one, from: inYear(one.from), to: inYear(one.to) }))
      const saved = await changeReadings(owner, home, { kind: 'thermostat', add, remove: [] })
      return { measuring: saved.ok ? saved.id : '' }
    },
  ],
]

const inYear = (day: string) => day.replace('2025', '2021')

async function keepHappenedAsOwner(): Promise<void> {
  request.headers = sentWith(cookies.owner)
  await keepHappened(NOT_SENT, form({ what: 'dust', from: '2026-10-20', to: '2026-10-25' })).catch(() => null)
}

for (const [name, deed, fields] of DEEDS)
  test(`who manages the home may ${name}; a technician, a stranger and nobody change nothing`, async () => {
    for (const who of ['nobody', 'technician', 'other', ...MAY]) {
      const sent = form(await fields())
      const before = await state()
      request.headers = sentWith(cookies[who])
      const answer = await deed(sent).catch((error: Error) => error.message)
      const mayDo = MAY.includes(who)
      expect(String(answer).startsWith('redirect'), `${who}: ${JSON.stringify(answer)}`).toBe(mayDo)
      // A figure may be the one that stood there by chance; what may not be done is what counts.
      if (!mayDo) expect(await state(), who).toBe(before)
    }
  })

test('who manages the home may bring a file; from others not a byte is kept', async () => {
  const folder = join(place.folder, '.plenum-brought', home)
  const count = () => readdirSync(folder).length
  for (const who of ['nobody', 'technician', 'other', 'manager', 'owner']) {
    const body = new FormData()
    body.append('file', new File(['when,what'], 'a.csv'))
    const encoded = new Response(body)
    const headers = sentWith(cookies[who], { 'content-type': encoded.headers.get('content-type') ?? '' })
    const asked = new Request('http://localhost:3000/', { method: 'POST', headers, body: await encoded.arrayBuffer() })
    const before = count()
    const answer = await bring(asked, { params: Promise.resolve({ household: home }) })
    expect([answer.status, count() - before], who).toEqual(
      who === 'nobody' ? [401, 0] : who === 'other' ? [404, 0] : MAY.includes(who) ? [303, 1] : [403, 0],
    )
    if (MAY.includes(who)) expect(answer.headers.get('location')).toMatch(/\/measured\/[a-z0-9]{16}$/)
  }
})

test('a file that says it is larger than the limit is refused before any of it is read', async () => {
  const headers = sentWith(cookies.owner, {
    ...{ 'content-type': 'multipart/form-data; boundary=x', 'content-length': '500000000', accept: 'application/json' },
  })
  const body = new ReadableStream(
    {
      pull() {
        throw new Error('it was read')
      },
    },
    { highWaterMark: 0 },
  )
  const asked = new Request('http://localhost:3000/', { method: 'POST', headers, body, duplex: 'half' } as RequestInit)
  const answer = await bring(asked, { params: Promise.resolve({ household: home }) })
  expect(await answer.json()).toMatchObject({ say: expect.stringContaining('60 MB') })
})
