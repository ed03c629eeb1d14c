import { chmodSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { ensureChromium, findChromium } from '../support/chromium.mjs'
import { expectConsoleError } from '../support/console'

let folder: string
let env: NodeJS.ProcessEnv

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plenum-chromium-'))
  env = { NODE_ENV: 'test', PATH: folder }
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function program(name: string, script: string): string {
  const file = join(folder, name)
  writeFileSync(file, `#!/bin/sh\n${script}\n`)
  chmodSync(file, 0o755)
  return file
}

test('the browser on the path is taken, a named one before it, a named one that is missing never replaced', () => {
  expect(findChromium(env)).toBeUndefined()
  const onPath = program('chromium-browser', '')
  expect(findChromium(env)).toBe(onPath)
  const named = program('mine', '')
  expect(findChromium({ ...env, CHROMIUM: named })).toBe(named)
  expect(ensureChromium({ ...env, CHROMIUM: join(folder, 'gone') })).toBeUndefined()
})

const asRoot = process.getuid?.() === 0

test.runIf(asRoot)('without one, root has it installed, after a second look at the package lists', () => {
  expectConsoleError(/Installing chromium/)
  // Stands in for the system's own: the package is unknown until the lists have been fetched.
  program(
    'apt-get',
    `echo "$1" >> ${folder}/log
     case "$1" in
       update) : > ${folder}/lists ;;
       install) test -e ${folder}/lists && : > ${folder}/chromium ;;
     esac`,
  )
  expect(ensureChromium(env)).toBe(join(folder, 'chromium'))
  expect(readFileSync(join(folder, 'log'), 'utf8')).toBe('install\nupdate\ninstall\n')
})

test.runIf(asRoot)('where nothing can be installed there is no browser, and no exception', () => {
  expectConsoleError(/Installing chromium/)
  expect(ensureChromium(env)).toBeUndefined()
  expect(existsSync(join(folder, 'chromium'))).toBe(false)
})
