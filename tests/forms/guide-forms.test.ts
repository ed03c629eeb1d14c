import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseClearance } from '@/lib/forms/clearance-form'
import { parseGuideAnswer } from '@/lib/forms/guide-answer-form'
import { degreesAsked, parseRoom, parseTimes } from '@/lib/forms/guide-brief-form'

test('a room temperature is °F unless it says °C; nothing typed is nothing', () => {
  expect(['61', ' 61.5 °F', '61,5', '16C', '16 °c', '-4', ''].map((text) => parseRoom(text))).toEqual(
    [61, 61.5, 61.5, 60.8, 60.8, -4, null].map((value) => ({ ok: true, value })),
  )
  for (const text of ['cold', '610', '61F62', '1e2', '200', '-60']) expect(parseRoom(text).ok, text).toBe(false)
  fc.assert(fc.property(fc.string(), (text) => typeof parseRoom(text).ok === 'boolean'))
})

test('asked in °C it is °C unless it says °F, with bounds and examples in those degrees', () => {
  expect(['16', '16,5', '61F', '16c', '-4', ''].map((text) => parseRoom(text, 'C'))).toEqual(
    [60.8, 61.7, 61, 60.8, 24.8, null].map((value) => ({ ok: true, value })),
  )
  const fault = (text: string, asked: 'F' | 'C') => {
    const read = parseRoom(text, asked)
    return read.ok ? null : read.say
  }
  expect(fault('61', 'C')).toBe('A room is between -40 and 54 °C. Look at the thermometer again.')
  expect(fault('131', 'F')).toBe('A room is between -40 and 130 °F. Look at the thermometer again.')
  // Who writes the degrees is answered in them.
  expect(fault('131F', 'C')).toContain('-40 and 130 °F')
  expect(fault('55C', 'F')).toContain('-40 and 54 °C')
  for (const [asked, least, most] of [
    ['F', -40, 130],
    ['C', -40, 54],
  ] as const)
    for (const allowed of [least, most]) expect(fault(String(allowed), asked), `${allowed} °${asked}`).toBeNull()
  for (const text of ['cold', `1${' '.repeat(50)}1`]) {
    expect(fault(text, 'C')).toMatch(/is no temperature\. Type a number in °C, such as 16\.$/)
    expect(fault(text, 'F')).toMatch(/is no temperature\. Type a number in °F, such as 61\.$/)
  }
  // What was typed to a tenth comes back as it was.
  for (let tenths = -400; tenths <= 540; tenths++) {
    const read = parseRoom(String(tenths / 10), 'C')
    const fahrenheit = read.ok ? (read.value ?? Number.NaN) : Number.NaN
    expect(Math.round(((fahrenheit - 32) * 50) / 9)).toBeCloseTo(tenths, 9)
  }
})

test('an address says in which degrees it was asked; without a word, or with any other, it is °F', () => {
  expect(['c', null, '', 'C', 'f', 'cc'].map(degreesAsked)).toEqual(['C', 'F', 'F', 'F', 'F', 'F'])
})

test('times are seconds, or minutes and seconds; all faults are said at once', () => {
  const field = (name: string, text: string) => ({ name, label: name, text })
  expect(
    parseTimes([
      field('light', '1:05'),
      field('hum', '5'),
      field('calls', ''),
      field('silence', '1:75'),
      field('bang', 'soon'),
    ]),
  ).toEqual({
    times: [
      { event: 'hum', second: 5 },
      { event: 'light', second: 65 },
    ],
    faults: [expect.objectContaining({ path: 'silence' }), expect.objectContaining({ path: 'bang' })],
  })
})

function form(fields: Record<string, string>): FormData {
  const made = new FormData()
  for (const [name, value] of Object.entries(fields)) made.set(name, value)
  return made
}

test('a clearance needs who, when and that it was a professional, after what was met', () => {
  const known = { today: '2026-11-25', lastFault: '2026-11-20' }
  const faulty = parseClearance(form({ on: '2026-11-19' }), known)
  expect(faulty.ok ? [] : faulty.faults.map(({ path }) => path)).toEqual(['what', 'on', 'who', 'professional'])
  const late = parseClearance(form({ what: 'both', on: '2026-11-26', who: 'x', professional: 'yes' }), known)
  expect(late.ok ? [] : late.faults.map(({ path }) => path)).toEqual(['on'])
  expect(
    parseClearance(form({ what: 'both', on: '2026-11-20', who: ' Fire crew ', professional: 'yes' }), known),
  ).toEqual({
    ok: true,
    value: { kinds: ['clearance', 'technician-visit'], on: '2026-11-20', who: 'Fire crew' },
  })
})

test('whatever is sent as an answer, it is read or it is broken, and no time from the future counts', () => {
  fc.assert(
    fc.property(
      fc.dictionary(fc.constantFrom('home', 'system', 'walk', 'node', 'answer', 'queued'), fc.string()),
      (fields) => {
        const sent = parseGuideAnswer(form(fields), 29_000_000)
        return sent.queuedAt === null || sent.queuedAt <= 29_000_000
      },
    ),
  )
  const queued = (text: string) => parseGuideAnswer(form({ queued: text }), 29_000_000).queuedAt
  expect([queued(''), queued('28999999'), queued('29000001'), queued('1')]).toEqual([
    null,
    28_999_999,
    29_000_000,
    29_000_000,
  ])
})
