import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, expect, test } from 'vitest'
import { installationSecret } from '@/lib/access/secret'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { closeDatabase } from '@/lib/data/connection'
import { migrate } from '@/lib/data/migrate'
import { cookieText, sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { type RunningApp, startApp } from '../support/app'
import { countRows } from '../support/rows'
import { mountSmallDisk } from '../support/small-disk'
import { type Answered, ask, sendForm, wordsOf } from '../support/web-form'

// The built app on a disk that really fills up. Where nothing may be mounted (no root) this cannot be tried.

const ASKED = { email: 'ann@example.org', password: 'four words are enough' }
const disk = mountSmallDisk(12)
const before = { DATABASE_URL: process.env.DATABASE_URL, DATA_DIR: process.env.DATA_DIR }
let app: RunningApp | undefined

afterAll(async () => {
  await app?.stop()
  disk?.remove()
  for (const [key, value] of Object.entries(before)) {
    if (value === undefined) delete process.env[key]
    else process.env[key] = value
  }
})

test.skipIf(disk === null)(
  'a full disk: reading goes on, writes and photos are said to be unsaved, and with room it all works again',
  async () => {
    if (!disk) return
    const { folder } = disk
    const file = join(folder, 'plenum.db')
    process.env.DATA_DIR = folder
    process.env.DATABASE_URL = `file:${file}`
    migrate()
    const made = await createAccountWith(ASKED, [aHousehold()])
    const home = made.ok ? `/home/${made.ids[0]}` : ''
    const signedIn = await signIn(sentWith(), ASKED)
    const cookie = cookieText(signedIn.ok ? signedIn.cookies : null)
    installationSecret()
    await closeDatabase()
    app = await startApp({ folder, databaseUrl: null })
    const sent = { headers: { cookie } }
    const record = `${app.address}${home}/record/change-filter/hall`
    expect(wordsOf(await ask(app.address + home, sent))).toContain('Larkspur Court 2')
    const rows = countRows(file)
    disk.fill()

    expect(wordsOf(await ask(app.address + home, sent))).toContain('Larkspur Court 2')
    const refused = wordsOf(await sendForm(record, { on: '2026-11-20' }, sent))
    expect(refused).toMatch(/disk that holds the database is full.*Nothing was saved/)
    const picture = await sharp({ create: { width: 900, height: 700, channels: 3, background: '#7a5' } })
      .png()
      .toBuffer()
    const form = new FormData()
    form.set('about', 'filter hall')
    form.set('photo', new File([new Uint8Array(picture)], 'filter.png', { type: 'image/png' }))
    const photo = await send(`${app.address}${home}/photos/add`, form, cookie)
    expect(wordsOf(photo)).toMatch(/disk that holds the database is full/)
    expect(photosIn(folder)).toEqual([])
    expect(countRows(file)).toEqual(rows)

    disk.makeRoom()
    expect((await sendForm(record, { on: '2026-11-20' }, sent)).status).toBe(303)
    expect((await ask(`${app.address}/healthz`)).status).toBe(200)
    expect(countRows(file)).not.toEqual(rows)
  },
  120_000,
)

async function send(address: string, form: FormData, cookie: string): Promise<Answered> {
  const encoded = new Response(form)
  const type = encoded.headers.get('content-type') ?? ''
  return ask(address, {
    method: 'POST',
    body: Buffer.from(await encoded.arrayBuffer()),
    headers: { cookie, origin: new URL(address).origin, 'content-type': type },
  })
}

function photosIn(folder: string): string[] {
  try {
    return readdirSync(join(folder, 'photos'), { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.\w+$/.test(name),
    )
  } catch {
    return []
  }
}
