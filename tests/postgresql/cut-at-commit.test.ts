import { existsSync } from 'node:fs'
import { connect, createServer, type Server, type Socket } from 'node:net'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest'
import { importArchive } from '@/lib/data/brought-photos'
import { closeDatabase } from '@/lib/data/connection'
import { exportHouseholds, listHomes } from '@/lib/data/households'
import { importHouseholds } from '@/lib/data/import'
import { listPhotos, photoFolder, savePhoto } from '@/lib/data/photos'
import { aHousehold } from '../support/a-household'
import { aPicture } from '../support/a-picture'
import { as, freshDatabase, someone } from '../support/fresh-database'

freshDatabase()

const port = inject('postgresPort') as number
let between: Server
let direct = ''
let throughIt = ''
let isCutting = false

// The network between: it lets a COMMIT through, and breaks before the answer.
function pass(client: Socket): void {
  const server = connect(port, '127.0.0.1')
  let isCommitted = false
  client.on('data', (sent) => {
    if (isCutting && /\bCOMMIT\b/.test(sent.toString('latin1'))) isCommitted = true
    server.write(sent)
  })
  server.on('data', (answer) => {
    if (isCommitted) client.destroy()
    else client.write(answer)
  })
  for (const [one, other] of [
    [client, server],
    [server, client],
  ] as const) {
    one.on('error', () => {})
    one.on('close', () => other.destroy())
  }
}

beforeAll(async () => {
  between = createServer(pass)
  await new Promise<void>((resolve) => between.listen(0, '127.0.0.1', resolve))
  const address = between.address()
  direct = process.env.DATABASE_URL ?? ''
  throughIt = direct.replace(`:${port}/`, `:${typeof address === 'object' ? address?.port : ''}/`)
})

beforeEach(() => {
  isCutting = false
})

afterAll(() => between.close())

/** Does a deed over a network that breaks after its COMMIT went out; expects it to say that nobody knows. */
async function cut(deed: () => Promise<unknown>): Promise<void> {
  await closeDatabase()
  process.env.DATABASE_URL = throughIt
  await listHomes({ kind: 'account', accountId: 'nobody', name: '', administrator: false })
  isCutting = true
  await expect(deed()).rejects.toMatchObject({ name: 'DatabaseUnavailable', because: 'lost' })
  await closeDatabase()
  process.env.DATABASE_URL = direct
}

async function picturesOf(home: string, viewer: Parameters<typeof listPhotos>[0]): Promise<boolean[]> {
  return (await listPhotos(viewer, home)).map(({ id }) => existsSync(join(photoFolder(home), `${id}.webp`)))
}

test('a photo that was saved before the network broke has its picture', async () => {
  const ann = await someone('ann')
  const imported = await importHouseholds(as(ann), [aHousehold()])
  const home = imported.ok ? (imported.ids[0] ?? '') : ''
  const sent = await aPicture()
  await cut(() => savePhoto(as(ann), home, { kind: 'filter', subject: 'hall', sent }))
  expect(await picturesOf(home, ann)).toEqual([true])
})

test('a home that was brought with photos before the network broke has its pictures', async () => {
  const ben = await someone('ben')
  const bytes = await aPicture()
  const photo = {
    kind: 'filter',
    subject: 'hall',
    at: '2026-11-20T12:00:00.000Z',
    path: 'photos/a.webp',
    bytes,
  } as const
  await cut(() => importArchive(as(ben), aHousehold(), [photo]))
  const [home] = await listHomes(ben)
  expect(await exportHouseholds(ben)).toHaveLength(1)
  expect(await picturesOf(home?.id ?? '', ben)).toEqual([true])
})
