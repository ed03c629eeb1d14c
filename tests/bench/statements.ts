import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import Database from 'better-sqlite3'
import { ask } from '../support/web-form'
import { serve } from './server'
import { medians } from './table'

/** What a page asks of the database, and what that takes by the driver alone. */
export interface PageSql {
  statements: number
  ms: number
}

const RUNS = 15

/** Asks each page of the built app once it is warm, and asks the same statements again of the same file. */
export async function sqlOfPages(file: string, paths: string[], cookie: string): Promise<Map<string, PageSql>> {
  const noted = join(file, '..', 'noted-statements')
  writeFileSync(noted, '')
  const preload = pathToFileURL(join(import.meta.dirname, 'note-statements.mjs')).href
  const server = await serve({ NODE_OPTIONS: `--import=${preload}`, NOTED_STATEMENTS: noted })
  const asked = new Map<string, Statement[]>()
  for (const path of paths) {
    for (let warm = 0; warm < 2; warm++) {
      writeFileSync(noted, '')
      const { status } = await ask(`${server.address}${path}`, { headers: { cookie } })
      if (status !== 200) throw new Error(`${path} answers ${status}`)
    }
    asked.set(
      path,
      linesOf(noted).filter(({ reads }) => reads),
    )
  }
  await server.stop()
  const driver = new Database(file, { readonly: true })
  const ways = Object.fromEntries(
    [...asked].map(([path, statements]) => {
      const ready = statements.map(({ text, values }) => ({ statement: driver.prepare(text).raw(), values }))
      return [path, () => ready.map(({ statement, values }) => statement.all(...values))]
    }),
  )
  const taken = await medians(RUNS, ways)
  driver.close()
  return new Map(
    [...asked].map(([path, statements]) => [path, { statements: statements.length, ms: taken[path] ?? 0 }]),
  )
}

interface Statement {
  text: string
  values: unknown[]
  reads: boolean
}

function linesOf(file: string): Statement[] {
  const lines = readFileSync(file, 'utf8').split('\n').filter(Boolean)
  return lines.map((line) => JSON.parse(line))
}
