import fc from 'fast-check'
import { afterEach, expect, test, vi } from 'vitest'
import { GET } from '@/app/api/v1/plan/route'
import { bearerIn, createApiToken, viewerByToken } from '@/lib/access/api-tokens'
import { LIMITS } from '@/lib/access/limits'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { deleteAccount } from '@/lib/data/accounts'
import { listApiTokens, MOST_TOKENS, revokeApiToken } from '@/lib/data/api-tokens'
import { database } from '@/lib/data/connection'
import { importHouseholds } from '@/lib/data/import'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { cpuTime } from '../support/cpu-time'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()
process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'
afterEach(() => {
  process.env.PLENUM_NOW = '2026-11-25T18:00:00Z'
})

let address = 0
function ask(headers: Record<string, string>, from = `192.0.2.${++address}`): Promise<Response> {
  const request = new Request('http://localhost:3000/api/v1/plan', { headers: { ...headers, 'x-forwarded-for': from } })
  return GET(request, { params: Promise.resolve({}) })
}

async function aProgram(name: string) {
  const owner = await someone(name)
  await importHouseholds(as(owner), [aHousehold({ since: '2026-09-01' })])
  const made = await createApiToken(as(owner), 'Kitchen display')
  if (!made.ok) throw new Error(made.because)
  const [listed] = await listApiTokens(owner)
  return { owner, token: made.token, id: listed?.id ?? '' }
}

test('a token has our prefix and 256 bits, and is stored as a hash that opens nothing', async () => {
  const { token } = await aProgram('ann')
  expect(token).toMatch(/^plenum_[\w-]{43}$/)
  const rows = await database().apiToken.findMany()
  expect(JSON.stringify(rows)).not.toContain(token.slice(7))
  expect((await ask({ authorization: `Bearer ${token}` })).status).toBe(200)
  expect((await ask({ authorization: `Bearer ${rows[0]?.tokenHash}` })).status).toBe(401)
})

test('the scheme may be written as one likes; the day of the last use is noted once a day', async () => {
  const { owner, token } = await aProgram('ben')
  expect((await listApiTokens(owner))[0]).toMatchObject({ lastUsedOn: null, createdAt: expect.any(String) })
  for (const scheme of ['bearer', 'BEARER', 'Bearer ']) {
    expect((await ask({ authorization: `${scheme} ${token}` })).status).toBe(200)
  }
  expect((await listApiTokens(owner))[0]?.lastUsedOn).toBe('2026-11-25')
  process.env.PLENUM_NOW = '2026-11-27T18:00:00Z'
  await ask({ authorization: `Bearer ${token}` })
  expect((await listApiTokens(owner))[0]?.lastUsedOn).toBe('2026-11-27')
})

