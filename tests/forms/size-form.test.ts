import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readSize } from '@/app/find/read-size'
import { parseSize, typedSize } from '@/lib/forms/size-form'

const typed = (fields: Record<string, string>) => typedSize((name) => fields[name])

function textOf(fields: Record<string, string>): string {
  const size = typed(fields)
  if (size === null) return 'nothing'
  const answer = readSize(size)
  return answer.kind === 'read' ? answer.text : answer.faults.map(({ path }) => path).join(' ')
}

test('a size is read as people write it, in inches and metric, printed and measured', () => {
  expect(textOf({ w: '16', h: '25', d: '1' })).toBe('16 × 25 × 1')
  expect(textOf({ w: '16x25x1', h: '', d: '' })).toBe('16 × 25 × 1')
  expect(textOf({ w: '15 1/2', h: '24½', d: '3/4', from: 'measured' })).toBe('16 × 25 × 1')
  expect(textOf({ w: '39.4', h: '62,2', d: '1.9', u: 'cm', from: 'measured' })).toBe('16 × 25 × 1')
  expect(textOf({ w: '394', h: '622', d: '19', u: 'mm', from: 'measured' })).toBe('16 × 25 × 1')
})

test('nothing typed is nothing wrong; every wrong side is named at once', () => {
  expect(textOf({})).toBe('nothing')
  expect(textOf({ w: ' ', h: '', d: '' })).toBe('nothing')
  expect(textOf({ w: 'wide', h: '', d: '1' })).toBe('w h')
  expect(textOf({ w: '0', h: '900', d: '1' })).toBe('w h')
})

test('whatever stands in an address, it is a size that can be one or words that say why not', () => {
  const text = fc.oneof(fc.string({ maxLength: 60 }), fc.constantFrom('16', '1/0', '9e9', '-4', '½', 'x', '16x16'))
  fc.assert(
    fc.property(text, text, text, text, text, (w, h, d, u, from) => {
      const size = typed({ w, h, d, u, from })
      if (size === null) return
      const answer = readSize(size)
      if (answer.kind === 'refused') expect(answer.faults.every(({ say }) => say.length > 10)).toBe(true)
      else expect(Object.values(answer.nominal).every((side) => side > 0 && side <= 40)).toBe(true)
      expect(typeof parseSize(size).ok).toBe('boolean')
    }),
    { numRuns: 500 },
  )
})
