// @ts-check
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { delimiter, join } from 'node:path'

// Where Debian and others put the server's own programs; they are on nobody's path.
const DEBIAN = '/usr/lib/postgresql'
const OLDEST = 13

/**
 * The folder with `initdb` and `postgres`: the one `POSTGRES_BIN` names, else the newest there is.
 * @param {NodeJS.ProcessEnv} [env]
 * @param {string} [debian] where the system keeps its versions
 * @returns {string | undefined}
 */
export function findPostgres(env = process.env, debian = DEBIAN) {
  const has = (/** @type {string} */ folder) =>
    existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres'))
  if (env.POSTGRES_BIN) return has(env.POSTGRES_BIN) ? env.POSTGRES_BIN : undefined
  const versions = existsSync(debian)
    ? readdirSync(debian)
        .map(Number)
        .filter((version) => version >= OLDEST)
    : []
  const folders = versions.sort((a, b) => b - a).map((version) => join(debian, String(version), 'bin'))
  return [...folders, ...(env.PATH ?? '').split(delimiter).filter(Boolean)].find(has)
}

/**
 * Finds PostgreSQL, or installs it from the system's packages where this machine and this account can.
 * @param {NodeJS.ProcessEnv} [env]
 * @param {string} [debian]
 * @returns {string | undefined} `undefined` when the person has to install it
 */
export function ensurePostgres(env = process.env, debian = DEBIAN) {
  const present = findPostgres(env, debian)
  if (present || env.POSTGRES_BIN || process.getuid?.() !== 0) return present
  /** @param {string[]} args */
  const apt = (...args) =>
    spawnSync('apt-get', args, { env: { ...env, DEBIAN_FRONTEND: 'noninteractive' }, stdio: ['ignore', 2, 2] }).status
  console.error('Installing postgresql for the tests …')
  const install = () => apt('install', '--yes', '--quiet', '--no-install-recommends', 'postgresql')
  if (install() !== 0 && apt('update', '--quiet') === 0) install()
  return findPostgres(env, debian)
}
