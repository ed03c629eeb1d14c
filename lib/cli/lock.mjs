// @ts-check
import { appendFileSync, linkSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'

/**
 * Names a running process so that a later one with the same number is not taken for it: on Linux `<pid>@<start>`,
 * elsewhere the bare number. `undefined` for a process that has ended.
 * @param {number} pid
 */
export function processName(pid) {
  try {
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ') ?? []
    // A zombie has ended; where nobody collects it, it would hold the lock for ever.
    return fields[0] === 'Z' ? undefined : `${pid}@${fields[19]}`
  } catch {
    if (process.platform === 'linux') return undefined
    try {
      process.kill(pid, 0)
      return `${pid}`
    } catch {
      return undefined
    }
  }
}

/** @param {string} file */
function readHolders(file) {
  try {
    return readFileSync(file, 'utf8').split('\n').filter(Boolean)
  } catch {
    return undefined
  }
}

/** @param {string[]} holders */
function liveHolder(holders) {
  return holders.find((name) => processName(Number.parseInt(name, 10)) === name)
}

/**
 * @param {string} file
 * @param {string} text
 */
function createNew(file, text) {
  const draft = `${file}.${process.pid}`
  writeFileSync(draft, text)
  try {
    // A link appears with its text already in it: nobody ever reads a lock without a holder.
    linkSync(draft, file)
    return true
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false
    throw error
  } finally {
    rmSync(draft, { force: true })
  }
}

/**
 * Waits until no living process holds `file`, then holds it. The holder's child processes count as holders too
 * (`addHolder`): a killed `npm start` may leave `npm ci` running, and a second one beside it would tear the folder.
 * @param {string} file
 * @param {(holder: string) => void} onWait called once when somebody else is at work
 * @returns {Promise<{ addHolder(pid: number): void, release(): void }>}
 */
export async function takeLock(file, onWait) {
  const own = processName(process.pid) ?? `${process.pid}`
  let told = false
  while (!createNew(file, `${own}\n`)) {
    const holders = readHolders(file)
    const holder = holders && liveHolder(holders)
    if (holder) {
      if (!told) onWait(holder)
      told = true
    } else if (holders && createNew(`${file}.steal`, own)) {
      // Only one may remove a dead lock, and only after a second look: between the looks a new holder may have come.
      const again = readHolders(file)
      if (again && !liveHolder(again)) rmSync(file, { force: true })
      rmSync(`${file}.steal`, { force: true })
      continue
    } else if (holders && !liveHolder(readHolders(`${file}.steal`) ?? [])) {
      rmSync(`${file}.steal`, { force: true })
    }
    await sleep(100)
  }
  return {
    addHolder(pid) {
      appendFileSync(file, `${processName(pid) ?? ''}\n`)
    },
    release() {
      rmSync(file, { force: true })
    },
  }
}
