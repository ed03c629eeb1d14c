import { expect, test } from 'vitest'
import { lookInWords, whoInWords } from '@/lib/core/due-words'

const ON = '2026-11-28'
const WINDOW = { doer: 'resident', earliest: '2026-11-20', latest: '2026-12-05', state: 'due' } as const

test('who does a thing and when is said as of a day', () => {
  expect(whoInWords(WINDOW, ON)).toBe('You, any day between 20 November and 5 December.')
  expect(whoInWords({ ...WINDOW, doer: 'technician' }, ON)).toBe(
    'A licensed technician, any day between 20 November and 5 December.',
  )
  expect(whoInWords({ ...WINDOW, latest: '2027-01-05' }, ON)).toBe(
    'You, any day between 20 November and 5 January 2027.',
  )
  expect(whoInWords({ ...WINDOW, earliest: WINDOW.latest }, ON)).toBe('You, on that day.')
})

test('what is overdue is for as soon as can be, not for days gone by', () => {
  expect(whoInWords({ ...WINDOW, state: 'overdue' }, ON)).toBe('You, as soon as you can.')
})

test('a look is for its day, and for now once that has come', () => {
  expect(lookInWords('2026-11-29', ON)).toBe(
    'Hold it up to a lamp on Sunday 29 November: much light means it can stay.',
  )
  for (const come of [ON, '2026-04-19'])
    expect(lookInWords(come, ON)).toBe('Hold it up to a lamp now: much light means it can stay.')
  expect(lookInWords(ON, ON, true)).toBe('You may hold it up to a lamp now: much light means it can stay.')
})
