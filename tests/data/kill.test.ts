import { expect, test } from 'vitest'
import { freshDatabase } from '../support/fresh-database'
import { killImports } from '../support/kills/import'
import { killRecords } from '../support/kills/record'

freshDatabase()

test('killed ten times in the middle of imports, every confirmed file is there whole and no other part of one', async () => {
  const { confirmed, lost, torn } = await killImports({ times: 10, pause: (kill) => 7 + kill * 23 })
  expect({ lost, torn }).toEqual({ lost: [], torn: [] })
  expect(confirmed).toBeGreaterThan(9)
}, 180_000)

test('killed ten times in the middle of recording, every confirmed record is there and the home fits it', async () => {
  const { confirmed, lost, torn } = await killRecords({ times: 10, pause: (kill) => 5 + kill * 11 })
  expect({ lost, torn }).toEqual({ lost: [], torn: [] })
  expect(confirmed).toBeGreaterThan(9)
}, 180_000)
