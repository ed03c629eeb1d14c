import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { ROOT } from '@/lib/cli/root.mjs'
import { houseFaults, listImports, type SourceFile } from './support/house'

function readSources(folder: string): SourceFile[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder ? `${folder}/${entry.name}` : entry.name
    if (entry.isDirectory())
      return /^(node_modules|generated|tests|public|\..*|data)$/.test(path) ? [] : readSources(path)
    return /\.(ts|tsx|mjs)$/.test(path) ? [{ path, text: readFileSync(join(ROOT, path), 'utf8') }] : []
  })
}

const sources = readSources('').filter((file) => !file.path.startsWith('prisma/generated/'))

test('every room imports only what the house allows it', () => {
  expect(sources.length).toBeGreaterThan(10)
  expect(houseFaults(sources)).toEqual([])
})

const PLANTED: [string, string, string?][] = [
  ['lib/core/hours.ts', "import { z } from 'zod'"],
  ['lib/core/hours.ts', "import { addDays } from 'date-fns'"],
  ['lib/core/hours.ts', "import { readFileSync } from 'node:fs'"],
  ['lib/core/hours.ts', "import { a } from '@/lib/guide/replay'"],
  ['lib/core/hours.ts', "import { table } from '@/content/media'"],
  ['lib/core/hours.ts', 'const at = Date.now()', 'reads the clock'],
  ['lib/core/hours.ts', 'const at = new Date()', 'reads the clock'],
  ['lib/core/hours.ts', "await fetch('https://example.org')", 'reads the network'],
  ['lib/core/hours.ts', 'const x = Math.random()', 'draws by chance'],
  ['lib/core/hours.ts', 'const x = process.env.HOME', 'reads its surroundings'],
  ['lib/guide/replay.ts', "import { now } from '@/lib/clock'"],
  ['lib/guide/replay.ts', "export * from '@/lib/data/household'"],
  ['content/media.ts', "import { plan } from '@/lib/core/plan'", 'more than types'],
  ['lib/forms/household.ts', "import { db } from '@/lib/data/db'"],
  ['lib/data/household.ts', "import { now } from '@/lib/clock'"],
  ['lib/data/household.ts', "import { session } from '@/lib/access/session'"],
  ['lib/access/session.ts', "import { sendMail } from '@/lib/outbound/mail'"],
  ['lib/outbound/calendar.ts', "import { tasks } from '@/content/tasks'"],
  ['lib/clock.ts', "import { dayText } from '@/lib/core/day'"],
  ['lib/cli/plan.ts', "import Page from '@/app/page'"],
  ['lib/cli/plan.ts', "const page = await import('@/app/page')"],
  ['app/parts/year.tsx', "import { household } from '@/lib/data/household'"],
  ['app/parts/year.tsx', "import { today } from '../today'"],
  ['app/homes/page.tsx', "import { Year } from '../parts/year'", 'is written @/'],
  ['lib/guide/replay.ts', "import { plan } from '../core/plan'", 'is written @/'],
  ['app/page.tsx', "import { PrismaClient } from '@prisma/client'"],
  ['app/page.tsx', "import { z } from 'zod'"],
  ['app/page.tsx', "import { sample } from '@/tests/support/sample'"],
  ['app/page.tsx', "import { plan } from '@/lib/core/plan.ts'", 'file extension'],
]

for (const [path, text, says] of PLANTED)
  test(`planted in ${path}, it is found: ${text}`, () => {
    const faults = houseFaults([{ path, text: `// a comment\n${text}\n` }])
    expect(faults).toHaveLength(1)
    expect(faults[0]).toContain(says ?? 'imports')
  })

test('what the house allows is not called a breach', () => {
  const allowed: [string, string][] = [
    ['lib/core/day.ts', "import { addMonths } from 'date-fns'"],
    ['lib/core/plan.ts', "import { dayNumber } from './day'\nconst at = new Date(0) // Date.now() would be wrong"],
    ['content/media.ts', "import type { Medium } from '@/lib/core/tables'"],
    ['lib/forms/household.ts', "import { z } from 'zod'\nimport { isDay } from '@/lib/core/day'"],
    ['lib/data/db.ts', "import { PrismaClient } from '@/prisma/generated/sqlite/client'\nimport 'server-only'"],
    ['content/sample.ts', "import { addDays } from '@/lib/core/day'"],
    ['lib/forms/rules/record-rules.ts', "import { fault } from '../fault'"],
    ['lib/access/page.ts', "import { cookies } from 'next/headers'\nimport { now } from '@/lib/clock'"],
    ['app/page.tsx', "import Link from 'next/link'\nimport { Year } from '@/app/parts/year'\nimport './globals.css'"],
  ]
  expect(houseFaults(allowed.map(([path, text]) => ({ path, text })))).toEqual([])
})

test('imports are found over several lines and not in comments or texts', () => {
  const text = `import {
  a,
  type B,
} from './one'
import type { C } from './two'
export { d } from './three'
// import { e } from './no'
/* import './no' */
const address = 'https://example.org' // from './no'
import './four'
const five = await import('./five')`
  expect(listImports(text).map((found) => [found.from, found.typeOnly])).toEqual([
    ['./one', false],
    ['./two', true],
    ['./three', false],
    ['./four', false],
    ['./five', false],
  ])
})
