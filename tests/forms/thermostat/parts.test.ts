import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dayNumber } from '@/lib/core/day'
import { readRun, wordMeans } from '@/lib/forms/thermostat/cell'
import { parseChoices } from '@/lib/forms/thermostat/choices'
import { readHead } from '@/lib/forms/thermostat/head'
import { understandExport } from '@/lib/forms/thermostat/understand'
import { inPieces, slotsOf, totalOf, truthOf, understood, wall, ZONE } from '../../support/thermostat/an-export'

const two = (n: number) => String(n).padStart(2, '0')
const localStamp = (at: number) => {
  const { year, month, day, hour, minute } = wall(at, ZONE)
  return `${year}-${month}-${day} ${two(hour)}:${minute}`
}

test('a state that lasts until the next row comes to the time between the rows', async () => {
  const rows = ['When,Equipment state']
  // Heating from 6:00 to 6:30 and 20:00 to 20:45 on each of twenty days, the fan alone at noon for ten minutes.
  for (let day = 1; day <= 20; day++)
    for (const [time, word] of [
      ['06:00', 'Heating'],
      ['06:30', 'Idle'],
      ['12:00', 'Fan only'],
      ['12:10', 'Idle'],
      ['20:00', 'Heat stage 2'],
      ['20:45', 'off'],
    ])
      rows.push(`2026-02-${two(day)} ${time},${word}`)
  const got = await understood(rows.join('\n'))
  expect(got.isChangeLog).toBe(true)
  expect(got.faults).toEqual([])
  // The first day begins at its first row, and the last ends at its last.
  expect(got.pieces).toEqual([{ from: '2026-02-02', to: '2026-02-19', heatHours: 22.5, coolHours: 0, fanHours: 27.08 }])
  expect(27.08).toBeCloseTo(18 * (1.25 * 1.07 + 1 / 6), 1)
})

test('states that are sampled every five minutes come to their share of the time', async () => {
  const slots = slotsOf(dayNumber('2026-01-10'), 10, { step: 300, runs: (i) => [i % 4 === 0 ? 300 : 0, 0, 0] })
  const file = ['Time stamp,Status', ...slots.map((s) => `${localStamp(s.at)},${s.heat ? 'heating' : 'idle'}`)].join(
    '\n',
  )
  const got = await understood(file)
  expect(got.isChangeLog).toBe(false)
  expect(totalOf(got).heat).toBeCloseTo(truthOf(slots).heat, 1)
  expect(got.pieces[0]?.fanHours).toBeUndefined()
})

test('a list of days in hours, with the day first', async () => {
  const rows = Array.from({ length: 40 }, (_, i) => {
    const day = new Date(Date.UTC(2026, 0, 1 + i))
    return `${two(day.getUTCDate())}/${two(day.getUTCMonth() + 1)}/2026;${i % 2 ? '3,5' : '4:30'};0`
  })
  const got = await understood(['Tag;Heating hours;Cooling hours', ...rows].join('\n'))
  expect(got.order).toBe('day-first')
  expect(got.kind).toBe('day')
  expect(totalOf(got)).toEqual({ heat: 160, cool: 0, fan: 0 })
  expect(got.pieces.map(({ from, to }) => [from, to])).toEqual([
    ['2026-01-01', '2026-01-31'],
    ['2026-02-01', '2026-02-09'],
  ])
})

for (const [name, from, hours] of [
  ['25 hours, in which an hour comes twice', '2025-11-01', 25],
  ['23 hours, in which an hour is left out', '2026-03-07', 23],
] as const)
  test(`a day of ${name}, by the wall clock`, async () => {
    const slots = slotsOf(dayNumber(from), 3, { step: 900, runs: (i) => [i % 3 === 0 ? 600 : 0, 0, 0] })
    expect(slots.length).toBe((48 + hours) * 4)
    const file = ['Stamp,Heating sec', ...slots.map((s) => `${localStamp(s.at)},${s.heat}`)]
    for (const rows of [file, [file[0], ...file.slice(1).reverse()]]) {
      const got = await understood(rows.join('\n'))
      expect(got.faults).toEqual([])
      expect(Math.abs(totalOf(got).heat - truthOf(slots).heat)).toBeLessThan(0.02)
      expect(got.leftOut).toEqual([])
    }
  })

