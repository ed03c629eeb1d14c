import { beforeEach, expect, test } from 'vitest'
import type { LogRecord } from '@/lib/core/household'
import type { Viewer } from '@/lib/core/viewer'
import { saveAway } from '@/lib/data/aways'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { listLog } from '@/lib/data/log'
import { clearPutOff, putOff } from '@/lib/data/put-offs'
import { addRecord, correctRecord, type Recorded, undoRecord } from '@/lib/data/records'
import { saveHousehold } from '@/lib/data/save-household'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

const CHANGED: LogRecord = { on: '2026-11-20', kind: 'filter-changed', filter: 'hall' }
let ann: Viewer
let home: string
let number = 0

beforeEach(async () => {
  ann = await someone(`ann-${number++}`)
  const imported = await importHouseholds(as(ann), [aHousehold()])
  home = imported.ok ? (imported.ids[0] ?? '') : ''
})

async function records(): Promise<LogRecord[]> {
  return (await getHousehold(ann, home)).household.records
}

function entryOf(recorded: Recorded): string {
  if (!recorded.ok) throw new Error(`not recorded: ${recorded.because}`)
  return recorded.entry.id
}

test('a record moves the revision, and its undo gives the same home again', async () => {
  const before = await getHousehold(ann, home)
  const recorded = await addRecord(as(ann), home, { ...CHANGED, light: 'dark', fitted: { medium: 'fiberglass' } })
  const after = await getHousehold(ann, home)
  expect(after.revision).toBe(before.revision + 1)
  expect(after.household.filters[0]).toMatchObject({ medium: 'fiberglass' })
  expect(after.household.filters[0]).not.toHaveProperty('merv')
  await undoRecord(as(ann), home, entryOf(recorded))
  expect((await getHousehold(ann, home)).household).toStrictEqual(before.household)
})

test('the same recorded twice on one day is one record', async () => {
  await addRecord(as(ann), home, CHANGED)
  expect(await addRecord(as(ann), home, CHANGED)).toMatchObject({ ok: true, outcome: 'already' })
  expect(await records()).toHaveLength(2)
})

test('details that the first left out are added, and the first stays visible', async () => {
  await addRecord(as(ann), home, CHANGED)
  expect(await addRecord(as(ann), home, { ...CHANGED, light: 'half' })).toMatchObject({
    ok: true,
    outcome: 'completed',
  })
  expect(await addRecord(as(ann), home, { ...CHANGED, light: 'dark' })).toMatchObject({ ok: true, outcome: 'differs' })
  expect((await records()).at(-1)).toEqual({ ...CHANGED, light: 'half' })
  expect(await listLog(ann, home)).toHaveLength(3)
})

test('a tap sent twice by a queue is one entry, also when it was undone in between', async () => {
  const sent = await addRecord(as(ann), home, CHANGED, { key: 'tap-1' })
  await undoRecord(as(ann), home, entryOf(sent))
  const again = await addRecord(as(ann), home, CHANGED, { key: 'tap-1' })
  expect(entryOf(again)).toBe(entryOf(sent))
  expect(await records()).toHaveLength(1)
})

test('two people who record at once lose nothing, and the same thing at once is one record', async () => {
  const looks = Array.from({ length: 10 }, (_, i) => `2026-11-0${i}`).slice(1)
  await Promise.all(looks.map((on) => addRecord(as(ann), home, { on, kind: 'filter-looked', filter: 'hall' })))
  expect(await records()).toHaveLength(1 + looks.length)
  const both = await Promise.all([addRecord(as(ann), home, CHANGED), addRecord(as(ann), home, CHANGED)])
  expect(both.map((one) => one.ok && one.outcome).sort()).toEqual(['already', 'recorded'])
})

test('a correction stands in the place of the earlier entry, which stays in the log', async () => {
  const first = entryOf(await addRecord(as(ann), home, CHANGED))
  await addRecord(as(ann), home, { on: '2026-11-22', kind: 'filter-looked', filter: 'hall', light: 'clear' })
  const corrected = await correctRecord(as(ann), home, first, { ...CHANGED, on: '2026-11-19' })
  expect((await records()).map((record) => record.on)).toEqual(['2026-09-20', '2026-11-19', '2026-11-22'])
  const log = await listLog(ann, home)
  expect(log.find(({ id }) => id === first)).toMatchObject({
    standing: false,
    correctedBy: entryOf(corrected),
    record: CHANGED,
  })
  expect(await undoRecord(as(ann), home, first)).toMatchObject({ ok: false, because: 'fault' })
})

