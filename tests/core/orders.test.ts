import fc from 'fast-check'
import { expect, test } from 'vitest'
import { commonSizes } from '@/content/common-sizes'
import { addDays } from '@/lib/core/day'
import { commonSizeFor, type Need, orderLines } from '@/lib/core/orders'
import { parseStock, stockFields } from '@/lib/forms/stock-form'

const ON = '2026-11-25'
const KIND = { size: '16x25x1', medium: 'pleated', merv: 8 } as const
const WITHIN = { on: ON, until: '2027-11-25', leadDays: 7 }

test('what is on the shelf comes off, whole boxes hold the rest, and it is ordered before the shelf is empty', () => {
  const need: Need = { kind: KIND, days: ['2027-01-10', '2026-12-01', '2027-03-01', '2027-11-25'] }
  expect(orderLines([need], [{ kind: KIND, onHand: 1, perBox: 4 }], WITHIN)).toEqual([
    { kind: KIND, onHand: 1, perBox: 4, needed: 3, toBuy: 2, boxes: 1, shortOn: '2027-01-10', orderBy: '2027-01-03' },
  ])
})

test('a kind on the shelf that nobody needs stays in the list and is not bought', () => {
  const [line] = orderLines([], [{ kind: KIND, onHand: 5, perBox: 1 }], WITHIN)
  expect(line).toMatchObject({ needed: 0, toBuy: 0, boxes: 0, shortOn: null, orderBy: null })
})

test('a kind that the shelf does not know is bought singly, and one not needed before the end is not asked for', () => {
  const thin = { ...KIND, size: '8x20x1' }
  const needs: Need[] = [
    { kind: KIND, days: ['2026-12-01', '2026-12-20'] },
    { kind: thin, days: ['2027-11-24'] },
    { kind: { ...KIND, merv: 13 }, days: ['2027-11-25', '2028-01-01'] },
    { kind: { ...KIND, size: '20x20x1' }, days: [] },
  ]
  const lines = orderLines(needs, [], WITHIN)
  expect(lines.map(({ kind, toBuy, boxes, orderBy }) => [kind, toBuy, boxes, orderBy])).toEqual([
    // By size as a number, not as a text.
    [thin, 1, 1, '2027-11-17'],
    [KIND, 2, 2, '2026-11-24'],
  ])
  expect(lines.map(({ onHand, perBox }) => [onHand, perBox])).toEqual([
    [0, 1],
    [0, 1],
  ])
})

test('what is overdue is needed today, and was to be ordered before', () => {
  const [line] = orderLines([{ kind: KIND, days: ['2026-09-01', '2026-12-01'] }], [], WITHIN)
  expect(line).toMatchObject({ needed: 2, toBuy: 2, shortOn: ON, orderBy: '2026-11-18' })
})

test('with more on the shelf never more is bought, and never later is ordered earlier', () => {
  const days = fc.array(
    fc.integer({ min: -5, max: 500 }).map((d) => addDays(ON, d)),
    { maxLength: 30 },
  )
  fc.assert(
    fc.property(days, fc.nat(40), fc.integer({ min: 1, max: 24 }), (changes, onHand, perBox) => {
      const [line] = orderLines([{ kind: KIND, days: changes }], [{ kind: KIND, onHand, perBox }], WITHIN)
      const [more] = orderLines([{ kind: KIND, days: changes }], [{ kind: KIND, onHand: onHand + 1, perBox }], WITHIN)
      if (!line || !more) throw new Error('a line is missing')
      expect(line.toBuy).toBe(Math.max(0, line.needed - onHand))
      expect(line.boxes * perBox).toBeGreaterThanOrEqual(line.toBuy)
      expect((line.boxes - 1) * perBox).toBeLessThan(Math.max(line.toBuy, 1))
      expect(more.toBuy).toBeLessThanOrEqual(line.toBuy)
      expect((more.shortOn ?? '9999') >= (line.shortOn ?? '9999')).toBe(true)
    }),
  )
})

test('a frame’s own size leads to the size that shops know, a turned one to its twin, a rare one nowhere', () => {
  expect(commonSizeFor('15.5x24.5x1', commonSizes)).toEqual({ size: '16x25x1', turned: false })
  expect(commonSizeFor('25x16x1', commonSizes)).toEqual({ size: '16x25x1', turned: true })
  expect(commonSizeFor('16x25x1', commonSizes)).toBeNull()
  expect(commonSizeFor('17x31x1', commonSizes)).toBeNull()
  expect(commonSizeFor('31x17x1', commonSizes)).toBeNull()
  expect(commonSizeFor('0x0x0', commonSizes)).toBeNull()
})

test('every line of the shelf’s form is read, and each wrong number said at its field', () => {
  const form = new FormData()
  const fields = stockFields(KIND)
  form.set(fields.hand, ' 10 ')
  form.set(fields.box, '')
  expect(parseStock(form)).toEqual({ ok: true, value: [{ kind: KIND, onHand: 10, perBox: 1 }] })
  form.set(fields.hand, '-1')
  form.set(fields.box, '0')
  const parsed = parseStock(form)
  expect(parsed.ok ? [] : parsed.faults.map(({ path }) => path)).toEqual([fields.hand, fields.box])
})

test('whatever a form of the shelf holds, the answer is lines or faults', () => {
  fc.assert(
    fc.property(
      fc.dictionary(
        fc.oneof(
          fc.string(),
          fc.string().map((s) => `hand ${s}`),
        ),
        fc.string(),
      ),
      (typed) => {
        const form = new FormData()
        for (const [name, value] of Object.entries(typed)) form.set(name, value)
        const parsed = parseStock(form)
        if (!parsed.ok) expect(parsed.faults.length).toBeGreaterThan(0)
      },
    ),
  )
})