test('revoked, unknown and malformed tokens get one and the same answer', async () => {
  const { owner, token, id } = await aProgram('cleo')
  expect(await revokeApiToken(as(await someone('stranger')), id)).toMatchObject({ ok: false })
  expect((await ask({ authorization: `Bearer ${token}` })).status).toBe(200)
  expect(await revokeApiToken(as(owner), id)).toEqual({ ok: true })
  expect(await revokeApiToken(as(owner), id)).toMatchObject({ ok: false })
  const answers = []
  for (const sent of [
    `Bearer ${token}`,
    `Bearer plenum_${'a'.repeat(43)}`,
    'Bearer',
    'Basic YW5uOnBhc3N3b3Jk',
    `Bearer ${token}, Bearer ${token}`,
    token,
  ]) {
    const answer = await ask({ authorization: sent })
    answers.push([answer.status, answer.headers.get('www-authenticate'), await answer.text()])
  }
  expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1)
  expect(answers[0]).toEqual([
    401,
    'Bearer realm="Plenum", error="invalid_token"',
    expect.stringMatching(/^\{"error":".*Bearer plenum_/),
  ])
})

test('without a token the answer asks for one, and a session is none', async () => {
  const made = await createAccountWith({ email: 'dan@example.org', password: 'four words are enough' }, [aHousehold()])
  const signedIn = await signIn(sentWith(), { email: 'dan@example.org', password: 'four words are enough' })
  expect([made.ok, signedIn.ok]).toEqual([true, true])
  const cookies = signedIn.ok ? signedIn.cookies : []
  const answer = await ask(Object.fromEntries(sentWith(cookies)))
  expect([answer.status, answer.headers.get('www-authenticate')]).toEqual([401, 'Bearer realm="Plenum"'])
  expect(answer.headers.get('access-control-allow-origin')).toBeNull()
})

test('a token writes nothing, whatever is sent with it', async () => {
  const { token } = await aProgram('eve')
  const request = new Request('http://localhost:3000/api/v1/plan', {
    method: 'POST',
    headers: { authorization: `Bearer ${token}`, origin: 'http://localhost:3000', host: 'localhost:3000' },
  })
  expect((await GET(request, { params: Promise.resolve({}) })).status).toBe(403)
})

test('many wrong tokens from one address have to wait, while a right one is still answered', async () => {
  const { token } = await aProgram('fay')
  const answers = []
  for (let i = 0; i < 12; i++)
    answers.push(await ask({ authorization: `Bearer plenum_${'b'.repeat(43)}` }, '198.51.100.7'))
  expect(answers[0]?.status).toBe(401)
  expect(answers.at(-1)?.status).toBe(429)
  expect(answers.at(-1)?.headers.get('retry-after')).toBe('900')
  expect((await ask({ authorization: `Bearer ${token}` }, '198.51.100.7')).status).toBe(200)
  expect((await ask({ authorization: `Bearer plenum_${'b'.repeat(43)}` }, '198.51.100.8')).status).toBe(401)
})

test('a program that never rests has to wait, and others do not', async () => {
  const { token, owner } = await aProgram('gil')
  const other = await createApiToken(as(owner), 'Another')
  const headers = (sent: string) => sentWith([], { authorization: `Bearer ${sent}` })
  for (let i = 0; i < LIMITS.token; i++) expect((await viewerByToken(headers(token))).ok).toBe(true)
  expect(await viewerByToken(headers(token))).toEqual({ ok: false, because: 'too-many' })
  expect((await viewerByToken(headers(other.ok ? other.token : ''))).ok).toBe(true)
  process.env.PLENUM_NOW = '2026-11-25T18:16:00Z'
  expect((await viewerByToken(headers(token))).ok).toBe(true)
}, 30_000)

test('there is an end to how many an account makes, and revoking makes room', async () => {
  const { owner, id } = await aProgram('hal')
  for (let i = 1; i < MOST_TOKENS; i++) expect((await createApiToken(as(owner), `No ${i}`)).ok).toBe(true)
  expect(await createApiToken(as(owner), 'One more')).toEqual({ ok: false, because: 'too-many' })
  await revokeApiToken(as(owner), id)
  expect((await createApiToken(as(owner), 'One more')).ok).toBe(true)
})

test('an account that is deleted takes its tokens with it', async () => {
  const { owner, token } = await aProgram('ida')
  expect(await deleteAccount(as(owner), owner.accountId)).toEqual({ ok: true })
  expect((await ask({ authorization: `Bearer ${token}` })).status).toBe(401)
  expect(await database().apiToken.count({ where: { accountId: owner.accountId } })).toBe(0)
})

test('no header but one with a token is read as one, and none of them hurts', () => {
  const token = `plenum_${'Az09_-'.repeat(8).slice(0, 43)}`
  expect(bearerIn(`Bearer ${token}`)).toBe(token)
  const near = fc
    .tuple(fc.constantFrom('Bearer', 'bearer', 'Basic', ''), fc.constantFrom(' ', '', '\t', '   '), fc.string())
    .map(([scheme, gap, rest]) => `${scheme}${gap}${rest}`)
  const spoiled = fc
    .tuple(fc.nat(token.length - 1), fc.constantFrom('', ' ', ',', 'é', '\0', '=', '%'))
    .map(([at, sign]) => `Bearer ${token.slice(0, at)}${sign}${token.slice(at + 1)}`)
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' }), near, spoiled), (header) => {
      expect(bearerIn(header)).toBeNull()
    }),
    { numRuns: 2000 },
  )
  // Long ones are judged as quickly as short ones.
  const started = cpuTime()
  expect(bearerIn(`Bearer${' '.repeat(100_000)}x`)).toBeNull()
  expect(cpuTime() - started).toBeLessThan(100)
})

test('whatever stands in the header, the answer is 401 or 429 and never a fault of ours', async () => {
  vi.stubEnv('PUBLIC_URL', '')
  await fc.assert(
    fc.asyncProperty(fc.stringMatching(/^[\x20-\x7e]{0,200}$/), async (header) => {
      const answer = await ask({ authorization: header })
      expect([401, 429]).toContain(answer.status)
    }),
    { numRuns: 60 },
  )
})
