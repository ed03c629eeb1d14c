import { expect, test } from 'vitest'
import { may, rolesThatMay } from '@/lib/core/viewer'

test('whoever may do a deed in a household is named for the database', () => {
  expect(rolesThatMay('see')).toEqual(['owner', 'adult', 'manager', 'technician'])
  expect(rolesThatMay('record')).toEqual(['owner', 'adult', 'manager'])
  expect(rolesThatMay('manage')).toEqual(['owner', 'adult', 'manager'])
  expect(rolesThatMay('own')).toEqual(['owner'])
})

test('a renter records what was done, and changes nothing that is described', () => {
  expect((['see', 'record', 'manage', 'own'] as const).filter((deed) => may('renter', deed))).toEqual(['see', 'record'])
})
