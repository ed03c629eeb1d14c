import { afterEach, expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { planHousehold } from '@/lib/core/plan'
import type { HouseholdPlan } from '@/lib/core/plan-types'
import { listFeeds } from '@/lib/data/feeds'
import { importHouseholds } from '@/lib/data/import'
import { keepPlans } from '@/lib/data/kept-plans'
import { addRecord } from '@/lib/data/records'
import { answerFeed, changeFeedAddress, createFeed } from '@/lib/outbound/feed'
import { manyHouseholds } from '../bench/many-households'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()
process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'
afterEach(() => {
  process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'
})

let made = 0
const plans = keepPlans<HouseholdPlan>(
  (stored, on) => {
    made++
    return planHousehold(stored.household, tables, on)
  },
  { version: 1 },
)

function ask(path: string, headers: Record<string, string> = {}): Promise<Response> {
  const request = new Request(`http://localhost:3000${path}`, { headers })
  return answerFeed(request, path.replace('/calendar/', ''), plans)
}

async function home(name: string) {
  const owner = await someone(name)
  const imported = await importHouseholds(as(owner), [aHousehold({ name: `${name}'s home`, since: '2026-09-01' })])
  const id = imported.ok ? (imported.ids[0] ?? '') : ''
  return { owner, id, path: (await createFeed(as(owner)))?.path ?? '' }
}

test('an unchanged feed answers 304 without planning anew, and another day without a change too', async () => {
  const { path } = await home('ann')
  const first = await ask(path)
  expect(first.status).toBe(200)
  expect(first.headers.get('content-type')).toBe('text/calendar; charset=utf-8')
  expect(first.headers.get('cache-control')).toContain('private')
  const etag = first.headers.get('etag') ?? ''
  const before = made
  for (const asked of [etag, `W/${etag}`, `"x", ${etag}`]) {
    const again = await ask(path, { 'if-none-match': asked })
    expect(again.status).toBe(304)
    expect(await again.text()).toBe('')
  }
  expect(made).toBe(before)
  expect(await (await ask(path)).text()).toBe(await first.text())
  process.env.PLENUM_NOW = '2026-11-26T18:00:00Z'
  expect((await ask(path, { 'if-none-match': etag })).status).toBe(304)
  expect((await ask(path, { 'if-none-match': '"another"' })).status).toBe(200)
})

test('a calendar of many homes is made in parts, between which others have their turn, and once for all who ask meanwhile', async () => {
  const owner = await someone('ivy')
  await importHouseholds(as(owner), manyHouseholds(450, '2026-11-25'))
  const path = (await createFeed(as(owner)))?.path ?? ''
  const before = made
  const seen = new Set<number>()
  let isMade = false
  const watch = () => {
    seen.add(made - before)
    if (!isMade) setImmediate(watch)
  }
  watch()
  const [one, other] = await Promise.all([ask(path), ask(path)])
  isMade = true
  const text = await one.text()
  expect(await other.text()).toBe(text)
  expect(made - before).toBe(450)
  expect([...seen].filter((count) => count < 450)).toEqual([0, 200, 400])
  // Each event once, and every part in it.
  const uids = text.match(/^UID:.*(?:\r\n .*)*/gm) ?? []
  expect(new Set(uids).size).toBe(uids.length)
  expect(uids.length).toBe(text.match(/^END:VEVENT/gm)?.length)
  expect(new Set(uids.map((uid) => uid.slice(4, 24))).size).toBeGreaterThan(400)
})

test('a calendar that could not be made is tried again by whoever asks next', async () => {
  const { path } = await home('jan')
  const failing = {
    ...plans,
    of() {
      throw new Error('no plan')
    },
  }
  const request = new Request(`http://localhost:3000${path}`)
  await expect(answerFeed(request, path.replace('/calendar/', ''), failing)).rejects.toThrow('no plan')
  expect((await ask(path)).status).toBe(200)
})

test('a record moves the feed at once', async () => {
  const { owner, id, path } = await home('ben')
  const before = await ask(path)
  await addRecord(as(owner), id, { on: '2026-11-25', kind: 'filter-changed', filter: 'hall' })
  const after = await ask(path, { 'if-none-match': before.headers.get('etag') ?? '' })
  expect(after.status).toBe(200)
  expect(await after.text()).not.toBe(await before.text())
})

test('a feed shows its own account’s homes only, and one of one home that home only', async () => {
  const { owner, id, path } = await home('cleo')
  await home('dan')
  await importHouseholds(as(owner), [aHousehold({ id: 'second', name: 'Second home' })])
  const all = await (await ask(path)).text()
  expect(all).toContain('Second home')
  expect(all).not.toContain("dan's home")
  const one = await createFeed(as(owner), id)
  const text = await (await ask(one?.path ?? '')).text()
  expect(text).toContain("cleo's home")
  expect(text).not.toContain('Second home')
  expect(await createFeed(as(await someone('eve')), id)).toBeNull()
})

test('a renewed address ends the earlier one, and what is stored opens nothing', async () => {
  const { owner, path } = await home('fay')
  const [feed] = await listFeeds(owner)
  const renewed = await changeFeedAddress(as(owner), feed?.id ?? '')
  expect((await ask(path)).status).toBe(404)
  expect((await ask(renewed?.path ?? '')).status).toBe(200)
  expect(await changeFeedAddress(as(await someone('gil')), feed?.id ?? '')).toBeNull()
})

test('wrong addresses are refused, and many of them are told to wait, while right ones are still answered', async () => {
  const { path } = await home('hal')
  const guess = () => ask(`/calendar/${'a'.repeat(43)}.ics`, { 'x-forwarded-for': '192.0.2.9' })
  const answers = []
  for (let i = 0; i < 12; i++) answers.push((await guess()).status)
  expect(answers[0]).toBe(404)
  expect(answers.at(-1)).toBe(429)
  expect((await ask(path, { 'x-forwarded-for': '192.0.2.9' })).status).toBe(200)
  for (const odd of ['/calendar/x', '/calendar/../secret.ics', '/calendar/%00.ics'])
    expect((await ask(odd)).status).toBe(404)
})
