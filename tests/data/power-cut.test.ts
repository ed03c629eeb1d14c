import { expect, test } from 'vitest'
import { freshDatabase } from '../support/fresh-database'
import { cutPowers } from '../support/kills/power-cut'

const place = freshDatabase()

test('the power cut ten times in the middle of recording: the files as they lay there open, and hold all that was confirmed', async () => {
  const { confirmed, lost, torn } = await cutPowers(place.folder, { times: 10, pause: (cut) => 20 + cut * 17 })
  expect({ lost, torn }).toEqual({ lost: [], torn: [] })
  expect(confirmed).toBeGreaterThan(10)
}, 180_000)
