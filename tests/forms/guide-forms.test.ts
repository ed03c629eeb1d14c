import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseClearance } from '@/lib/forms/clearance-form'
import { parseGuideAnswer } from '@/lib/forms/guide-answer-form'
import { parseRoom, parseTimes } from '@/lib/forms/guide-brief-form'

test('a room temperature is °F unless it says °C; nothing typed is nothing', () => {
  expect(['61', ' 61.5 °F', '61,5', '16C', '16 °c', '-4', ''].map((text) => parseRoom(text))).toEqual(
    [61, 61.5, 61.5, 60.8, 60.8, -4, null].map((value) => ({ ok: true, value })),
  )
  for (const text of ['cold', '610', '61F62', '1e2', '200', '-60']) expect(parseRoom(text).ok, text).toBe(false)
  fc.assert(fc.property(fc.string(), (text) => typeof parseRoom(text).ok === 'boolean'))
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
