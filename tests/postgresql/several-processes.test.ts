import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { expect, test } from 'vitest'
import type { Viewer } from '@/lib/core/viewer'
import { listAccounts } from '@/lib/data/accounts'
import { database } from '@/lib/data/connection'
import { findDraft } from '@/lib/data/drafts'
import { listEpisode } from '@/lib/data/episodes'
import { getHousehold, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { later } from '@/lib/data/instant'
import { saveInvitation } from '@/lib/data/invitations'
import { confirmAddress } from '@/lib/data/mail-links'
import { saveReminding } from '@/lib/data/remindings'
import { aHousehold } from '../support/a-household'
import { type Child, startChild } from '../support/child'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'
import { openPostOffice } from '../support/post-office'

freshDatabase()

const ROUNDS = 8
const SYSTEM = { kind: 'system' } as const

function saidBy(children: Child[], what: string): string[] {
  return children.flatMap(({ lines }) =>
    lines.filter((line) => line.startsWith(`${what} `)).map((line) => line.slice(what.length + 1)),
  )
}

test('of several first people who sign up at once, one is the administrator', async () => {
  const children = [1, 2, 3].map((me) =>
    startChild('crowd', [JSON.stringify({ me, rounds: 0, homes: [], starts: [], invitations: [] })]),
  )
  expect(await Promise.all(children.map(({ over }) => over))).toEqual([0, 0, 0])
  const accounts = await listAccounts(SYSTEM)
  expect(accounts.filter(({ administrator }) => administrator)).toHaveLength(1)
  expect(saidBy(children, 'account').sort()).toEqual(accounts.map(({ id }) => id).sort())
})

test('three processes at the same rows and one killed among them: nothing confirmed is lost, and nothing is done twice', async () => {
  await database().user.deleteMany({})
  const ann = await someone('ann')
  await database().installation.update({ where: { id: 1 }, data: { open: true } })
  const imported = await importHouseholds(
    as(ann),
    Array.from({ length: 4 + ROUNDS }, (_, i) => aHousehold({ id: `h-${i}` })),
  )
  const ids = imported.ok ? imported.ids : []
  const [homes, starts] = [ids.slice(0, 4), ids.slice(4)]
  const invitations = Array.from({ length: ROUNDS }, (_, i) => `hash-${i}`)
  for (const [i, tokenHash] of invitations.entries()) {
    const expiresAt = later(AT, 3600)
    await saveInvitation(as(ann), { kind: 'member', householdId: starts[i], role: 'adult', tokenHash, expiresAt })
  }
  const told = { rounds: ROUNDS, accountId: ann.accountId, homes, starts, invitations }
  const children = [1, 2, 3, 4].map((me) =>
    startChild('crowd', [JSON.stringify({ me, ...told, ...(me === 4 && { rounds: 500 }) })]),
  )
  const killed = children[3] as Child
  await killed.said('people 4-2')
  killed.process.kill('SIGKILL')
  const ends = await Promise.all(children.map(({ over }) => over))
  expect(ends).toEqual([0, 0, 0, null])

  const days = (await getHousehold(ann, homes[0] ?? '')).household.records.map(({ on }) => on)
  expect(new Set(days).size).toBe(days.length)
  expect(saidBy(children, 'record').filter((on) => !days.includes(on))).toEqual([])
  const pair = await Promise.all(
    [1, 2].map(async (i) => (await getHousehold(ann, homes[i] ?? '')).household.records.map(({ on }) => on).sort()),
  )
  expect(pair[0]).toEqual(pair[1])
  expect(saidBy(children, 'both').filter((on) => !pair[0]?.includes(on))).toEqual([])

  const rows = await database().household.findMany({ where: { ownerId: ann.accountId } })
  expect(new Set(rows.map(({ position }) => position)).size, 'two homes in one place').toBe(rows.length)
  const batches = new Map<string, number>()
  for (const { fileId } of rows.filter((row) => /^\d/.test(row.fileId))) {
    const batch = fileId.replace(/-\d+$/, '')
    batches.set(batch, (batches.get(batch) ?? 0) + 1)
  }
  expect([...batches.values()].filter((count) => count !== 3)).toEqual([])
  expect(saidBy(children, 'import').filter((batch) => !batches.has(batch))).toEqual([])

  const draft = Object.keys((await findDraft(ann))?.answers ?? {})
  expect(saidBy(children, 'draft').filter((key) => !draft.includes(key))).toEqual([])
  // Each confirmed change of the description counted from what the one before it left; of the killed one's, one may be unsaid.
  const people = (await getHousehold(ann, homes[3] ?? '')).household.people - aHousehold().people
  expect([0, 1]).toContain(people - saidBy(children, 'people').length)
  expect(people).toBeGreaterThan(ROUNDS)

  for (const home of starts) {
    const spent = (await listEpisode(ann, home)).filter(({ kind }) => kind === 'start-spent')
    expect(spent, 'the one start of a home').toHaveLength(1)
    expect(saidBy(children, 'start').filter((said) => said === home).length).toBeLessThan(2)
  }
  const used = saidBy(children, 'invited')
  expect(new Set(used).size).toBe(used.length)
  for (const home of starts) {
    expect(await database().membership.count({ where: { householdId: home } }), 'a link for one').toBe(2)
  }
  const counts = saidBy(children, 'count').map(Number)
  expect(new Set(counts).size, 'two tries counted as one').toBe(counts.length)
  expect((await listHomes(ann)).length).toBe(rows.length)
}, 180_000)

const PEOPLE = 20

test('reminders by three processes at once, one killed among them: each person has one mail, and every one arrives', async () => {
  const office = await openPostOffice()
  const zone = 'America/Chicago'
  const viewers: Viewer[] = []
  await database().reminding.deleteMany({})
  for (let i = 0; i < PEOPLE; i++) {
    const viewer = await someone(`p-${i}`)
    viewers.push(viewer)
    await confirmAddress(viewer.accountId)
    await importHouseholds(as(viewer), [
      aHousehold({
        id: 'h',
        since: '2026-03-01',
        records: [{ on: '2026-03-20', kind: 'filter-changed', filter: 'hall' }],
      }),
    ])
    const when = { weekday: 6, hour: 9, timeZone: zone, nextAt: '2026-11-28T15:00:00.000Z' }
    await saveReminding(as(viewer), { mail: true, push: false, ...when, today: '2026-11-25' })
  }
  const mail = { SMTP_URL: office.url, MAIL_FROM: 'plenum@example.org', PUBLIC_URL: 'https://plenum.example.org' }
  const remind = (at: string) => {
    const child = spawn(process.execPath, ['--conditions=react-server', '--import=tsx', 'lib/cli/reminders.ts'], {
      env: { ...process.env, ...mail, PLENUM_NOW: at },
      stdio: ['ignore', 'ignore', 'inherit'],
    })
    return { child, over: once(child, 'close').then(([code]) => code as number | null) }
  }
  const first = [1, 2, 3].map(() => remind('2026-11-28T15:00:00Z'))
  // Killed as soon as mails go out, with some of them in its hands.
  await new Promise<void>((resolve) => office.beforeSaying(async () => resolve()))
  first[0]?.child.kill('SIGKILL')
  const ends = await Promise.all(first.map(({ over }) => over))
  expect(ends.slice(1)).toEqual([0, 0])
  // What the killed one had in hand waits until its lease is over.
  const second = remind('2026-11-28T15:12:00Z')
  expect(await second.over).toBe(0)
  await office.close()

  const byPerson = new Map<string, Set<string | undefined>>()
  for (const { to, messageId } of office.mails) {
    const address = [to].flat()[0]?.text ?? ''
    byPerson.set(address, (byPerson.get(address) ?? new Set()).add(messageId))
  }
  expect(byPerson.size).toBe(PEOPLE)
  // A second copy of the same Message-ID is what a kill between handing over and noting may leave; another mail never.
  expect([...byPerson].filter(([, ids]) => ids.size !== 1)).toEqual([])
  expect(office.mails.length - PEOPLE).toBeLessThanOrEqual(4)
}, 180_000)
