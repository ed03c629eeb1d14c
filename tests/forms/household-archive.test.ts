import fc from 'fast-check'
import { strToU8, zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { readBrought } from '@/lib/forms/household-archive'
import { FILE_LIMIT_BYTES, writeHouseholdFile } from '@/lib/forms/household-file'
import { aHousehold } from '../support/a-household'

const NOW = { on: () => '2026-11-25', now: '2026-11-25T12:00:00.000Z' }
const HOME = strToU8(writeHouseholdFile([aHousehold()]))
const PHOTO = { file: 'photos/a.webp', kind: 'filter', subject: 'hall', at: '2026-11-20T12:00:00.000Z', byName: 'Ann' }

function faultsOf(files: Record<string, Uint8Array>): string[] {
  const read = readBrought(zipSync(files), NOW)
  return read.ok ? [] : read.faults.map(({ path, say }) => `${path}: ${say}`)
}

function withList(list: unknown, files: Record<string, Uint8Array> = { 'photos/a.webp': strToU8('x') }): string[] {
  return faultsOf({ 'household.json': HOME, 'photos.json': strToU8(JSON.stringify(list)), ...files })
}

test('a plain household file, and an archive with or without photos, are read', () => {
  expect(readBrought(HOME, NOW)).toMatchObject({ ok: true, photos: [] })
  expect(readBrought(zipSync({ 'household.json': HOME }), NOW)).toMatchObject({ ok: true, photos: [] })
  expect(withList([PHOTO])).toEqual([])
})

test('every fault of an archive is said at once, with its place', () => {
  const faults = withList(
    [
      { ...PHOTO, subject: 'attic' },
      { ...PHOTO, at: '2027-01-01T00:00:00.000Z' },
      { ...PHOTO, file: 'photos/missing.webp' },
    ],
    { 'photos/a.webp': strToU8('x'), 'photos/more.webp': strToU8('x') },
  )
  expect(faults.map((fault) => fault.split(':')[0])).toEqual([
    'photos[1].file',
    'photos[2].file',
    'photos/more.webp',
    'photos[0].subject',
    'photos[1].at',
  ])
  expect(withList([{ ...PHOTO, kind: 'cat', colour: 'red', at: 'today' }]).length).toBe(3)
  const home = strToU8(JSON.stringify({ plenum: 1, households: [{ id: 'x', colour: 'red' }] }))
  const both = faultsOf({ 'household.json': home, 'photos.json': strToU8('[{]') })
  expect(both.some((fault) => fault.startsWith('households[0]'))).toBe(true)
  expect(both.some((fault) => fault.startsWith('photos.json'))).toBe(true)
})

test('nothing but a home’s own files is ever unpacked', () => {
  for (const name of ['../secret', '/etc/x', 'photos/../../x.webp', 'photos/x.svg', 'plenum.db', 'photos/a/b.webp'])
    expect(faultsOf({ 'household.json': HOME, [name]: strToU8('x') }), name).toHaveLength(1)
  expect(faultsOf({ 'photos.json': strToU8('[]') })).toHaveLength(1)
})

test('an archive that claims to be huge is refused before it is unpacked', () => {
  const zeros = new Uint8Array(60_000_000)
  expect(faultsOf({ 'household.json': zeros })[0]).toContain('larger than such a file ever is')
  expect(faultsOf({ 'household.json': HOME, 'photos/a.webp': zeros.subarray(0, 9_000_000) })).toHaveLength(1)
  const many = Object.fromEntries(Array.from({ length: 400 }, (_, i) => [`photos/${i}.webp`, strToU8('x')]))
  expect(faultsOf({ 'household.json': HOME, ...many })).toEqual([': holds more than the 300 photos of one home'])
})

test('cut off or changed anywhere, an archive is read or refused, and never breaks', () => {
  const whole = zipSync({
    'household.json': HOME,
    'photos.json': strToU8(JSON.stringify([PHOTO])),
    'photos/a.webp': strToU8('x'.repeat(500)),
  })
  fc.assert(
    fc.property(fc.nat({ max: whole.length - 1 }), (end) => {
      expect(readBrought(whole.slice(0, end), NOW).ok).toBe(false)
    }),
  )
  fc.assert(
    fc.property(fc.nat({ max: whole.length - 1 }), fc.nat({ max: 255 }), (at, byte) => {
      const changed = whole.slice()
      changed[at] = byte
      const read = readBrought(changed, NOW)
      if (!read.ok) expect(read.faults.length).toBeGreaterThan(0)
    }),
    { numRuns: 500 },
  )
})

test('a household file that is too large for a page is told where else it can be brought', () => {
  const many = `${new TextDecoder().decode(HOME)}${' '.repeat(FILE_LIMIT_BYTES)}`
  expect(readBrought(many, NOW)).toMatchObject({
    faults: [{ path: '', say: expect.stringMatching(/larger than 9 MB.*account -- bring.*archive of its own/) }],
  })
  const entries = `{"plenum":1,"households":[${'1,'.repeat(200_000)}1]}`
  expect(readBrought(entries, NOW)).toMatchObject({
    faults: [{ path: '', say: expect.stringMatching(/more than 200000 entries.*account -- bring/) }],
  })
  expect(readBrought(many, { ...NOW, limitBytes: 20_000_000 })).toMatchObject({ ok: true, json: many })
})
