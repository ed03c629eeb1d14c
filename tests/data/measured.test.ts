import { existsSync, readdirSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { Viewer } from '@/lib/core/viewer'
import { closeDatabase } from '@/lib/data/connection'
import { exportHouseholds, getHousehold } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { changeReadings, findMeasuring, listMeasurings, listReadings, undoMeasuring } from '@/lib/data/readings'
import { dropSpooled, findSpooled, MOST_SPOOLED_BYTES, spool } from '@/lib/data/spool'
import { aHousehold } from '../support/a-household'
import { aMeasuredYear } from '../support/a-measured-year'
import { killAfter, startChild } from '../support/child'
import { AT, as, freshDatabase, someone } from '../support/fresh-database'

const place = freshDatabase()

async function aHome(viewer: Viewer): Promise<string> {
  const imported = await importHouseholds(as(viewer), [aHousehold({ readings: [] })])
  return imported.ok ? (imported.ids[0] ?? '') : ''
}

async function* pieces(...texts: string[]): AsyncGenerator<Uint8Array> {
  for (const text of texts) yield new TextEncoder().encode(text)
}

test('what was brought is taken back at once, with what it replaced; and only in its order', async () => {
  const ann = await someone('ann')
  const home = await aHome(ann)
  const bring = async (hours: number) => {
    const remove = (await listReadings(ann, home)).map(({ id }) => id)
    const saved = await changeReadings(as(ann), home, { kind: 'thermostat', add: aMeasuredYear(hours), remove })
    return saved.ok ? saved.id : ''
  }
  const stands = async () => (await listReadings(ann, home)).map(({ reading }) => reading)
  const [first, second] = [await bring(10), await bring(20)]
  expect(await stands()).toEqual(aMeasuredYear(20))
  expect((await findMeasuring(ann, home, second))?.before).toEqual(aMeasuredYear(10))
  expect(await undoMeasuring(as(ann), home, first)).toEqual({ ok: false, because: 'changed' })
  expect(await undoMeasuring(as(ann), home, second)).toMatchObject({ ok: true })
  expect(await undoMeasuring(as(ann), home, second)).toMatchObject({ ok: true })
  expect(await stands()).toEqual(aMeasuredYear(10))
  expect((await getHousehold(ann, home)).household.readings).toEqual(aMeasuredYear(10))
  expect((await exportHouseholds(ann))[0]?.readings).toEqual(aMeasuredYear(10))
  expect(await undoMeasuring(as(ann), home, first)).toMatchObject({ ok: true })
  expect(await stands()).toEqual([])
  expect((await listMeasurings(ann, home)).every(({ undone }) => undone !== null)).toBe(true)
})

test('what somebody brought in between is not written over, and nothing is measured twice', async () => {
  const ben = await someone('ben')
  const home = await aHome(ben)
  const add = aMeasuredYear(10)
  expect(await changeReadings(as(ben), home, { kind: 'thermostat', add, remove: [] })).toMatchObject({ ok: true })
  const before = await getHousehold(ben, home)
  for (const remove of [[], ['a reading that is gone']])
    expect(await changeReadings(as(ben), home, { kind: 'thermostat', add, remove })).toEqual({
      ...{ ok: false, because: 'changed' },
    })
  expect(await getHousehold(ben, home)).toEqual(before)
})

test('killed ten times in the middle of bringing, a whole year stands and never parts of two', async () => {
  const cy = await someone('cy')
  const home = await aHome(cy)
  await closeDatabase()
  for (let kill = 0; kill < 10; kill++) {
    const child = startChild('measured', [cy.accountId, home, String(kill)])
    await killAfter(child, 3 + kill * 13)
    const readings = (await getHousehold(cy, home)).household.readings
    await closeDatabase()
    const first = readings[0]
    const hours = first && 'heatHours' in first ? (first.heatHours ?? 0) : 0
    expect(readings).toEqual(aMeasuredYear(hours))
  }
}, 180_000)

test('a file that is brought has its name when it is whole; what is too large, empty or broken off leaves nothing', async () => {
  const folder = join(place.folder, '.plenum-brought', 'home1')
  const kept = await spool('home1', pieces('when,', 'what'), AT)
  const id = kept.ok ? kept.id : ''
  const found = await findSpooled('home1', id)
  expect(found?.bytes).toBe(9)
  expect(Buffer.from((await found?.head(4)) ?? []).toString()).toBe('when')
  async function* large() {
    for (let bytes = 0; bytes <= MOST_SPOOLED_BYTES + 5_000_000; bytes += 1_000_000) yield new Uint8Array(1_000_000)
    throw new Error('it was read to its end')
  }
  expect(await spool('home1', large(), AT)).toEqual({ ok: false, because: 'too-large' })
  expect(await spool('home1', pieces(), AT)).toEqual({ ok: false, because: 'empty' })
  async function* broken() {
    yield new Uint8Array(10)
    throw new Error('broken off')
  }
  await expect(spool('home1', broken(), AT)).rejects.toThrow('broken off')
  expect(readdirSync(folder)).toEqual([`${id}.csv`])
  for (const other of ['../home1', 'home2']) expect(await findSpooled(other, id)).toBeNull()
  for (const other of ['../home1/x', '', 'nothing']) expect(await findSpooled('home1', other)).toBeNull()
  await dropSpooled('home1', id)
  expect(readdirSync(folder)).toEqual([])
})

test('what a killed upload left, and what nobody came back to, goes with the next; of one home the latest few stay', async () => {
  const folder = join(place.folder, '.plenum-brought', 'home3')
  const first = await spool('home3', pieces('a'), AT)
  const old = join(folder, 'left.unfinished')
  writeFileSync(old, 'x')
  const days = (count: number) => new Date(Date.parse(AT) - count * 86_400_000)
  utimesSync(old, days(2), days(2))
  for (let i = 0; i < 7; i++) await spool('home3', pieces('a'), AT)
  expect(existsSync(old)).toBe(false)
  expect(readdirSync(folder).length).toBeLessThanOrEqual(5)
  expect(first.ok).toBe(true)
})
