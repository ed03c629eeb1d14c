import fc from 'fast-check'
import { expect, test } from 'vitest'
import { logQueryText, parseLogQuery } from '@/lib/forms/log-filter'

test('what a query says is what its address says, read back', () => {
  const sent = {
    kind: 'filter-changed',
    subject: 'hall & stairs',
    who: 'Ann',
    door: 'mail',
    from: '2026-1-5',
    to: '2026-12-31',
  }
  const { query, faults } = parseLogQuery(sent)
  expect(faults).toEqual([])
  expect(query).toEqual({ ...sent, from: '2026-01-05' })
  expect(parseLogQuery(new URLSearchParams(logQueryText(query))).query).toEqual(query)
})

test('what is not understood is said and left out, and what is empty is not asked', () => {
  const { query, faults } = parseLogQuery({ kind: 'wishes', from: '2026-02-30', to: '', who: ['Ben', 'Ann'] })
  expect(query).toEqual({ who: 'Ben' })
  expect(faults.map(({ path }) => path)).toEqual(['kind', 'from'])
})

test('no address makes it fail', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const { query } = parseLogQuery(new URLSearchParams(text))
      expect(logQueryText(query)).toMatch(/^(\?|$)/)
    }),
  )
})
