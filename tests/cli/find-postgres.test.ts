import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { expectConsoleError } from '../support/console'
import { ensurePostgres, findPostgres } from '../support/find-postgres.mjs'

let folder: string
let debian: string
let env: NodeJS.ProcessEnv

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'plenum-find-'))
  debian = join(folder, 'versions')
  env = { NODE_ENV: 'test', PATH: folder }
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function programs(bin: string): string {
  mkdirSync(bin, { recursive: true })
  for (const name of ['initdb', 'postgres']) writeFileSync(join(bin, name), '')
  return bin
}

test('the newest version that is new enough is taken, a named one before it, a named one that is missing never replaced', () => {
  expect(findPostgres(env, debian)).toBeUndefined()
  programs(join(debian, '9.6', 'bin'))
  programs(join(debian, '12', 'bin'))
  expect(findPostgres(env, debian)).toBeUndefined()
  programs(join(debian, '13', 'bin'))
  const newest = programs(join(debian, '101', 'bin'))
  mkdirSync(join(debian, '102', 'bin'), { recursive: true }) // the client's programs only
  expect(findPostgres(env, debian)).toBe(newest)
  const named = programs(join(folder, 'mine'))
  expect(findPostgres({ ...env, POSTGRES_BIN: named }, debian)).toBe(named)
  expect(ensurePostgres({ ...env, POSTGRES_BIN: join(folder, 'gone') }, debian)).toBeUndefined()
})

const asRoot = process.getuid?.() === 0

test.runIf(asRoot)('without one, root has it installed, after a second look at the package lists', () => {
  expectConsoleError(/Installing postgresql/)
  const apt = join(folder, 'apt-get')
  // Stands in for the system's own: the package is unknown until the lists have been fetched.
  writeFileSync(
    apt,
    `#!/bin/sh
echo "$@" >> ${folder}/asked
case "$1" in
  update) : > ${folder}/fetched ;;
  install) [ -e ${folder}/fetched ] || exit 100
    /bin/mkdir -p ${debian}/15/bin; : > ${debian}/15/bin/initdb; : > ${debian}/15/bin/postgres ;;
esac
`,
  )
  chmodSync(apt, 0o755)
  expect(ensurePostgres(env, debian)).toBe(join(debian, '15', 'bin'))
  expect(readFileSync(join(folder, 'asked'), 'utf8').match(/^install|^update/gm)).toEqual([
    'install',
    'update',
    'install',
  ])
  expect(ensurePostgres(env, debian)).toBe(join(debian, '15', 'bin'))
})