test('where the clocks go forward at midnight, a list of days stands in no hour that was left out', async () => {
  const days = ['04', '05', '06', '07', '08'].map((day) => `2026-09-${day},2`)
  const list = await understood(['Day,Heating hours', ...days].join('\n'), {}, { homeZone: 'America/Santiago' })
  expect(list.notes.join()).not.toContain('UTC')
  expect(totalOf(list).heat).toBe(10)
  const hours = Array.from({ length: 72 }, (_, i) => `2026-09-0${5 + Math.floor(i / 24)} ${two(i % 24)}:00,0.5`)
  const hourly = await understood(['Time,Heating hours', ...hours].join('\n'), {}, { homeZone: 'America/Santiago' })
  expect(hourly.notes.join()).toContain('1 row stands in an hour that the clocks of this home left out')
})

test('a gap is not off: a reading ends there, and a day with less than nine tenths of it is left out', async () => {
  const slots = slotsOf(dayNumber('2026-01-01'), 20, { step: 300, runs: () => [100, 0, 0] })
  const missing = (i: number) => (i >= 5 * 288 && i < 5 * 288 + 40) || (i >= 9 * 288 && i < 9 * 288 + 20)
  const file = ['Stamp,Heating sec', ...slots.filter((_, i) => !missing(i)).map((s) => `${localStamp(s.at)},${s.heat}`)]
  const got = await understood(file.join('\n'))
  expect(got.leftOut).toEqual([{ from: '2026-01-06', to: '2026-01-06' }])
  // What is missing of the tenth day, a twelfth or so, is taken to be like its rest.
  expect(got.pieces).toEqual([
    { from: '2026-01-01', to: '2026-01-05', heatHours: 40 },
    { from: '2026-01-07', to: '2026-01-20', heatHours: 112 },
  ])
})

test('stages that run together count once; heat that takes over is added', async () => {
  const slots = slotsOf(dayNumber('2026-01-01'), 5, { step: 300, runs: (i) => [i % 2 ? 240 : 120, 0, 0] })
  const together = slots.map((s) => `${localStamp(s.at)},${s.heat},${s.heat / 2}`)
  const inTurn = slots.map((s, i) => `${localStamp(s.at)},${i % 3 ? s.heat : 60},${i % 3 ? 0 : 200}`)
  const head = 'Stamp,Heat stage 1 (sec),Heat stage 2 (sec)'
  const one = await understood([head, ...together].join('\n'))
  expect(one.together).toEqual({ heat: 'longest' })
  expect(totalOf(one).heat).toBeCloseTo(truthOf(slots).heat, 1)
  const other = await understood([head, ...inTurn].join('\n'))
  expect(other.together).toEqual({ heat: 'added' })
  const truth = slots.reduce((sum, s, i) => sum + (i % 3 ? s.heat : 260), 0) / 3600
  expect(totalOf(other).heat).toBeCloseTo(truth, 1)
})

test('mixed units: each column has its own, and a unit in the cell goes before it', async () => {
  const slots = slotsOf(dayNumber('2026-01-01'), 5, { step: 1800, runs: () => [600, 0, 900] })
  const rows = slots.map((s, i) => `${localStamp(s.at)},${i % 2 ? '10 min' : '600 s'},15`)
  const got = await understood(['Stamp,Heating,Fan minutes', ...rows].join('\n'))
  expect(got.faults).toEqual([])
  expect(totalOf(got).heat).toBeCloseTo(40, 1)
  expect(totalOf(got).fan).toBeCloseTo(60, 1)
})

test('negative runs, thirty hours in a day, a date of no month: all said at once, with their rows', async () => {
  const got = await understood('Day,Heating hours\n2026-01-01,30\n2026-01-02,-2\n2026-01-03,4\n')
  expect(got.faults.join('\n')).toMatch(/A day has 24 hours: row 2 says more/)
  expect(got.faults.join('\n')).toMatch(/shorter than nothing: row 3 has/)
  const wrong = await understood('Stamp,Heating sec\n1/20/2026 10:00,5\n1/21/2026 10:05,5\n', { order: 'day-first' })
  expect(wrong.faults.join()).toMatch(/Choose the other order/)
})

