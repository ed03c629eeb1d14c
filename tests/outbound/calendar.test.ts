import fc from 'fast-check'
import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import { tables } from '@/content/tables'
import { addDays, type Day } from '@/lib/core/day'
import type { Household } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import type { StoredHousehold } from '@/lib/data/households'
import { calendarText, feedEvents, feedTag, linesOfEvents } from '@/lib/outbound/calendar'
import { aHousehold } from '../support/a-household'

const ORIGIN = 'https://plenum.example.org'
const ON = '2026-11-25'

function stored(household: Household, change: Partial<StoredHousehold> = {}): StoredHousehold {
  const { name, timeZone } = household
  return {
    ...{ id: 'home1', name, building: null, timeZone, revision: 1, state: 'open', role: 'owner', household },
    ...{ closedOn: null, accessNote: null, placeNotes: {}, contacts: [], putOffs: [] },
    ...change,
  }
}

function planned(household: Household, change: Partial<StoredHousehold> = {}, on: Day = ON) {
  return { stored: stored(household, change), plan: planHousehold(household, tables, on), on }
}

function eventsOf(homes: ReturnType<typeof planned>[]) {
  return feedEvents(homes, { origin: ORIGIN, many: homes.length > 1 })
}

function textOf(homes: ReturnType<typeof planned>[]): string {
  return calendarText(linesOfEvents(eventsOf(homes)), { name: 'Plenum' })
}

/** ical.js is an independent reader of RFC 5545. */
function read(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text))
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0')
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event))
}

test('an independent reader finds one whole-day event an item, on its day, with what, where, size and a link', () => {
  const home = planned(aHousehold(), { placeNotes: { hall: 'behind the coats; left, then up' } })
  const events = read(textOf([home]))
  expect(events).toHaveLength(home.plan.items.length)
  for (const item of home.plan.items) {
    const address = `${ORIGIN}/home/home1/record/${item.task}/${item.subject}`
    const event = events.find((found) => found.component.getFirstPropertyValue('url') === address)
    expect(event?.startDate.isDate).toBe(true)
    expect(event?.startDate.toString()).toBe(item.due)
    expect(event?.description).toContain(`Record it done: ${address}`)
    const alarms = event?.component.getAllSubcomponents('valarm') ?? []
    expect(alarms).toHaveLength(1)
    expect(alarms[0]?.getFirstPropertyValue('action')).toBe('DISPLAY')
    expect(alarms[0]?.getFirstPropertyValue('description')).toBe(event?.summary)
  }
  const filter = events.find(({ summary }) => summary.startsWith('Change the filter'))
  expect(filter?.summary).toBe('Change the filter: wall grille')
  expect(filter?.description).toContain('16 × 25 × 1, pleated, MERV 8, in the wall grille; arrow into the wall.')
  expect(filter?.description).toContain('behind the coats; left, then up')
})

test('lines are folded at 75 octets, end in CRLF, and the feed says when to come back', () => {
  const text = textOf([planned(aHousehold({ name: 'Überlandstraße — 家' }), { placeNotes: { hall: 'ü'.repeat(200) } })])
  const lines = text.split('\r\n')
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75)
  expect(text).toContain('REFRESH-INTERVAL;VALUE=DURATION:PT6H')
  expect(text).toContain('METHOD:PUBLISH')
})

test('a changed filter moves its event: the same UID, a later day, a higher SEQUENCE, and no other is left behind', () => {
  const before = aHousehold()
  const after = aHousehold({
    records: [...before.records, { on: ON, kind: 'filter-changed', filter: 'hall' }],
  })
  const first = read(textOf([planned(before)]))
  const then = read(textOf([planned(after, { revision: 2 })]))
  expect(then.map(({ uid }) => uid).sort()).toEqual(first.map(({ uid }) => uid).sort())
  expect(new Set(first.map(({ uid }) => uid)).size).toBe(first.length)
  const filter = (events: ICAL.Event[]) => events.find(({ summary }) => summary.startsWith('Change')) as ICAL.Event
  expect(filter(then).uid).toBe(filter(first).uid)
  expect(filter(then).startDate.toString() > filter(first).startDate.toString()).toBe(true)
  expect(filter(then).sequence).toBeGreaterThan(filter(first).sequence)
})

test('a day that passes without a change gives the same tag; a change gives another', () => {
  const home = aHousehold({ since: '2026-09-01', readings: [] })
  const events = eventsOf([planned(home)])
  const nextDay = eventsOf([planned(home, {}, addDays(ON, 1))])
  expect(feedTag(nextDay, 'Plenum')).toBe(feedTag(events, 'Plenum'))
  expect(nextDay[0]?.sequence).toBeGreaterThan(events[0]?.sequence ?? 0)
  const off = { task: 'alarm-test', subject: 'co1', until: '2027-06-01', byName: 'ann' } as const
  expect(feedTag(eventsOf([planned(home, { putOffs: [off] })]), 'Plenum')).not.toBe(feedTag(events, 'Plenum'))
})

test('an item that is put off stands on the day until which it is', () => {
  const off = { task: 'change-filter', subject: 'hall', until: '2027-08-01', byName: 'ann' } as const
  const events = read(textOf([planned(aHousehold(), { putOffs: [off] })]))
  expect(events.find(({ summary }) => summary.startsWith('Change'))?.startDate.toString()).toBe('2027-08-01')
})

test('a closed home has no events', () => {
  expect(read(textOf([planned(aHousehold(), { state: 'closed' })]))).toEqual([])
})

test('any text that a person may have written comes out of an independent reader as it went in', () => {
  const text = fc
    .string({ unit: 'binary', maxLength: 120 })
    .filter((t) => !/[\p{Cc}\p{Cs}]/u.test(t) && t.trim() !== '')
  fc.assert(
    fc.property(text, text, (name, note) => {
      const home = planned(aHousehold({ systems: [{ ...aHousehold().systems[0], name } as never] }), {
        placeNotes: { hall: note },
      })
      const events = read(textOf([home]))
      expect(events.map(({ summary }) => summary)).toContain(`Heating service: ${name}`)
      expect(events.some(({ description }) => description.includes(`Where: ${note}`))).toBe(true)
    }),
    { numRuns: 60 },
  )
}, 30_000)

test('SEQUENCE never falls, whatever is written and however days pass', () => {
  const step = fc.record({ writes: fc.integer({ min: 0, max: 3 }), days: fc.integer({ min: -1, max: 40 }) })
  fc.assert(
    fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
      let [revision, on, last] = [1, ON as Day, 0]
      for (const { writes, days } of steps) {
        // Only a moved household, which is a write, ever takes a day back.
        revision += days < 0 ? writes + 1 : writes
        on = addDays(on, days)
        const sequence = eventsOf([planned(aHousehold(), { revision }, on)])[0]?.sequence ?? 0
        expect(sequence).toBeGreaterThanOrEqual(last)
        last = sequence
      }
    }),
    { numRuns: 25 },
  )
})
