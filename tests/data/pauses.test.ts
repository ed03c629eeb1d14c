import { expect, test } from 'vitest'
import { clearAway, findAway, saveAway } from '@/lib/data/aways'
import { closeHousehold, NAME_REMOVED, purgeHousehold } from '@/lib/data/closing'
import { getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { listPauses, takeBackPause } from '@/lib/data/pauses'
import { clearPutOff, putOff } from '@/lib/data/put-offs'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()
const HALL = { task: 'change-filter', subject: 'hall' } as const

/** The noon of a day, in the home's zone. */
const noon = (day: string) => `${day}T18:00:00.000Z`

async function aHome(name: string) {
  const owner = await someone(name)
  const imported = await importHouseholds(as(owner), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const on = (day: string) => ({ ...as(owner), at: noon(day), door: 'mail' as const })
  const lines = (day: string) => listPauses(owner, home, noon(day))
  const putOffs = async () => (await getHousehold(owner, home)).putOffs.map(({ until }) => until)
  return { owner, home, on, lines, putOffs }
}

test('what is put off stands in the log with who, when and through which door, and is over by itself', async () => {
  const { home, on, lines } = await aHome('ann')
  await putOff(on('2026-11-25'), home, { ...HALL, until: '2026-12-09', today: '2026-11-25' })
  const [line] = await lines('2026-11-25')
  expect(line).toMatchObject({ kind: 'put-off', ...HALL, from: '2026-11-25', until: '2026-12-09', door: 'mail' })
  expect(line).toMatchObject({ by: { name: 'ann' }, ended: null, running: true })
  expect((await lines('2026-12-09'))[0]).toMatchObject({ ended: null, running: false })
})

test('a put-off taken back in the log lets what was said before it count again', async () => {
  const { home, on, lines, putOffs } = await aHome('ben')
  await putOff(on('2026-11-25'), home, { ...HALL, until: '2026-12-20', today: '2026-11-25' })
  await putOff(on('2026-11-26'), home, { ...HALL, until: '2026-12-05', today: '2026-11-26' })
  const [later, earlier] = await lines('2026-11-26')
  expect([later?.running, earlier?.running]).toEqual([true, false])
  expect(await takeBackPause(on('2026-11-26'), home, earlier?.id ?? '')).toMatchObject({ ok: false })
  expect(await takeBackPause(on('2026-11-26'), home, later?.id ?? '')).toEqual({ ok: true })
  expect(await putOffs()).toEqual(['2026-12-20'])
  expect((await lines('2026-11-26')).map(({ running }) => running)).toEqual([false, true])
  expect(await takeBackPause(on('2026-11-27'), home, earlier?.id ?? '')).toEqual({ ok: true })
  expect(await putOffs()).toEqual([])
})

test('what is heard of again, and coming back, end the lines that still ran and no other', async () => {
  const { owner, home, on, lines, putOffs } = await aHome('cleo')
  await putOff(on('2026-11-01'), home, { ...HALL, until: '2026-11-10', today: '2026-11-01' })
  await putOff(on('2026-11-25'), home, { ...HALL, until: '2026-12-09', today: '2026-11-25' })
  await clearPutOff(on('2026-11-26'), home, HALL)
  expect((await lines('2026-11-26')).map(({ ended }) => ended?.by ?? null)).toEqual(['cleo', null])
  expect(await putOffs()).toEqual([])
  await saveAway(on('2026-11-25'), home, { today: '2026-11-25', until: '2027-01-05' })
  await saveAway(on('2026-11-27'), home, { today: '2026-11-27', until: '2027-02-05' })
  const [away] = await lines('2026-11-27')
  expect(away).toMatchObject({ kind: 'away', from: '2026-11-25', until: '2027-02-05', running: true })
  await takeBackPause(on('2026-11-28'), home, away?.id ?? '')
  expect(await findAway(owner, home)).toMatchObject({ until: '2027-01-05' })
  await clearAway(on('2026-11-29'), home)
  expect(await findAway(owner, home)).toBeNull()
  expect((await lines('2026-11-29')).some(({ running }) => running)).toBe(false)
})

test('a purge takes the names out of it', async () => {
  const { owner, home, on, lines } = await aHome('dan')
  await putOff(on('2026-11-25'), home, { ...HALL, until: '2026-12-09', today: '2026-11-25' })
  await clearPutOff(on('2026-11-26'), home, HALL)
  await closeHousehold(as(owner), home, '2026-11-26')
  await purgeHousehold(as(owner), home, 'people')
  expect((await lines('2026-11-26'))[0]).toMatchObject({ by: { name: NAME_REMOVED }, ended: { by: NAME_REMOVED } })
})