test('a column of what the thermostat was set to is not taken for what ran', async () => {
  const slots = slotsOf(dayNumber('2026-01-01'), 10, { step: 900, runs: () => [0, 0, 0] })
  const got = await understood(['Stamp,Mode', ...slots.map((s) => `${localStamp(s.at)},heat`)].join('\n'))
  expect(got.faults.join()).toMatch(/what the thermostat was set to/)
})

test('words that nobody knows are asked for, and count as they are told', async () => {
  const slots = slotsOf(dayNumber('2026-01-01'), 10, { step: 900, runs: (i) => [i % 2 ? 900 : 0, 0, 0] })
  const file = ['Stamp,State', ...slots.map((s) => `${localStamp(s.at)},${s.heat ? 'brr' : 'zzz'}`)].join('\n')
  const roles = { columns: '2', c0: 'time', c1: 'state' }
  expect((await understood(file, roles)).faults.join()).toMatch(/“(brr|zzz)”, “(brr|zzz)”/)
  const told = await understood(file, { ...roles, w0: 'brr', m0: 'heat', w1: 'zzz', m1: 'off' })
  expect(told.faults).toEqual([])
  expect(totalOf(told).heat).toBeCloseTo(120, 1)
})

test('any bytes are refused or read, and never throw', async () => {
  const text = fc.string({ unit: fc.constantFrom(...'0123456789-/:,;\t"\n\r heatcoolfanoffTZ.§'), maxLength: 400 })
  const table = fc
    .array(
      fc.array(
        fc.oneof(
          text.map((t) => t.slice(0, 12)),
          fc.constantFrom('2026-01-02 10:00', '1', '', '300'),
        ),
        { maxLength: 5 },
      ),
      {
        maxLength: 20,
      },
    )
    .map((rows) => rows.map((row) => row.join(',')).join('\n'))
  const bytes = fc.oneof(
    fc.uint8Array({ maxLength: 600 }),
    text.map((t) => new TextEncoder().encode(t)),
    table.map((t) => new TextEncoder().encode(`Stamp,Heating,Cooling\n${t}`)),
  )
  const choices = fc.dictionary(
    fc.constantFrom('columns', 'c0', 'c1', 'c2', 'order', 'zone', 'fan', 'w0', 'm0'),
    fc.constantFrom('3', 'time', 'clock', 'state', 'heat-s', 'cool-flag', 'fan-pct', 'utc', 'day-first', 'x', 'heat'),
  )
  await fc.assert(
    fc.asyncProperty(bytes, choices, async (file, chosen) => {
      const head = readHead(file)
      if (!head.ok) {
        expect(head.say).toMatch(/^The file /)
        return
      }
      const got = await understandExport(inPieces(file, 97), head.value, {
        choices: parseChoices(new Map(Object.entries(chosen))),
        ...{ homeZone: ZONE, today: '2026-11-25', fanRule: { heatBlower: 1.07, coolBlows: true } },
      })
      for (const piece of got.pieces)
        for (const hours of [piece.heatHours, piece.coolHours, piece.fanHours])
          if (hours !== undefined) expect(hours).toBeGreaterThanOrEqual(0)
    }),
    { numRuns: 400 },
  )
})

test('cells and words say what a person would take them for', () => {
  expect(['5', '5 min', '1:30', '0:01:30', '', '-', '1,5'].map((cell) => readRun(cell, 'min'))).toEqual([
    ...[300, 300, 90, 90, Number.NaN, Number.NaN, 90],
  ])
  expect(['on', 'off', '1', '0', 'auto', 'maybe'].map((cell) => readRun(cell, 'flag'))).toEqual([
    1,
    0,
    1,
    0,
    0,
    undefined,
  ])
  expect(['Heating', 'heat off', 'AC stage 1', 'fan only', 'Idle', 'zzz', 'Aux'].map(wordMeans)).toEqual([
    1,
    0,
    2,
    4,
    0,
    null,
    1,
  ])
})
