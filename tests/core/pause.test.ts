import { expect, test } from 'vitest'
import { pauseFault } from '@/lib/core/pause'

const TODAY = '2026-11-25'

test('a pause ends on a day after today', () => {
  expect(pauseFault(TODAY, TODAY)).toBe('Choose a day after today.')
  expect(pauseFault('2026-11-26', TODAY)).toBeNull()
})

test('a pause of more than two years is a slip in the year', () => {
  expect(pauseFault('2028-11-25', TODAY)).toBeNull()
  expect(pauseFault('2028-11-26', TODAY)).toBe(
    'Look at the year: 26 November 2028 is more than two years from now. Choose an earlier day.',
  )
})