test('undoing a correction lets the earlier entry stand again', async () => {
  const first = entryOf(await addRecord(as(ann), home, { ...CHANGED, fitted: { medium: 'media', merv: 11 } }))
  const wrong = await correctRecord(as(ann), home, first, { ...CHANGED, fitted: { medium: 'washable' } })
  expect((await getHousehold(ann, home)).household.filters[0]?.medium).toBe('washable')
  await undoRecord(as(ann), home, entryOf(wrong))
  expect((await getHousehold(ann, home)).household.filters[0]).toMatchObject({ medium: 'media', merv: 11 })
  await undoRecord(as(ann), home, first)
  expect((await getHousehold(ann, home)).household.filters[0]).toMatchObject({ medium: 'pleated', merv: 8 })
})

test('an older change that is entered late does not say what is in place now', async () => {
  await addRecord(as(ann), home, { ...CHANGED, fitted: { medium: 'media', merv: 11 } })
  await addRecord(as(ann), home, {
    on: '2026-10-01',
    kind: 'filter-changed',
    filter: 'hall',
    fitted: { medium: 'fiberglass' },
  })
  expect((await getHousehold(ann, home)).household.filters[0]?.medium).toBe('media')
})

test('what is not in the home cannot be recorded', async () => {
  const recorded = await addRecord(as(ann), home, { ...CHANGED, filter: 'attic' })
  expect(recorded).toMatchObject({ ok: false, because: 'fault', faults: [{ say: expect.stringContaining('attic') }] })
})

test('an edit of the home loses no record made meanwhile', async () => {
  const seen = await getHousehold(ann, home)
  await addRecord(as(ann), home, CHANGED)
  const saved = await saveHousehold(as(ann), home, { ...seen.household, people: 5 }, seen.revision)
  expect(saved.ok).toBe(true)
  const now = (await getHousehold(ann, home)).household
  expect([now.people, now.records.length]).toEqual([5, 2])
})

test('of two edits from the same page the second is told what stands now', async () => {
  const seen = await getHousehold(ann, home)
  await saveHousehold(as(ann), home, { ...seen.household, people: 5 }, seen.revision)
  const second = await saveHousehold(as(ann), home, { ...seen.household, pets: 4 }, seen.revision)
  expect(second).toMatchObject({ ok: false, because: 'changed', current: { household: { people: 5, pets: 1 } } })
})

test('what was done to a filter that is gone stays in the log, and out of the file', async () => {
  const seen = await getHousehold(ann, home)
  await saveHousehold(as(ann), home, { ...seen.household, filters: [], records: [] }, seen.revision)
  expect(await records()).toEqual([])
  expect(await listLog(ann, home)).toHaveLength(1)
})

test('an item is put off until a day, a safety item by thirty days at most', async () => {
  const today = '2026-11-25'
  await putOff(as(ann), home, { task: 'change-filter', subject: 'hall', until: '2026-12-24', today })
  await putOff(as(ann), home, { task: 'change-filter', subject: 'hall', until: '2026-12-09', today })
  expect((await getHousehold(ann, home)).putOffs).toMatchObject([{ task: 'change-filter', until: '2026-12-09' }])
  await clearPutOff(as(ann), home, { task: 'change-filter', subject: 'hall' })
  expect((await getHousehold(ann, home)).putOffs).toEqual([])
  const alarm = { task: 'alarm-replace', subject: 'co1', today } as const
  expect((await putOff(as(ann), home, { ...alarm, until: '2026-12-26' })).ok).toBe(false)
  expect((await putOff(as(ann), home, { ...alarm, until: '2026-12-25' })).ok).toBe(true)
  expect((await putOff(as(ann), home, { ...alarm, until: today })).ok).toBe(false)
  // 2028 has a leap day.
  const filter = { task: 'change-filter', subject: 'hall', today } as const
  expect((await putOff(as(ann), home, { ...filter, until: '2028-11-25' })).ok).toBe(true)
  const say = 'Look at the year: 26 November 2028 is more than two years from now. Choose an earlier day.'
  const refused = { ok: false, because: 'fault', faults: [{ path: 'until', say }] }
  expect(await putOff(as(ann), home, { ...filter, until: '2028-11-26' })).toEqual(refused)
  expect(await saveAway(as(ann), home, { today, until: '2028-11-26' })).toEqual(refused)
  expect(await saveAway(as(ann), home, { today, until: today })).toMatchObject({ ok: false, because: 'fault' })
})

test('the log is asked by day, kind, subject, person and door', async () => {
  await addRecord({ ...as(ann), door: 'mail' }, home, CHANGED)
  expect(await listLog(ann, home, { door: 'mail' })).toHaveLength(1)
  expect(await listLog(ann, home, { from: '2026-10-01' })).toHaveLength(1)
  expect(await listLog(ann, home, { to: '2026-10-01' })).toHaveLength(1)
  expect(await listLog(ann, home, { kind: 'filter-looked' })).toEqual([])
  expect(await listLog(ann, home, { subject: 'hall' })).toHaveLength(2)
})
