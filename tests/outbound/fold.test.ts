import fc from 'fast-check'
import ical from 'ical-generator'
import { expect, test } from 'vitest'
import { foldLines } from '@/lib/outbound/fold'

const WORDS = fc.oneof(fc.string({ unit: 'binary', maxLength: 300 }), fc.string({ unit: 'grapheme', maxLength: 300 }))

test('whatever an event says is folded as the generator library folds it', () => {
  fc.assert(
    fc.property(WORDS, WORDS, (summary, description) => {
      const calendar = ical({ name: summary })
      calendar.createEvent({ id: 'one', start: new Date(0), stamp: new Date(0), summary: `.${summary}`, description })
      const folded = calendar.toString()
      expect(foldLines(folded.replaceAll('\r\n ', ''))).toBe(folded)
    }),
  )
})

test('a line of 75 octets becomes two, one of 74 stays', () => {
  expect(foldLines('a'.repeat(74))).toBe('a'.repeat(74))
  expect(foldLines('a'.repeat(75))).toBe(`${'a'.repeat(74)}\r\n a`)
  expect(foldLines(`${'a'.repeat(73)}é`)).toBe(`${'a'.repeat(73)}\r\n é`)
  expect(foldLines(`${'a'.repeat(71)}🔥`)).toBe(`${'a'.repeat(71)}\r\n 🔥`)
})
