import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dropCard, keepCard, listKeptCards } from '@/app/find/kept-cards'

function aStore(start: string | null = null, refuses = false) {
  let kept = start
  return {
    getItem: () => kept,
    setItem: (_key: string, text: string) => {
      if (refuses) throw new Error('full')
      kept = text
    },
  }
}

const SIZE = { from: 'printed', w: '16', h: '25', d: '1', u: 'in' } as const

test('a card is kept once, newest first, with its size, and can be taken off', () => {
  const store = aStore()
  expect(keepCard(store, { answers: 'no.no.own', typed: null })).toBe(true)
  expect(keepCard(store, { answers: 'no.no.rent', typed: SIZE })).toBe(true)
  expect(keepCard(store, { answers: 'no.no.own', typed: SIZE })).toBe(true)
  expect(listKeptCards(store)).toEqual([
    { answers: 'no.no.own', typed: SIZE },
    { answers: 'no.no.rent', typed: SIZE },
  ])
  dropCard(store, 'no.no.own')
  expect(listKeptCards(store)).toHaveLength(1)
})

test('a phone that keeps nothing says so, and what another program left there is passed over', () => {
  expect(keepCard(aStore(null, true), { answers: 'no', typed: null })).toBe(false)
  fc.assert(fc.property(fc.oneof(fc.json(), fc.string()), (text) => Array.isArray(listKeptCards(aStore(text)))))
})
