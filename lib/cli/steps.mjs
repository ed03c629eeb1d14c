// @ts-check
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

const PROVIDERS = ['sqlite', 'postgresql']
/** @param {string} root */
const schemaFolders = (root) =>
  PROVIDERS.map((name) => `prisma/${name}`).filter((folder) => existsSync(join(root, folder, 'schema.prisma')))

/** @type {import('./prepare.mjs').Step[]} */
export const STEPS = [
  {
    name: 'install',
    doing: 'Installing what Plenum needs; the first time takes some minutes',
    inputs: ['package-lock.json'],
    mark: 'node_modules/.plenum-made-from',
    failed: 'The install did not finish. Is this machine online? Fix what is written above and start again.',
    alreadyDone: isInstalled,
    // `npm ci` empties node_modules first and then holds to the lock file.
    commands: () => [[...npmCommand(), 'ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']],
  },
  {
    name: 'generate',
    doing: 'Preparing the database code',
    inputs: ['prisma', 'prisma.config.ts', 'package-lock.json'],
    mark: 'prisma/generated/.plenum-made-from',
    failed: 'The database code could not be made from prisma/. Fix what is written above and start again.',
    needed: (root) => schemaFolders(root).length > 0,
    commands: (root) =>
      schemaFolders(root).map((folder) => [
        process.execPath,
        'node_modules/prisma/build/index.js',
        'generate',
        '--schema',
        folder,
      ]),
  },
  {
    name: 'build',
    doing: 'Building',
    inputs: [
      'app',
      'lib',
      'content',
      'prisma',
      'public',
      'proxy.ts',
      'instrumentation.ts',
      'next.config.ts',
      'tsconfig.json',
      'package-lock.json',
    ],
    mark: '.next/.plenum-made-from',
    failed: 'The build did not finish. Fix what is written above and start again.',
    commands: () => [[process.execPath, 'node_modules/next/dist/bin/next', 'build']],
  },
]

/** npm itself, as the npm that runs us, else the one on the path. */
function npmCommand() {
  const running = process.env.npm_execpath
  if (running?.endsWith('npm-cli.js')) return [process.execPath, running]
  return [process.platform === 'win32' ? 'npm.cmd' : 'npm']
}

/**
 * Whether node_modules already holds what the lock file asks for, from an `npm ci` by hand. npm writes its own record
 * last, so a record that agrees means a finished install.
 * @param {string} root
 */
function isInstalled(root) {
  try {
    const read = (/** @type {string} */ file) => JSON.parse(readFileSync(join(root, file), 'utf8')).packages
    const wanted = read('package-lock.json')
    const present = read('node_modules/.package-lock.json')
    return Object.keys(wanted).every(
      (path) =>
        path === '' || present[path]?.version === wanted[path].version || (!present[path] && wanted[path].optional),
    )
  } catch {
    return false
  }
}
