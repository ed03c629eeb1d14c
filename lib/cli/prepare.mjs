// @ts-check
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { takeLock } from './lock.mjs'
import { STEPS } from './steps.mjs'

// Brings a checkout from any state to a built one, with Node's own modules only: it runs before there are others.
// Each step leaves a mark with the hash of what it was made from, inside the folder it makes: a folder that was
// removed takes its mark along, a step that was killed never wrote one.

// What a step makes is not its input, and the commands are no part of the built app.
const NOT_INPUTS = ['prisma/generated', 'lib/cli']

/**
 * @typedef {object} Step
 * @property {string} name
 * @property {string} doing what a person is told while it runs
 * @property {string[]} inputs files and folders whose content decides whether the step is stale
 * @property {string} mark
 * @property {string} failed what to tell when it fails
 * @property {(root: string) => boolean} [needed] whether there is anything to do at all; default yes
 * @property {(root: string) => boolean} [alreadyDone] whether a result without a mark may be kept
 * @property {(root: string) => string[][]} commands each one `[file, ...arguments]`, run in order
 */

/**
 * @param {string} root
 * @param {string[]} inputs
 * @returns {string} a hash over the names and contents of all files, and over the kind of Node (compiled packages fit one)
 */
export function hashInputs(root, inputs) {
  const hash = createHash('sha256').update(`${process.platform} ${process.arch} ${process.versions.modules}\n`)
  /** @param {string} path */
  function add(path) {
    let entries
    try {
      entries = readdirSync(join(root, path), { withFileTypes: true })
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code === 'ENOENT') return
      const content = readFileSync(join(root, path))
      hash.update(`${path} ${content.length}\n`).update(content)
      return
    }
    const names = entries.map((entry) => entry.name).sort()
    for (const name of names) if (!NOT_INPUTS.includes(`${path}/${name}`)) add(`${path}/${name}`)
  }
  inputs.forEach(add)
  return hash.digest('hex')
}

/** @param {string} message one plain sentence for the person; no stack is shown with it */
export function plainError(message) {
  return Object.assign(new Error(message), { plain: true })
}

/** @param {string} file */
function readMark(file) {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}

/**
 * Runs the steps that are stale, in order, while no other process prepares the same checkout.
 * @param {{ root: string, steps?: Step[], say?: (line: string) => void }} options
 * @returns {Promise<string[]>} the names of the steps that ran
 */
export async function prepare({ root, steps = STEPS, say = (line) => console.error(line) }) {
  const stale = () => steps.some((step) => isStale(root, step))
  if (!stale()) return []
  const lock = await takeLock(join(root, '.plenum.lock'), (holder) =>
    say(`Process ${Number.parseInt(holder, 10)} is preparing this folder; waiting for it.`),
  )
  const ran = []
  try {
    for (const step of steps) {
      if (!isStale(root, step)) continue
      const mark = join(root, step.mark)
      const hash = hashInputs(root, step.inputs)
      // A mark that disagrees may mean another Node, whose compiled packages don't fit: only an unmarked result is kept.
      if (readMark(mark) !== undefined || !step.alreadyDone?.(root)) {
        say(`${step.doing} …`)
        rmSync(mark, { force: true })
        for (const command of step.commands(root)) {
          if ((await runCommand(root, command, lock.addHolder)) !== 0) throw plainError(step.failed)
        }
        ran.push(step.name)
      }
      mkdirSync(dirname(mark), { recursive: true })
      writeFileSync(`${mark}.new`, hash)
      renameSync(`${mark}.new`, mark)
    }
  } finally {
    lock.release()
  }
  return ran
}

/**
 * @param {string} root
 * @param {Step} step
 */
function isStale(root, step) {
  if (step.needed && !step.needed(root)) return false
  return readMark(join(root, step.mark)) !== hashInputs(root, step.inputs)
}

/**
 * Runs one command with its output on our standard error, so that our own standard output stays ours.
 * @param {string} root
 * @param {string[]} command
 * @param {(pid: number) => void} onStart
 * @returns {Promise<number>} its exit status
 */
function runCommand(root, [file = '', ...args], onStart) {
  const env = {
    ...process.env,
    NODE_ENV: undefined,
    NEXT_TELEMETRY_DISABLED: '1',
    CHECKPOINT_DISABLE: '1',
    // `prisma generate` only looks whether an engine file exists, and would download one.
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
  }
  return new Promise((resolve, reject) => {
    const child = spawn(file, args, {
      cwd: root,
      env: /** @type {any} */ (env),
      stdio: ['ignore', 2, 2],
      shell: file.endsWith('.cmd'),
    })
    const stop = (/** @type {NodeJS.Signals} */ signal) => child.kill(signal)
    // However we end, a step must not run on without us.
    const end = () => stop('SIGTERM')
    process.on('exit', end)
    const signals = /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])
    for (const signal of signals) process.on(signal, stop)
    child.on('error', reject)
    child.on('spawn', () => onStart(/** @type {number} */ (child.pid)))
    child.on('exit', (status, signal) => {
      process.off('exit', end)
      for (const name of signals) process.off(name, stop)
      if (signal) reject(plainError('Stopped.'))
      else resolve(status ?? 1)
    })
  })
}
