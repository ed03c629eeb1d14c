import { readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { Viewer } from '@/lib/core/viewer'
import { saveApiToken } from '@/lib/data/api-tokens'
import { saveFeed } from '@/lib/data/feeds'
import { importHouseholds } from '@/lib/data/import'
import { saveInvitation } from '@/lib/data/invitations'
import { aHousehold } from '../support/a-household'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

/** What a stranger gets for another's household, by every exported function that takes who asks. */
const NOTHING = [null, undefined, 0]
const REFUSED = { ok: false }

interface Walk {
  viewer: Viewer
  home: string
  entry: string
  reading: string
  invitation: string
  feed: string
  token: string
}

// Every function of lib/data that takes a viewer or an act stands here; the test below counts them.
const ASKED: Record<string, (f: (...args: never[]) => unknown, walk: Walk) => unknown> = {
  listHomes: (f, w) => call(f, w.viewer),
  listExportNames: (f, w) => call(f, w.viewer),
  listHouseholds: (f, w) => call(f, w.viewer, [w.home]),
  readInParts: async (f, w) => (await (call(f, w.viewer, [w.home]) as AsyncGenerator<unknown[]>).next()).value,
  findHousehold: (f, w) => call(f, w.viewer, w.home),
  getHousehold: async (f, w) =>
    (call(f, w.viewer, w.home) as Promise<unknown>).catch((error) =>
      error.name === 'HouseholdNotFound' ? null : error,
    ),
  exportHouseholds: (f, w) => call(f, w.viewer, [w.home]),
  listLog: (f, w) => call(f, w.viewer, w.home),
  listReadings: (f, w) => call(f, w.viewer, w.home),
  listHeirs: (f, w) => call(f, w.viewer),
  listMembers: (f, w) => call(f, w.viewer, w.home),
  findRoleIn: (f, w) => call(f, w.viewer, w.home),
  listInvitations: (f, w) => call(f, w.viewer, AT, w.home),
  listAccounts: (f, w) => call(f, w.viewer),
  saveHousehold: (f, w) => call(f, as(w.viewer), w.home, aHousehold(), 99),
  saveNotes: (f, w) => call(f, as(w.viewer), w.home, { accessNote: 'x' }),
  saveContacts: (f, w) => call(f, as(w.viewer), w.home, []),
  addRecord: (f, w) => call(f, as(w.viewer), w.home, { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' }),
  recordTogether: (f, w) =>
    call(f, as(w.viewer), [
      {
        householdId: w.home,
        record: { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' },
        key: null,
      },
    ]),
  undoTogether: (f, w) => call(f, as(w.viewer), [{ householdId: w.home, entryId: w.entry }]),
  correctRecord: (f, w) =>
    call(f, as(w.viewer), w.home, w.entry, { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' }),
  undoRecord: (f, w) => call(f, as(w.viewer), w.home, w.entry),
  changeReadings: (f, w) =>
    call(f, as(w.viewer), w.home, { kind: 'thermostat', add: aHousehold().readings, remove: [w.reading] }),
  undoMeasuring: (f, w) => call(f, as(w.viewer), w.home, 'a guess'),
  findMeasuring: (f, w) => call(f, w.viewer, w.home, 'a guess'),
  listMeasurings: (f, w) => call(f, w.viewer, w.home),
  removeReading: (f, w) => call(f, as(w.viewer), w.home, w.reading),
  putOff: (f, w) =>
    call(f, as(w.viewer), w.home, { task: 'change-filter', subject: 'hall', until: '2026-12-01', today: '2026-11-25' }),
  clearPutOff: (f, w) => call(f, as(w.viewer), w.home, { task: 'change-filter', subject: 'hall' }),
  closeHousehold: (f, w) => call(f, as(w.viewer), w.home, '2026-11-25'),
  reopenHousehold: (f, w) => call(f, as(w.viewer), w.home),
  purgeHousehold: (f, w) => call(f, as(w.viewer), w.home, 'everything'),
  removeMember: (f, w) => call(f, as(w.viewer), w.home, 'account-owner'),
  saveInvitation: (f, w) =>
    call(f, as(w.viewer), { kind: 'member', householdId: w.home, tokenHash: 'x', expiresAt: AT }),
  revokeInvitation: (f, w) => call(f, as(w.viewer), w.invitation),
  saveUnits: (f, w) =>
    call(f, as(w.viewer), {
      fresh: [],
      changed: [{ id: w.home, revision: 1, household: aHousehold(), records: [], accessNote: 'x' }],
    }),
  removeEverywhere: (f, w) => call(f, as(w.viewer), 'account-owner'),
  setSignUps: (f, w) => call(f, as(w.viewer), true),
  deleteAccount: (f, w) => call(f, as(w.viewer), 'account-owner'),
  listFeeds: (f, w) => call(f, w.viewer),
  findReminding: (f, w) => call(f, w.viewer),
  listReminded: (f, w) => call(f, w.viewer, w.home),
  countPushTargets: (f, w) => call(f, w.viewer),
  listSent: (f, w) => call(f, w.viewer),
  findAway: (f, w) => call(f, w.viewer, w.home),
  listPauses: (f, w) => call(f, w.viewer, w.home, AT),
  takeBackPause: (f, w) => call(f, as(w.viewer), w.home, 'a guess'),
  saveAway: (f, w) => call(f, as(w.viewer), w.home, { today: '2026-11-25', until: '2026-12-25' }),
  clearAway: (f, w) => call(f, as(w.viewer), w.home),
  saveFeed: (f, w) => call(f, as(w.viewer), { secretHash: 'x', householdId: w.home }),
  renewFeed: (f, w) => call(f, as(w.viewer), w.feed, 'x'),
  endFeed: (f, w) => call(f, as(w.viewer), w.feed),
  listApiTokens: (f, w) => call(f, w.viewer),
  revokeApiToken: (f, w) => call(f, as(w.viewer), w.token),
  takeInvitation: (f, w) => call(f, as(w.viewer), 'a guess'),
  saveRenterLink: (f, w) =>
    call(f, as(w.viewer), { householdId: w.home, name: 'x', tokenHash: 'y', lastDay: '2027-01-01', expiresAt: AT }),
  listRenterLinks: (f, w) => call(f, w.viewer, w.home),
  revokeRenterLink: (f, w) => call(f, as(w.viewer), w.home, 'a guess'),
  addMessage: (f, w) => call(f, as(w.viewer), w.home, 'x'),
  listMessages: (f, w) => call(f, w.viewer, w.home),
  markMessageRead: (f, w) => call(f, as(w.viewer), w.home, 'a guess'),
  saveFoundFilter: (f, w) =>
    call(f, as(w.viewer), w.home, { place: 'wall-grille', nominal: null, medium: null, at: { filter: 'hall' } }),
  savePhoto: (f, w) => call(f, as(w.viewer), w.home, { kind: 'filter', subject: 'hall', sent: Buffer.from('x') }),
  listPhotos: (f, w) => call(f, w.viewer, w.home),
  findPicture: (f, w) => call(f, w.viewer, w.home, 'a guess'),
  removePhoto: (f, w) => call(f, as(w.viewer), w.home, 'a guess'),
  archiveOf: (f, w) => call(f, w.viewer, w.home),
  saveBrief: (f, w) => call(f, as(w.viewer), w.home, { key: 'x', flow: 'no-heat', title: 'x', page: {} }),
  findBrief: (f, w) => call(f, w.viewer, w.home, 'a guess'),
  listBriefs: (f, w) => call(f, w.viewer, w.home),
  shareBrief: (f, w) => call(f, as(w.viewer), w.home, 'a guess', null),
  recordEpisode: (f, w) => call(f, as(w.viewer), w.home, [{ key: 'x', kind: 'trip', minute: 1 }]),
  listEpisode: (f, w) => call(f, w.viewer, w.home),
}

// They write into the caller's own account, or take no household.
const OWN = new Set([
  'importArchive',
  'importHouseholds',
  'findOwnAccount',
  'renameAccount',
  'endSessions',
  'findDraft',
  'saveDraft',
  'dropDraft',
  'finishDraft',
  'saveApiToken',
  'saveReminding',
  'savePushTarget',
  'endPush',
  'listStock',
  'saveStock',
  'listHomesInvitations',
  'listLookingAfter',
])
// They run inside a transaction that a function above has opened, with what it checked.
const INSIDE = new Set([
  'notePause',
  'endPauses',
  'readHouseholds',
  'importInto',
  'take',
  'findRole',
  'raise',
  'within',
  'roleOf',
  'signature',
  'entryRows',
  'addHouseholdIn',
  'addHouseholdsIn',
  'recordIn',
  'undoIn',
])

function call(f: (...args: never[]) => unknown, ...args: unknown[]): unknown {
  return (f as (...args: unknown[]) => unknown)(...args)
}

async function exported(): Promise<Map<string, (...args: never[]) => unknown>> {
  const functions = new Map<string, (...args: never[]) => unknown>()
  for (const file of readdirSync('lib/data')) {
    for (const [name, value] of Object.entries(await import(`@/lib/data/${file.replace('.ts', '')}.ts`))) {
      if (typeof value === 'function' && /^async |^function /.test(value.toString()))
        functions.set(name, value as never)
    }
  }
  return functions
}

function asksWho(f: (...args: never[]) => unknown): boolean {
  return /^(async )?function\*? \w+\(([^)]*)\b(viewer|act)\b/.test(f.toString())
}

test('every question that takes who asks is walked here', async () => {
  const known = new Set([...Object.keys(ASKED), ...OWN, ...INSIDE])
  const missing = [...(await exported())].filter(([name, f]) => asksWho(f) && !known.has(name)).map(([name]) => name)
  expect(missing).toEqual([])
})

test('a stranger, and nobody, get nothing of someone else’s household and change nothing in it', async () => {
  const owner = await someone('owner')
  const imported = await importHouseholds(as(owner), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const functions = await exported()
  const find = functions.get('findHousehold') as never as (viewer: Viewer, id: string) => Promise<unknown>
  const log = (await call(functions.get('listLog') as never, owner, home)) as { id: string }[]
  const readings = (await call(functions.get('listReadings') as never, owner, home)) as { id: string }[]
  const invited = await saveInvitation(as(owner), {
    kind: 'member',
    householdId: home,
    tokenHash: 'secret',
    expiresAt: '2027-01-01T00:00:00.000Z',
  })
  const feed = await saveFeed(as(owner), { secretHash: 'kept', householdId: home })
  const token = await saveApiToken(as(owner), { tokenHash: 'kept', name: 'Kitchen' })
  const before = await find(owner, home)
  const ids = {
    home,
    entry: log[0]?.id ?? '',
    reading: readings[0]?.id ?? '',
    invitation: invited.ok ? invited.invitation.id : '',
    feed: feed.ok ? feed.id : '',
    token: token.ok ? token.id : '',
  }
  for (const viewer of [await someone('stranger'), { kind: 'sample' } as const]) {
    for (const [name, ask] of Object.entries(ASKED)) {
      const f = functions.get(name)
      if (!f) throw new Error(`${name} is not exported any more`)
      const got = await ask(f, { viewer, ...ids })
      const isEmpty = (Array.isArray(got) && got.length === 0) || (got instanceof Map && got.size === 0)
      const nothing = NOTHING.includes(got as null) || isEmpty
      if (!nothing) expect([viewer.kind, name, got]).toMatchObject([viewer.kind, name, REFUSED])
    }
  }
  expect(await find(owner, home)).toEqual(before)
})
