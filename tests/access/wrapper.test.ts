import { beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { type ActionOptions, action } from '@/lib/access/action'
import { handler } from '@/lib/access/handler'
import { createRenterLink, openLink } from '@/lib/access/links'
import { NEEDS, type Need } from '@/lib/access/registry'
import { type SessionCookie, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { type Answer, NOT_SENT } from '@/lib/core/answer'
import type { Viewer } from '@/lib/core/viewer'
import { saveInvitation, takeInvitation } from '@/lib/data/invitations'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase } from '../support/fresh-database'
import { PASSES } from '../support/who-may'

// The framework's request is what a unit test lacks; nothing of ours is replaced.
const request = vi.hoisted(() => ({ headers: new Headers() }))
vi.mock('next/headers', () => ({ headers: async () => request.headers }))

freshDatabase()

const PASSWORD = 'four words are enough'
const WHO = ['nobody', 'stranger', 'technician', 'adult', 'owner', 'administrator', 'renter'] as const
type Who = (typeof WHO)[number]
const cookies = {} as Record<Who, SessionCookie[]>
let home = ''

beforeAll(async () => {
  cookies.nobody = []
  let owner: Viewer = { kind: 'sample' }
  for (const who of ['administrator', 'owner', 'adult', 'technician', 'stranger'] as const) {
    const email = `${who}@example.org`
    const made = await createAccountWith({ email, password: PASSWORD }, who === 'owner' ? [aHousehold()] : [])
    if (!made.ok) throw new Error(made.faults[0]?.say)
    const viewer: Viewer = { kind: 'account', accountId: made.accountId, name: who, administrator: false }
    if (who === 'owner') [owner, home] = [viewer, made.ids[0] ?? '']
    if (who === 'adult' || who === 'technician') {
      await saveInvitation(as(owner), {
        kind: 'member',
        householdId: home,
        role: who,
        tokenHash: who,
        expiresAt: '2027-01-01T00:00:00.000Z',
      })
      await takeInvitation(as(viewer), who)
    }
    const signedIn = await signIn(sentWith(), { email, password: PASSWORD })
    cookies[who] = signedIn.ok ? signedIn.cookies : []
  }
  const place = { householdId: home, name: 'Unit 2', lastDay: '2099-01-01', expiresAt: '2099-01-02T00:00:00.000Z' }
  const made = await createRenterLink(as(owner), place)
  const opened = made.ok ? await openLink(sentWith(), made.token) : null
  cookies.renter = opened?.ok ? [opened.cookie] : []
}, 60_000)

beforeEach(() => {
  request.headers = sentWith()
})

let ran = 0
function wrapped(needs: Exclude<Need, 'token'>, change: Partial<ActionOptions<string, string>> = {}) {
  const parse = (form: FormData) => ({ ok: true as const, value: String(form.get('on')) })
  return action<string, string>({
    name: `test-${needs}`,
    needs,
    parse,
    run: async ({ input }) => {
      ran++
      return { ok: true, done: input }
    },
    ...change,
  })
}

function form(household = home): FormData {
  const made = new FormData()
  made.set('household', household)
  made.set('on', '2026-11-25')
  made.set('password', 'secret')
  return made
}

async function outcome(run: () => Promise<Answer<string>>): Promise<'passed' | 'barred'> {
  const before = ran
  const answer = await run().catch((error: { digest?: string }) => error)
  const passed = ran > before
  if (!passed) expect('faults' in answer ? answer.faults : answer.digest).not.toHaveLength(0)
  return passed ? 'passed' : 'barred'
}

test.each(NEEDS.filter((needs) => needs !== 'token'))(
  'an action that needs “%s” lets exactly those in who may',
  async (needs) => {
    for (const who of WHO) {
      request.headers = sentWith(cookies[who])
      const expected = PASSES[needs].includes(who) ? 'passed' : 'barred'
      expect([who, await outcome(() => wrapped(needs)(NOT_SENT, form()))]).toEqual([who, expected])
    }
  },
)

test.each(NEEDS)(
  'a route that needs “%s” lets exactly those in who may, and says 404 for what is not theirs',
  async (needs) => {
    const route = handler({ name: `test-${needs}`, needs, run: async () => new Response('ok') })
    for (const who of WHO) {
      const asked = new Request('http://localhost:3000/x', { headers: sentWith(cookies[who]) })
      const { status } = await route(asked, { params: Promise.resolve({ household: home }) })
      const expected = PASSES[needs].includes(who)
        ? [200]
        : who === 'nobody' || who === 'renter' || needs === 'token'
          ? [401]
          : who === 'technician' || who === 'adult'
            ? [403, 404]
            : [404, 403]
      expect([who, expected.includes(status)]).toEqual([who, true])
      if (who === 'stranger' && needs !== 'token' && !PASSES[needs].includes(who)) expect(status).toBe(404)
    }
  },
)

test('a household that does not exist and someone else’s look alike', async () => {
  request.headers = sentWith(cookies.stranger)
  const [theirs, none] = await Promise.all(
    [home, 'none'].map((id) => wrapped('member')(NOT_SENT, form(id)).catch((error) => error.digest)),
  )
  expect(theirs).toBe(none)
  expect(theirs).toContain('404')
})

test('what another site sends is not done, nor what does not say where it comes from', async () => {
  for (const more of [
    { origin: 'https://evil.example' },
    { origin: 'null' },
    { origin: 'http://localhost.evil.example:3000' },
  ]) {
    request.headers = sentWith(cookies.owner, more)
    expect(await outcome(() => wrapped('owner')(NOT_SENT, form()))).toBe('barred')
  }
  request.headers = sentWith(cookies.owner)
  request.headers.delete('origin')
  expect(await outcome(() => wrapped('owner')(NOT_SENT, form()))).toBe('barred')
  request.headers.set('sec-fetch-site', 'cross-site')
  expect(await outcome(() => wrapped('owner')(NOT_SENT, form()))).toBe('barred')
  request.headers.set('sec-fetch-site', 'same-origin')
  expect(await outcome(() => wrapped('owner')(NOT_SENT, form()))).toBe('passed')
  const route = handler({ name: 'test-post', needs: 'nobody', run: async () => new Response('ok') })
  const posted = new Request('http://localhost:3000/x', {
    method: 'POST',
    headers: { host: 'localhost:3000', origin: 'https://evil.example' },
  })
  expect((await route(posted, { params: Promise.resolve({}) })).status).toBe(403)
})

test('a fault gives back what was typed, but no password', async () => {
  request.headers = sentWith(cookies.owner)
  const faulty = wrapped('owner', { parse: () => ({ ok: false, faults: [{ path: 'on', say: 'Choose a day.' }] }) })
  expect(await faulty(NOT_SENT, form())).toEqual({
    faults: [{ path: 'on', say: 'Choose a day.' }],
    typed: { household: [home], on: ['2026-11-25'] },
    done: null,
  })
})

test('a database that does not answer is said in the answer, and what was typed is kept', async () => {
  request.headers = sentWith(cookies.owner)
  const { DatabaseUnavailable } = await import('@/lib/data/unavailable')
  const failing = wrapped('nobody', { run: () => Promise.reject(new DatabaseUnavailable('read-only')) })
  expect(await failing(NOT_SENT, form())).toMatchObject({
    faults: [{ say: expect.stringContaining('only be read') }],
    typed: { on: ['2026-11-25'] },
  })
})

test('a route without parts in its address is asked without any', async () => {
  const route = handler({
    name: 'test-plain',
    needs: 'nobody',
    run: async ({ householdId }) => new Response(`"${householdId}"`),
  })
  const answer = await route(new Request('http://localhost:3000/x'), { params: Promise.resolve(undefined) })
  expect(await answer.text()).toBe('""')
})
