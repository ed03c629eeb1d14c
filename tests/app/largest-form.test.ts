import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { MOST_BYTES as ofPhotos, PHOTO_FAULTS } from '@/app/photo-faults'
import { MOST_BYTES as ofServer } from '@/lib/cli/too-large.mjs'
import { MOST_SPOOLED_BYTES } from '@/lib/data/spool'
import config from '@/next.config'

// Next is told in its own words, the server runs before anything is compiled, and no room holds all three.
test('the largest form is the same to Next, to the server before it and to the photos', () => {
  const { serverActions, proxyClientMaxBodySize } = config.experimental
  const megabytes = [serverActions.bodySizeLimit, proxyClientMaxBodySize].map((size) => /^(\d+)mb$/.exec(size)?.[1])
  expect([...megabytes, ofServer / 1024 ** 2, ofPhotos / 1024 ** 2].map(Number)).toEqual([12, 12, 12, 12])
  expect(PHOTO_FAULTS['too-large']).toContain('larger than 12 MB')
})

test('nginx as documented lets the largest report of a thermostat through, its form around it', () => {
  const most = /client_max_body_size (\d+)m;/.exec(readFileSync('DEVELOPERS.md', 'utf8'))?.[1]
  expect(Number(most) * 1024 ** 2).toBeGreaterThan(MOST_SPOOLED_BYTES + 100_000)
})
