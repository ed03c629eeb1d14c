// @ts-check
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']
const ELSEWHERE = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/**
 * The browser that the tests drive: the one `CHROMIUM` names, else the first found on the path.
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {string | undefined}
 */
export function findChromium(env = process.env) {
  if (env.CHROMIUM) return existsSync(env.CHROMIUM) ? env.CHROMIUM : undefined
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean)
  const found = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)))
  return [...found, ...(env === process.env ? ELSEWHERE : [])].find((file) => existsSync(file))
}

/**
 * Finds the browser, or installs it from the system's packages where this machine and this account can.
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {string | undefined} `undefined` when the person has to install one
 */
export function ensureChromium(env = process.env) {
  const present = findChromium(env)
  if (present || env.CHROMIUM || process.getuid?.() !== 0) return present
  /** @param {string[]} args */
  const apt = (...args) =>
    spawnSync('apt-get', args, { env: { ...env, DEBIAN_FRONTEND: 'noninteractive' }, stdio: ['ignore', 2, 2] }).status
  console.error('Installing chromium for the tests …')
  const install = () => apt('install', '--yes', '--quiet', '--no-install-recommends', 'chromium')
  // The package lists of a fresh machine are empty or old, of a used one often good enough.
  if (install() !== 0 && apt('update', '--quiet') === 0) install()
  return findChromium(env)
}
