import { expect, test } from 'vitest'
import { NOT_SENT } from '@/lib/core/answer'

test('before anything was sent nothing is wrong, nothing was typed, and nothing is done', () => {
  expect(NOT_SENT).toEqual({ faults: [], typed: {}, done: null })
})
