import { spawnSync } from 'node:child_process'
import { statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { zipSync } from 'fflate'
import { expect, test } from 'vitest'
import { viewerByToken } from '@/lib/access/api-tokens'
import { signIn } from '@/lib/access/sign-in'
import { addDays } from '@/lib/core/day'
import { exportHouseholds } from '@/lib/data/households'
import { listPhotos } from '@/lib/data/photos'
import { FILE_LIMIT_BYTES, writeHouseholdFile } from '@/lib/forms/household-file'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { aPicture } from '../support/a-picture'
import { freshDatabase } from '../support/fresh-database'

const place = freshDatabase()

/** Runs the command as a person does, without npm's own lines. */
function account(args: string[], input: string) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--conditions=react-server', '--import=tsx', 'lib/cli/account.ts', ...args],
    { input, encoding: 'utf8', env: { ...process.env, NODE_ENV: 'production' } },
  )
  return { status, stdout, stderr: stderr.trim().split('\n') }
}

test('it makes an account with a household file in it, resets its password and lists it', async () => {
  const file = join(place.folder, 'homes.json')
  writeFileSync(file, writeHouseholdFile([aHousehold()]))
  const made = account(['create', '--email', 'Ann@example.org', '--import', file], 'four words are enough\n')
  expect(made).toMatchObject({ status: 0, stderr: [''] })
  const { account: accountId, households, calendarPath, apiToken } = JSON.parse(made.stdout)
  expect(calendarPath).toMatch(/^\/calendar\/[\w-]{43}\.ics$/)
  expect(households).toHaveLength(1)
  const asked = await viewerByToken(sentWith([], { authorization: `Bearer ${apiToken}` }))
  expect(asked).toMatchObject({ ok: true, viewer: { accountId } })
  const ann = { kind: 'account', accountId, name: 'ann', administrator: true } as const
  expect(await exportHouseholds(ann)).toStrictEqual([aHousehold()])
  expect((await signIn(sentWith(), { email: 'ann@example.org', password: 'four words are enough' })).ok).toBe(true)

  expect(account(['reset-password', '--email', 'ann@example.org'], 'five words are enough too')).toMatchObject({
    status: 0,
  })
  expect((await signIn(sentWith(), { email: 'ann@example.org', password: 'five words are enough too' })).ok).toBe(true)
  const listed = account(['list'], '')
  expect(JSON.parse(listed.stdout)).toMatchObject({ id: accountId, email: 'ann@example.org', households: 1 })
}, 120_000)

test('it brings what is too large for a page into an account that is there, and an archive with its photos', async () => {
  const made = account(['create', '--email', 'eve@example.org'], 'four words are enough')
  const { account: accountId } = JSON.parse(made.stdout)
  const eve = { kind: 'account', accountId, name: 'eve', administrator: false } as const
  const days = Array.from({ length: 500 }, (_, i) => addDays('2025-01-01', i))
  const records = days.map((on) => ({ on, kind: 'filter-looked', filter: 'hall', light: 'clear' }) as const)
  const homes = Array.from({ length: 160 }, (_, i) => aHousehold({ id: `unit-${i}`, records }))
  const file = join(place.folder, 'many.json')
  writeFileSync(file, writeHouseholdFile(homes))
  expect(statSync(file).size).toBeGreaterThan(FILE_LIMIT_BYTES)
  const brought = account(['bring', '--email', 'Eve@example.org', '--import', file], '')
  expect(brought).toMatchObject({ status: 0, stderr: [''] })
  expect(JSON.parse(brought.stdout).households).toHaveLength(160)
  expect(await exportHouseholds(eve)).toStrictEqual(homes)

  const photos = [{ file: 'photos/a.webp', kind: 'filter', subject: 'hall', at: '2026-01-01T00:00:00.000Z' }]
  const archive = join(place.folder, 'home.zip')
  writeFileSync(
    archive,
    zipSync({
      'household.json': Buffer.from(writeHouseholdFile([aHousehold()])),
      'photos.json': Buffer.from(JSON.stringify(photos)),
      'photos/a.webp': await aPicture(),
    }),
  )
  const [home] = JSON.parse(account(['bring', '--email', 'eve@example.org', '--import', archive], '').stdout).households
  expect(await listPhotos(eve, home)).toMatchObject([{ kind: 'filter', subject: 'hall', door: 'command' }])

  const twice = account(['bring', '--email', 'eve@example.org', '--import', archive], '')
  expect(twice).toMatchObject({ status: 2, stdout: '', stderr: [expect.stringContaining('already')] })
  const unknown = account(['bring', '--email', 'nobody@example.org', '--import', archive], '')
  expect(unknown).toMatchObject({ status: 2, stderr: ['There is no account for nobody@example.org.'] })
}, 120_000)

test('every fault is a line on standard error, with exit status 2 and nothing else', () => {
  const file = join(place.folder, 'faulty.json')
  writeFileSync(file, JSON.stringify({ plenum: 1, households: [{ id: 'x', colour: 'red' }] }))
  const faulty = account(['create', '--email', 'ben@example.org', '--import', file], 'four words are enough')
  expect(faulty).toMatchObject({ status: 2, stdout: '' })
  expect(faulty.stderr.length).toBeGreaterThan(3)
  expect(faulty.stderr.every((line) => line.startsWith('households[0]'))).toBe(true)
  const short = account(['create', '--email', 'nobody', '--import', join(place.folder, 'homes.json')], 'short')
  expect(short).toMatchObject({
    status: 2,
    stdout: '',
    stderr: [expect.stringContaining('email'), expect.stringContaining('password')],
  })
  expect(account(['reset-password', '--email', 'zoe@example.org'], 'four words are enough')).toMatchObject({
    status: 2,
  })
  expect(account(['destroy'], '')).toMatchObject({ status: 2, stdout: '' })
}, 120_000)
