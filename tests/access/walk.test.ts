import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { expect, test, vi } from 'vitest'
import { listRegistered } from '@/lib/access/registry'
import { NOT_SENT } from '@/lib/core/answer'
import { importHouseholds } from '@/lib/data/import'
import { sentWith } from '../support/a-browser'
import { aHousehold } from '../support/a-household'
import { as, freshDatabase, someone } from '../support/fresh-database'
import { listUnwrapped } from '../support/unwrapped'

const request = vi.hoisted(() => ({ headers: new Headers() }))
vi.mock('next/headers', () => ({ headers: async () => request.headers, cookies: async () => new Map() }))

freshDatabase()

test('every action and every route of the app is made by the wrapper', () => {
  expect(listUnwrapped('app')).toEqual([])
})

test('one that is not made by the wrapper is found', () => {
  const folder = mkdtempSync(join(tmpdir(), 'plenum-planted-'))
  const plant: Record<string, string> = {
    'a/actions.ts': "'use server'\nexport async function wipe() {}\n",
    'b/route.ts': 'export async function GET() { return new Response() }\n',
    'c/route.ts': "export { GET } from './other'\n",
    'd/page.tsx': "export default function Page() {\n  async function save() {\n    'use server'\n  }\n}\n",
    'e/route.ts':
      "export const dynamic = 'force-dynamic'\nexport const POST = handler({ name: 'x', needs: 'account', run })\n",
    'f/actions.ts': "'use server'\nexport const save = action({\n  name: 'y' })\nexport const other = async () => {}\n",
    'g/actions.ts': "'use server'\nexport default action({})\n",
  }
  for (const [file, text] of Object.entries(plant)) {
    mkdirSync(join(folder, file, '..'))
    writeFileSync(join(folder, file), text)
  }
  const found = listUnwrapped(folder).map((fault) => fault.slice(folder.length + 1, folder.length + 2))
  rmSync(folder, { recursive: true })
  expect(found.sort()).toEqual(['a', 'b', 'c', 'd', 'f', 'g'])
})

interface Wrapped {
  file: string
  name: string
  call: (...args: unknown[]) => Promise<unknown>
}

async function everything(): Promise<Wrapped[]> {
  const files = readdirSync('app', { recursive: true, encoding: 'utf8' }).filter((file) =>
    /(^|\/)(actions|route)\.ts$/.test(file),
  )
  const modules = await Promise.all(
    files.map(async (file) => ({ file, module: await import(/* @vite-ignore */ resolve('app', file)) })),
  )
  return modules.flatMap(({ file, module }) =>
    Object.entries(module).flatMap(([name, call]) =>
      typeof call === 'function' ? [{ file, name, call: call as Wrapped['call'] }] : [],
    ),
  )
}

test('nobody gets anything from an action or route that needs somebody, nor into someone else’s home', async () => {
  const owner = await someone('owner')
  const imported = await importHouseholds(as(owner), [aHousehold()])
  const household = imported.ok ? (imported.ids[0] ?? '') : ''
  const all = await everything()
  const registered = listRegistered()
  expect(registered.length).toBeGreaterThanOrEqual(all.length)
  const open = registered.filter(({ needs }) => needs === 'nobody').length
  let barred = 0
  request.headers = sentWith()
  for (const { file, name, call } of all) {
    if (file.endsWith('actions.ts')) {
      const form = new FormData()
      form.set('household', household)
      const answer = await call(NOT_SENT, form).catch((error: { digest?: string }) => ({
        done: null,
        digest: error.digest,
      }))
      if (JSON.stringify(answer).includes('signed out')) barred++
    } else {
      const asked = new Request('http://localhost:3000/', { method: name, headers: sentWith() })
      const answer = (await call(asked, { params: Promise.resolve({ household }) })) as Response
      if (answer.status === 401) barred++
    }
  }
  expect(barred).toBe(all.length - open)
}, 60_000)
