import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { prepare, type Step } from '@/lib/cli/prepare.mjs'
import { ROOT } from '@/lib/cli/root.mjs'
import { STEPS } from '@/lib/cli/steps.mjs'

let root: string

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'plenum-prepare-'))
  writeFileSync(join(root, 'source'), 'one')
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

const log = (name: string) => (existsSync(join(root, name)) ? readFileSync(join(root, name), 'utf8') : '')
const run = (steps: Step[]) => prepare({ root, steps, say: () => {} })

// Copies `source` after `ms`; "(" and ")" in the log show whether two ever overlapped.
function copyStep(ms: number): Step {
  const script = `const fs = require('fs'); fs.appendFileSync('log', '('); fs.mkdirSync('out', { recursive: true });
    setTimeout(() => { fs.copyFileSync('source', 'out/made'); fs.appendFileSync('log', ')') }, ${ms})`
  return {
    name: 'copy',
    doing: 'Copying',
    inputs: ['source'],
    mark: 'out/.mark',
    failed: 'The copy failed.',
    commands: () => [[process.execPath, '-e', script]],
  }
}

async function prepareInOwnProcess(ms: number): Promise<ChildProcess> {
  const script = join(root, `prepare-${Math.random()}.mjs`)
  const steps = `[{ ...${JSON.stringify(copyStep(ms))}, commands: () => ${JSON.stringify(copyStep(ms).commands(root))} }]`
  writeFileSync(
    script,
    `import { prepare } from ${JSON.stringify(join(ROOT, 'lib/cli/prepare.mjs'))}
     await prepare({ root: ${JSON.stringify(root)}, steps: ${steps}, say: () => {} })`,
  )
  return spawn(process.execPath, [script], { stdio: 'ignore' })
}

async function until(condition: () => boolean): Promise<void> {
  for (let waited = 0; !condition(); waited += 20) {
    if (waited > 10_000) throw new Error('waited 10 s in vain')
    await sleep(20)
  }
}

test('a fresh folder is made, and a second time there is nothing to do', async () => {
  expect(await run([copyStep(0)])).toEqual(['copy'])
  expect(log('out/made')).toBe('one')
  expect(await run([copyStep(0)])).toEqual([])
  expect(log('log')).toBe('()')
  expect(existsSync(join(root, '.plenum.lock'))).toBe(false)
})

test('a changed source, and a removed result, are made again', async () => {
  await run([copyStep(0)])
  writeFileSync(join(root, 'source'), 'two')
  expect(await run([copyStep(0)])).toEqual(['copy'])
  expect(log('out/made')).toBe('two')
  rmSync(join(root, 'out'), { recursive: true })
  expect(await run([copyStep(0)])).toEqual(['copy'])
})

test('a file that is new, gone or renamed in a source folder makes a step stale', async () => {
  const step = { ...copyStep(0), inputs: ['source', 'folder'] }
  mkdirSync(join(root, 'folder'))
  await run([step])
  const touched: (() => void)[] = [
    () => writeFileSync(join(root, 'folder/a'), 'text'),
    () => {
      rmSync(join(root, 'folder/a'))
      writeFileSync(join(root, 'folder/b'), 'text')
    },
    () => rmSync(join(root, 'folder/b')),
  ]
  for (const touch of touched) {
    touch()
    expect(await run([step])).toEqual(['copy'])
  }
})

test('a step that fails says so in its own words and is tried again', async () => {
  const failing = { ...copyStep(0), commands: () => [[process.execPath, '-e', 'process.exit(3)']] }
  await expect(run([failing])).rejects.toThrow('The copy failed.')
  expect(existsSync(join(root, '.plenum.lock'))).toBe(false)
  expect(await run([copyStep(0)])).toEqual(['copy'])
})

test('killed in the middle: the next one waits for what still runs, then makes it anew', async () => {
  const killed = await prepareInOwnProcess(700)
  await until(() => log('log') === '(')
  killed.kill('SIGKILL')
  await once(killed, 'exit')
  expect(existsSync(join(root, 'out/.mark'))).toBe(false)
  expect(await run([copyStep(0)])).toEqual(['copy'])
  expect(log('log')).toBe('()()')
})

test('stopped by a signal in the middle, it takes its step along and lets go of the folder', async () => {
  const stopped = await prepareInOwnProcess(1500)
  await until(() => log('log') === '(')
  stopped.kill('SIGTERM')
  expect((await once(stopped, 'exit'))[0]).toBe(1)
  expect(existsSync(join(root, '.plenum.lock'))).toBe(false)
  await sleep(1700)
  expect(log('log')).toBe('(')
})

test('a step that was done before and is killed while being redone is not taken for done', async () => {
  await run([copyStep(0)])
  writeFileSync(join(root, 'source'), 'two')
  const killed = await prepareInOwnProcess(300)
  await until(() => log('log') === '()(')
  killed.kill('SIGKILL')
  writeFileSync(join(root, 'source'), 'one')
  expect(await run([copyStep(0)])).toEqual(['copy'])
})

test('six started at once do the work once, one after the other', async () => {
  const all = await Promise.all(Array.from({ length: 6 }, () => prepareInOwnProcess(150)))
  const statuses = await Promise.all(all.map(async (child) => (await once(child, 'exit'))[0]))
  expect(statuses).toEqual([0, 0, 0, 0, 0, 0])
  expect(log('log')).toBe('()')
  expect(existsSync(join(root, '.plenum.lock'))).toBe(false)
})

test('a lock whose process number now belongs to another process does not hold', async () => {
  writeFileSync(join(root, '.plenum.lock'), `${process.pid}@1\n`)
  expect(await run([copyStep(0)])).toEqual(['copy'])
})

test('an install by hand is kept when npm’s own record agrees with the lock file, and not when it is half done', async () => {
  const install = STEPS.find((step) => step.name === 'install') as Step
  const done = () => install.alreadyDone?.(root)
  const lock = {
    packages: {
      '': {},
      'node_modules/a': { version: '1.0.0' },
      'node_modules/b': { version: '2.0.0', optional: true },
    },
  }
  writeFileSync(join(root, 'package-lock.json'), JSON.stringify(lock))
  expect(done()).toBe(false)
  mkdirSync(join(root, 'node_modules'))
  const record = (packages: object) =>
    writeFileSync(join(root, 'node_modules/.package-lock.json'), JSON.stringify({ packages }))
  record({ 'node_modules/a': { version: '1.0.0' } })
  expect(done()).toBe(true)
  record({ 'node_modules/a': { version: '0.9.0' } })
  expect(done()).toBe(false)
  record({ 'node_modules/b': { version: '2.0.0' } })
  expect(done()).toBe(false)
})
